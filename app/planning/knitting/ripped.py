"""The yarn that comes out of rows that are undone."""

from dataclasses import dataclass, replace

from app.book.book import Book
from app.planning.knitting.course import Course
from app.planning.knitting.done import rows_done
from app.planning.yarns import Lots


@dataclass(frozen=True, slots=True)
class Ripped:
    """So many mg and mm of a yarn, knit in a role of the part."""

    role: str
    yarn_id: str | None
    colour: str
    mg: int
    mm: int

    def of(self, share: float) -> "Ripped":
        """A share of it."""
        return replace(self, mg=round(self.mg * share), mm=round(self.mm * share))


def ripped(
    book: Book, courses: tuple[Course, ...], part_id: str, piece: int, rows: int
) -> tuple[Ripped, ...]:
    """What was planned for the rows done beyond `rows` of a piece, by yarn; none where no more
    rows than that are done."""
    done = rows_done(book, book.part[part_id].plan_id).get((part_id, piece), 0)
    found = []
    for course in courses:
        leg = course.leg(part_id, piece)
        if leg is None:
            continue
        last = min(done, len(leg.rows))
        metres = leg.after[last] - leg.after[min(rows, last)]
        one = _of(Lots(book), course, part_id, metres) if metres > 0 else None
        if one:
            found.append(one)
    return tuple(found)


def _of(lots: Lots, course: Course, part_id: str, metres: float) -> Ripped | None:
    yarn_id = next(iter(course.group.yarn_ids), None)
    yarn = lots.book.yarn.get(yarn_id or "")
    tex = lots.tex(yarn.id) if yarn else None
    if yarn is None or tex is None:
        return None
    role = next(role.role for part, role in course.group.roles if part == part_id)
    return Ripped(role, yarn.id, yarn.colour, round(metres * tex.value), round(metres * 1000))
