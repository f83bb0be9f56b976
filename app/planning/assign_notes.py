"""What to know about a skein in its place: another yarn that reads as one, pieces knit in pairs."""

from collections.abc import Sequence

from app.planning.assign_pairs import Piece, couples
from app.planning.assign_problem import Asked
from app.planning.assign_reasons import Coupled, Halved, Mixed, Note
from app.planning.solve.problem import Problem


def notes(asked: Asked, problem: Problem, piece: Piece, kept: Sequence[Piece]) -> tuple[Note, ...]:
    """The notes of one piece among those kept of its group."""
    found: list[Note] = []
    meant = asked.units[piece.unit].role.yarn_id
    yarn = problem.skeins[piece.skein].yarn
    if meant and yarn != meant:
        found.append(Mixed(asked.lots.book.yarn[yarn].name))
    copies = asked.units[piece.unit].part.part.copies
    if copies > 1:
        found.append(_for_each(problem, piece, kept, copies))
    return tuple(found)


def _for_each(problem: Problem, piece: Piece, kept: Sequence[Piece], copies: int) -> Note:
    for one, other in couples(problem, kept, piece.unit) if copies == 2 else ():
        if piece in (one, other):
            partner = other if piece == one else one
            return Coupled(problem.skeins[partner.skein].code)
    return Halved(copies)
