"""How far the grist of a yarn wanders along it, learned from the balls of it that were weighed."""

from dataclasses import dataclass
from functools import reduce

from app.book.book import Book
from app.craft.ball import DRIFTS, Ball, Drifts
from app.planning.knitting.balls import OnNeedles, on_needles
from app.planning.knitting.doubt import courses_of
from app.planning.yarns import Lots

TELLS = 3
"""A ball tells of drift from the third weighing on: two give its level alone."""


@dataclass(frozen=True, slots=True)
class Drift:
    """Deviation `cv` and correlation length `k` (m) to expect of a yarn, from so many `balls`; and
    the same before any was weighed."""

    yarn_id: str
    cv: float
    k: float
    before_cv: float
    before_k: float
    balls: int


def drifts_learned(book: Book) -> tuple[Drift, ...]:
    """What the balls that were weighed tell of each yarn, in the order of the yarns."""
    found = ((one.id, _telling(book, one.id)) for one in book.yarns)
    return tuple(_drift(yarn_id, balls) for yarn_id, balls in found if balls)


def drifts_before(book: Book, ball: OnNeedles) -> Drifts:
    """What the other balls of its yarn tell of a ball's drift before it is weighed."""
    yarn_id = book.holding[ball.holding_id].yarn_id
    balls = _telling(book, yarn_id) if yarn_id else []
    return drifts_after([one for one in balls if one.weighings != ball.weighings])


def drifts_after(balls: list[OnNeedles]) -> Drifts:
    """The drifts with their weights once all these balls were seen."""
    return reduce(_seen, balls, DRIFTS)


def _drift(yarn_id: str, balls: list[OnNeedles]) -> Drift:
    (cv, k), (before_cv, before_k) = _mean(drifts_after(balls)), _mean(DRIFTS)
    return Drift(yarn_id, cv, k, before_cv, before_k, len(balls))


def _telling(book: Book, yarn_id: str) -> list[OnNeedles]:
    """The balls of a yarn that tell of its drift, in whatever garment they were knit."""
    struck = {one.id for one in book.marks if one.verdict == "struck out"}
    mine = [one for one in book.weighings if book.holding[one.holding_id].yarn_id == yarn_id]
    plans = dict.fromkeys(one.plan_id for one in mine) if len(mine) >= TELLS else {}
    balls = [
        ball
        for plan_id in plans
        for ball in on_needles(Lots(book), plan_id, courses_of(book, plan_id))
    ]
    return [
        one
        for one in balls
        if len(one.weighed) >= TELLS
        and book.holding[one.holding_id].yarn_id == yarn_id
        and f"ball {one.weighings[0].id}" not in struck
    ]


def _seen(drifts: Drifts, one: OnNeedles) -> Drifts:
    return Ball(one.weighed, one.g_per_m, drifts=drifts).drift_weights


def _mean(drifts: Drifts) -> tuple[float, float]:
    whole = sum(weight for _, _, weight in drifts)
    cv = sum(cv * weight for cv, _, weight in drifts) / whole
    return cv, sum(k * weight for _, k, weight in drifts) / whole
