"""Whether a ball can weigh what was typed: asked about, never swallowed."""

from dataclasses import dataclass
from typing import Literal

from app.book.book import Book
from app.craft.ball import Weighed
from app.planning.groups import groups
from app.planning.knitting.balls import OnNeedles, as_ball, current, on_needles, pace_without
from app.planning.knitting.course import Course, courses
from app.planning.needs import needs_of
from app.planning.yarns import Lots

STRANGE = 3.5
"""Standard deviations from which a weighing is asked about."""

PLANNED_U = 0.10
"""How unsure a plan's yarn in a stitch is at the most, as a share, where a weighing is doubted."""


@dataclass(frozen=True, slots=True)
class Doubt:
    """What is odd: the ball is `heavier` than it was, `wrong` as this garment has none of it, or
    far from the `expected_g` at that row."""

    what: Literal["heavier", "wrong", "far"]
    expected_g: float = 0.0


def doubt_of(
    book: Book, plan_id: str, where: tuple[str, int, int], holding_id: str, g: float, step_g: float
) -> Doubt | None:
    """What to ask about a ball of `g` grams at (part, piece, rows); None where nothing is odd."""
    if not _belongs(book, plan_id, holding_id):
        return Doubt("wrong")
    held_g = book.balances[holding_id].mg / 1000
    if g > held_g + step_g:
        return Doubt("heavier", held_g)
    ball, x = _ball(book, plan_id, where, holding_id)
    if ball is None or x is None or x <= ball.weighed[-1].x:
        return None
    told = as_ball(ball, pace_without(PLANNED_U, (ball,), ball, book))
    if abs(told.surprise(Weighed(x, g, step_g))) <= STRANGE:
        return None
    return Doubt("far", max(0.0, told.left(x)[0]))


def courses_of(book: Book, plan_id: str) -> tuple[Course, ...]:
    """The courses of a plan, by what is promised to it."""
    plan = book.plan[plan_id]
    promises = book.promises_of.get(plan_id, [])
    yarn_of = {one.holding_id: book.holding[one.holding_id].yarn_id for one in promises}
    needs = needs_of(plan, book.parts_of.get(plan_id, []), Lots(book))
    return courses(plan, needs, groups(needs, promises, yarn_of))


def _belongs(book: Book, plan_id: str, holding_id: str) -> bool:
    promised = {one.holding_id for one in book.promises_of.get(plan_id, [])}
    weighed = {one.holding_id for one in book.weighings if one.plan_id == plan_id}
    return holding_id in promised | weighed


def _ball(
    book: Book, plan_id: str, where: tuple[str, int, int], holding_id: str
) -> tuple[OnNeedles | None, float | None]:
    found = current(on_needles(Lots(book), plan_id, courses_of(book, plan_id)))
    ball = next((one for one in found if one.holding_id == holding_id), None)
    x = ball.course.at(*where) if ball else None
    return ball, x - ball.begun if ball and x is not None else None
