"""The balls of a garment on the needles: what each was weighed to, and how far it reaches."""

from dataclasses import dataclass
from math import hypot, inf

from app.book.book import Book
from app.book.holding import Holding
from app.book.knitting import Weighing
from app.craft.ball import DRIFTS, Ball, Drifts, Weighed
from app.planning.knitting.course import Course, Place
from app.planning.knitting.pace import Gone, Pace, gone, pace
from app.planning.yarns import Lots

OWN_GRIST_U = 0.03
"""What the grist of one ball strays from that of its skein's length and weight, as a share
(practice)."""

LIKELY, UNLIKELY = 0.95, 0.05
"""A range holds 9 in 10."""


@dataclass(frozen=True, slots=True)
class OnNeedles:
    """A ball with its weighings in their order; `begun` is the planned metre of the first."""

    holding_id: str
    code: str
    course: Course
    weighings: tuple[Weighing, ...]
    weighed: tuple[Weighed, ...]
    begun: float
    g_per_m: float

    @property
    def told(self) -> Gone | None:
        """What it tells of the yarn the garment takes."""
        return gone(f"ball {self.weighings[0].id}", self.weighed, self.g_per_m)

    @property
    def last(self) -> Weighing:
        return self.weighings[-1]


@dataclass(frozen=True, slots=True)
class Reach:
    """How far a ball reaches. Places are None beyond the end of the garment; `odds` are those of
    reaching the end of the piece, where `left_g` are expected to be left, below zero where the
    ball is expected to end before; `left_u_g` is how unsure that is."""

    holding_id: str
    code: str
    now_g: float
    expected: Place | None
    at_least: Place | None
    at_most: Place | None
    odds: float
    left_g: float
    left_u_g: float
    to_end_m: float


def on_needles(lots: Lots, plan_id: str, courses: tuple[Course, ...]) -> tuple[OnNeedles, ...]:
    """The balls of a plan that were weighed, in the order of their first weighing. Where knitting
    was undone, or a ball grew, the ball begins anew with the next weighing."""
    by_ball: dict[str, list[Weighing]] = {}
    for one in in_order(lots.book, plan_id):
        by_ball.setdefault(one.holding_id, []).append(one)
    return tuple(ball for weighings in by_ball.values() for ball in _ball(lots, weighings, courses))


def current(balls: tuple[OnNeedles, ...]) -> tuple[OnNeedles, ...]:
    """The balls as they are now, without what they were before knitting was undone."""
    return tuple({one.holding_id: one for one in balls}.values())


def in_order(book: Book, plan_id: str) -> list[Weighing]:
    """The weighings of a plan in the order in which they were taken."""
    mine = (one for one in book.weighings if one.plan_id == plan_id)
    return sorted(mine, key=lambda one: (one.day, one.minute or 0, one.id))


def pace_without(
    planned_u: float, balls: tuple[OnNeedles, ...], left_out: OnNeedles | None, book: Book
) -> Pace:
    """What all balls but one tell of the yarn the garment takes."""
    others = (one.told for one in balls if one is not left_out)
    verdicts = {one.id: one.verdict for one in book.marks}
    return pace(planned_u, tuple(one for one in others if one), verdicts)


def as_ball(one: OnNeedles, others: Pace, drifts: Drifts = DRIFTS) -> Ball:
    """A ball for the craft's forecast, by its own weighings and what the other balls tell."""
    level_u = hypot(others.u / others.value, OWN_GRIST_U)
    return Ball(one.weighed, one.g_per_m * others.value, level_u, drifts)


def reach(one: OnNeedles, ball: Ball) -> Reach:
    """How far a ball reaches from where it was last weighed."""
    end = one.course.end_of(one.last.part_id, one.last.piece)
    left, u = ball.left(end - one.begun)
    places = [one.course.place(one.begun + ball.reaches(p)) for p in (0.5, LIKELY, UNLIKELY)]
    return Reach(
        holding_id=one.holding_id,
        code=one.code,
        now_g=one.last.mg / 1000,
        expected=places[0],
        at_least=places[1],
        at_most=places[2],
        odds=ball.odds(end - one.begun),
        left_g=left,
        left_u_g=u,
        to_end_m=end - one.begun - one.weighed[-1].x,
    )


def _ball(lots: Lots, weighings: list[Weighing], courses: tuple[Course, ...]) -> list[OnNeedles]:
    course = _course_of(lots, weighings[0], courses)
    holding = lots.book.holding[weighings[0].holding_id]
    g_per_m = _grist(lots, holding.id, holding.yarn_id)
    if course is None or g_per_m is None:
        return []
    placed = [(course.at(one.part_id, one.piece, one.rows), one) for one in weighings]
    known = [(x, one) for x, one in placed if x is not None]
    return [_of_chain(holding, course, g_per_m, chain) for chain in _chains(known)]


def _chains(placed: list[tuple[float, Weighing]]) -> list[list[tuple[float, Weighing]]]:
    """Weighings between which the work went on and the ball did not grow."""
    found: list[list[tuple[float, Weighing]]] = []
    for x, one in placed:
        before_x, before = found[-1][-1] if found else (inf, one)
        if x < before_x or one.mg > before.mg + one.scale_mg:
            found.append([])
        found[-1].append((x, one))
    return found


def _of_chain(
    holding: Holding, course: Course, g_per_m: float, chain: list[tuple[float, Weighing]]
) -> OnNeedles:
    begun = chain[0][0]
    weighed = tuple(Weighed(x - begun, w.mg / 1000, w.scale_mg / 1000) for x, w in chain)
    weighings = tuple(one for _, one in chain)
    return OnNeedles(holding.id, holding.code, course, weighings, weighed, begun, g_per_m)


def _course_of(lots: Lots, one: Weighing, courses: tuple[Course, ...]) -> Course | None:
    """The course that a ball is knit in: that of its yarn, else the first with its piece."""
    yarn_id = lots.book.holding[one.holding_id].yarn_id or one.holding_id
    mine = [each for each in courses if each.leg(one.part_id, one.piece)]
    of_yarn = (each for each in mine if yarn_id in each.group.yarn_ids)
    return next(of_yarn, next(iter(mine), None))


def _grist(lots: Lots, holding_id: str, yarn_id: str | None) -> float | None:
    """Grams in a metre: the ball's own by the wool book, else that of its yarn."""
    held = lots.book.balances.get(holding_id)
    if held and held.mg > 0 and held.mm > 0:
        return held.mg / held.mm
    tex = lots.tex(yarn_id) if yarn_id else None
    return tex.value / 1000 if tex else None
