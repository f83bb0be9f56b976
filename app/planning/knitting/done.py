"""The rows done of a garment on the needles: as ticked off, or as far as a ball was weighed."""

from collections.abc import Mapping

from app.book.book import Book
from app.planning.knitting.course import Course

Done = Mapping[tuple[str, int], int]
"""Rows done by part and piece."""


def rows_done(book: Book, plan_id: str) -> Done:
    """Rows done of each piece of a plan that was begun."""
    mine = (one for one in book.progress if one.plan_id == plan_id)
    ticked = {(one.part_id, one.piece): one.rows for one in mine}
    weighed: dict[tuple[str, int], int] = {}
    for one in book.weighings:
        if one.plan_id == plan_id:
            key = one.part_id, one.piece
            weighed[key] = max(weighed.get(key, 0), one.rows)
    return weighed | ticked


def metres_done(course: Course, done: Done) -> float:
    """Planned metres of a course that are knit."""
    return sum(
        leg.after[min(done.get((leg.part_id, leg.piece), 0), len(leg.rows))] for leg in course.legs
    )
