"""Where a garment on the needles is, and how it will end: pieces, balls, groups of yarns."""

from dataclasses import dataclass
from functools import cached_property

from app.book.book import Book
from app.craft.ball import Ball
from app.craft.figure import Figure
from app.craft.odds import normal_quantile
from app.planning.answers import GroupAnswer, PlanAnswer
from app.planning.groups import Group
from app.planning.knitting.balls import (
    OnNeedles,
    Reach,
    as_ball,
    current,
    on_needles,
    pace_without,
    reach,
)
from app.planning.knitting.course import Course, Place
from app.planning.knitting.done import Done, metres_done, rows_done
from app.planning.knitting.doubt import courses_of
from app.planning.knitting.drift import drifts_before
from app.planning.knitting.pace import Pace
from app.planning.needs import PartNeed, needs_of
from app.planning.netting import knitted
from app.planning.rows import stitches_per_row
from app.planning.yarns import Lots


@dataclass(frozen=True, slots=True)
class PieceDone:
    """A piece of a part: rows done of how many, and the stitches still to knit."""

    place: Place
    stitches_left: float


@dataclass(frozen=True, slots=True)
class BallAhead:
    """A ball with what it was weighed to, and how far it reaches."""

    on_needles: OnNeedles
    ball: Ball
    reach: Reach

    @property
    def here(self) -> Place:
        """Where it was last weighed."""
        last, course = self.on_needles.last, self.on_needles.course
        leg = course.leg(last.part_id, last.piece)
        assert leg is not None
        return leg.place(leg.after[min(last.rows, len(leg.rows))])


@dataclass(frozen=True, slots=True)
class YarnAhead:
    """A group of yarns as the reckoning has it: metres there are of it still, metres the rows to
    come will take with what else is allowed for, and the places it reaches (None beyond the end of
    the garment) as expected and as surely as was asked for."""

    course: Course
    told: GroupAnswer
    pace: Pace
    there: Figure
    wanted: Figure
    expected: Place | None
    at_least: Place | None

    @property
    def margin(self) -> Figure:
        """Metres over, below zero where it is expected to end before."""
        return self.there - self.wanted


class Forecast:
    """A plan that is being knit, looked ahead at; each part of it is worked out when asked for."""

    def __init__(self, book: Book, told: PlanAnswer) -> None:
        self.book, self.plan, self.told = book, book.plan[told.plan_id], told
        self.lots = Lots(book)
        self.done: Done = rows_done(book, told.plan_id)

    @cached_property
    def needs(self) -> tuple[PartNeed, ...]:
        return needs_of(self.plan, self.book.parts_of.get(self.plan.id, []), self.lots)

    @cached_property
    def courses(self) -> tuple[Course, ...]:
        return courses_of(self.book, self.plan.id)

    @cached_property
    def pieces(self) -> tuple[PieceDone, ...]:
        """Every piece whose rows are known, in the order in which they are knit."""
        return tuple(
            _piece(need, piece, self.done.get((need.part.id, piece), 0))
            for need in self.needs
            if need.rows
            for piece in range(1, need.part.copies + 1)
        )

    @property
    def stitches_left(self) -> float:
        """Stitches still to knit."""
        return sum(one.stitches_left for one in self.pieces)

    def stitches_in_rows(self, part_id: str) -> list[float]:
        """Stitches in each row of one piece of a part."""
        return stitches_per_row(next(one for one in self.needs if one.part.id == part_id))

    @cached_property
    def balls(self) -> tuple[BallAhead, ...]:
        """The balls that were weighed and are not knit up, as they are now."""
        held = self.book.balances
        there = (one for one in current(self._weighed) if held[one.holding_id].mg > 0)
        return tuple(self._ball(one) for one in there)

    @cached_property
    def yarns(self) -> tuple[YarnAhead, ...]:
        """What is there and what is wanted of each group of yarns, in the order of the groups."""
        pairs = zip(self.courses, self.told.groups, strict=True)
        return tuple(self._yarn(course, group) for course, group in pairs if course.legs)

    @cached_property
    def _weighed(self) -> tuple[OnNeedles, ...]:
        return on_needles(self.lots, self.plan.id, self.courses)

    def _of(self, group: Group) -> tuple[OnNeedles, ...]:
        return tuple(one for one in self._weighed if one.course.group == group)

    def _pace(self, course: Course, left_out: OnNeedles | None) -> Pace:
        planned = sum((role.need for _, role in course.group.roles), Figure(0.0, "m"))
        share = planned.u / planned.value if planned.value > 0 else 0.0
        return pace_without(share, self._of(course.group), left_out, self.book)

    def _ball(self, one: OnNeedles) -> BallAhead:
        drifts = drifts_before(self.book, one)
        ball = as_ball(one, self._pace(one.course, one), drifts)
        return BallAhead(one, ball, reach(one, ball))

    def _yarn(self, course: Course, group: GroupAnswer) -> YarnAhead:
        pace, done = self._pace(course, None), metres_done(course, self.done)
        knit = knitted(group.used_m)
        there, wanted = group.supply - knit, group.need - knit
        beside = wanted.value - (course.metres - done) * pace.value
        surely = there.value - normal_quantile(self.told.sureness) * (there - wanted).u
        return YarnAhead(
            course=course,
            told=group,
            pace=pace,
            there=there,
            wanted=wanted,
            expected=_reached(course, done + (there.value - beside) / pace.value),
            at_least=_reached(course, done + (surely - beside) / pace.value),
        )


def _reached(course: Course, metres: float) -> Place | None:
    return course.place(max(0.0, metres))


def _piece(need: PartNeed, piece: int, rows: int) -> PieceDone:
    of = need.rows or 0
    done = min(rows, of)
    place = Place(need.part.id, need.part.name, piece, need.part.copies, done, of)
    return PieceDone(place, sum(stitches_per_row(need)[done:]))
