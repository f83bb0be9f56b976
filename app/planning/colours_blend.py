"""A join that would show, drawn out: the two skeins take turns for some rows around it."""

from dataclasses import replace
from itertools import dropwhile

from app.book.book import Book
from app.book.code_order import in_order
from app.book.plan import Part, Plan, Promise, RoleYarn
from app.book.sequence import Sequence, SequenceYarn
from app.planning.needs import needs_of
from app.planning.sequence import MAIN, NUMBERED
from app.planning.sequence_piece import Piece, piece_of
from app.planning.what_if import WhatIf
from app.planning.yarns import Lots

REACH = 6
"""Rows on either side of the join in which both are knit (practice)."""

FEWEST = 4
"""With fewer rows than this there is nothing to draw out."""

FIRST = 0.75
"""What the skein that ends takes of the first of these rows; of the last, the rest."""


def blended(book: Book, plan: Plan, part_id: str, row: int, next_id: str) -> WhatIf | None:
    """The part and promises as they become when the skein that begins at `row` of it and the one
    before it take turns around there: it and those after it get a role of their own. None where
    that cannot be: of several pieces each would need its own rows, yarns take turns in it already,
    or the rows are too few."""
    part = book.part[part_id]
    (need,) = needs_of(plan, [part], Lots(book))
    piece = piece_of(need)
    promises = _in_turn(book, part)
    if piece is None or part.sequence or part.copies > 1 or not 1 < row <= piece.rows:
        return None
    first, last = _rows(piece, row)
    later = list(dropwhile(lambda one: one.holding_id != next_id, promises))
    if last - first + 1 < FEWEST or len(later) in (0, len(promises)):
        return None
    role = next(one for one in NUMBERED if all(one != named.role for named in part.yarns))
    yarn_id = book.holding[later[0].holding_id].yarn_id
    own = (RoleYarn(role, yarn_id),) if yarn_id else ()
    changed = replace(part, yarns=(*part.yarns, *own), sequence=_turns(piece, role, first, last))
    return WhatIf(put=(changed, *(replace(one, role=role) for one in later)))


def _turns(piece: Piece, role: str, first: int, last: int) -> Sequence:
    yarns = (SequenceYarn(MAIN, FIRST, 1 - FIRST), SequenceYarn(role, 1 - FIRST, FIRST))
    return Sequence("fade", yarns, from_row=first, to_row=last, block_rows=piece.block_rows)


def _rows(piece: Piece, row: int) -> tuple[int, int]:
    """The first and last row around a join, as many before it as from it on; flat, whole pairs."""
    reach = min(REACH, row - 1, piece.rows - row + 1)
    first, last = row - reach, row + reach - 1
    if piece.block_rows > 1:
        first += 1 - first % 2
        last -= last % 2
    return first, last


def _in_turn(book: Book, part: Part) -> list[Promise]:
    mine = [
        one
        for one in book.promises_of.get(part.plan_id, [])
        if (one.part_id, one.role) == (part.id, MAIN)
    ]
    return sorted(mine, key=lambda one: (one.position, in_order(book.holding[one.holding_id].code)))
