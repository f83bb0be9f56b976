"""A ball on the needles as a line: grams against planned metres, behind it as weighed, ahead of it
as a band that holds nine in ten."""

from dataclasses import dataclass

from app.craft.odds import normal_quantile
from app.planning.knitting.balls import UNLIKELY
from app.planning.knitting.course import Place
from app.planning.knitting.forecast import BallAhead

STEPS = 24
"""So many places ahead are enough for a smooth band."""

NINE_IN_TEN = 0.95
BEYOND = 1.02


@dataclass(frozen=True, slots=True)
class LeftAt:
    """Grams left after `x` metres: as expected, and where they lie 9 times in 10; none below 0."""

    x: float
    g: float
    least_g: float
    most_g: float


@dataclass(frozen=True, slots=True)
class BallLine:
    """`weighed` are (metres, grams); `end_x` is the end of the piece, `far_x` the last place shown.
    `begun` and `end` are those places in rows."""

    weighed: tuple[tuple[float, float], ...]
    ahead: tuple[LeftAt, ...]
    end_x: float
    far_x: float
    begun: Place | None
    end: Place


def ball_line(one: BallAhead) -> BallLine:
    """The line of a ball from its first weighing to the end of the piece, or to where it ends at
    the most, whichever is further."""
    ball, on_needles = one.ball, one.on_needles
    now = on_needles.weighed[-1].x
    end = now + max(0.0, one.reach.to_end_m)
    far = BEYOND * max(end, ball.reaches(UNLIKELY), now)
    spots = [now + (far - now) * step / STEPS for step in range(STEPS + 1)]
    course = on_needles.course
    return BallLine(
        weighed=tuple((each.x, each.g) for each in on_needles.weighed),
        ahead=tuple(_left_at(one, x) for x in spots),
        end_x=end,
        far_x=far,
        begun=course.place(on_needles.begun),
        end=one.here.at_end,
    )


def _left_at(one: BallAhead, x: float) -> LeftAt:
    g, u = one.ball.left(x)
    reach = normal_quantile(NINE_IN_TEN) * u
    return LeftAt(x, max(0.0, g), max(0.0, g - reach), max(0.0, g + reach))
