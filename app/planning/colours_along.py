"""The colour of a skein at one place along it, where it runs from one into another."""

from itertools import pairwise

from app.book.holding import ColourAt, Holding

STEPS = 24
"""Shades that are told apart between two colours: enough to look even, few enough to draw."""


def colour_at(holding: Holding, metres: float) -> str:
    """Its colour ("#rrggbb") so many metres from the outer end; empty where it is of one colour."""
    along = sorted(holding.colours, key=lambda one: one.mm)
    if not along:
        return ""
    mm = metres * 1000
    if mm <= along[0].mm:
        return along[0].colour
    for before, after in pairwise(along):
        if mm < after.mm:
            return _between(before, after, mm)
    return along[-1].colour


def _between(before: ColourAt, after: ColourAt, mm: float) -> str:
    share = round((mm - before.mm) / (after.mm - before.mm) * STEPS) / STEPS
    ends = zip(_parts(before.colour), _parts(after.colour), strict=True)
    return "#" + "".join(f"{round(a + (b - a) * share):02x}" for a, b in ends)


def _parts(colour: str) -> tuple[int, int, int]:
    red, green, blue = (int(colour[at : at + 2], 16) for at in (1, 3, 5))
    return red, green, blue
