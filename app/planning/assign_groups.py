"""A group of parts laid along its skeins: which metres of which skein go into which part."""

from app.planning.assign_order import shows, skein_order
from app.planning.assign_pairs import Piece, evened
from app.planning.assign_problem import Asked
from app.planning.colours_alike import apart
from app.planning.places import place_of
from app.planning.solve.problem import Group, Problem

PLAIN = 3.0
"""Above this CIEDE2000 difference two skeins are plainly different (practice)."""


def laid_out(asked: Asked, problem: Problem, group: Group) -> list[Piece]:
    """The pieces of a group in the order of knitting. `problem` has the needs it was solved for."""
    units = sorted(group.parts, key=lambda one: (asked.units[one].part.part.position, one))
    skeins = _in_order(asked, problem, group, units)
    cut = _along(
        [problem.parts[one].need for one in units], [problem.skeins[one].metres for one in skeins]
    )
    real = {one: asked.units[one].missing_m for one in units}
    pieces = []
    for place, at, metres in cut:
        unit = units[place]
        needed = min(float(metres), real[unit])
        real[unit] -= needed
        pieces.append(Piece(unit, skeins[at], float(metres), metres - needed))
    return evened(asked, problem, pieces)


def _along(needs: list[int], lengths: list[int]) -> list[tuple[int, int, int]]:
    """(part, skein, metres) one after the other; less for the last parts where it is not enough."""
    cut, at = [], 0
    lengths = [*lengths]
    for place, need in enumerate(needs):
        missing = need
        while missing > 0 and at < len(lengths):
            metres = min(missing, lengths[at])
            cut.append((place, at, metres))
            missing -= metres
            lengths[at] -= metres
            if lengths[at] == 0:
                at += 1
    return cut


def _in_order(asked: Asked, problem: Problem, group: Group, units: list[int]) -> list[int]:
    skeins = list(group.skeins)
    weights = [shows(place_of(asked.units[one].part.part)) for one in units]
    colours = [_colour(asked, one) for one in skeins]

    def step(one: int, other: int) -> float:
        first, second = colours[one], colours[other]
        if not first or not second or first == second:
            return 0.0
        return apart(first, second) / PLAIN

    lengths = [problem.skeins[one].metres for one in skeins]
    order = skein_order(lengths, [problem.parts[one].need for one in units], weights, step)
    return [skeins[one] for one in order]


def _colour(asked: Asked, skein: int) -> str:
    """The colour of a skein, else that of its yarn; empty where nobody said."""
    book = asked.lots.book
    holding = book.holding[asked.holdings[skein]]
    yarn = book.yarn.get(holding.yarn_id or "")
    return holding.colour or (yarn.colour if yarn else "")
