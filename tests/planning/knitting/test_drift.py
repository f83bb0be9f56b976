"""How far a yarn's grist wanders, learned from its balls and used for the next one."""

import random
from dataclasses import replace
from math import exp, sqrt

import pytest

from app.craft.ball import DRIFTS
from app.planning import reckon
from app.planning.knitting.balls import on_needles
from app.planning.knitting.doubt import courses_of
from app.planning.knitting.drift import drifts_after, drifts_before, drifts_learned
from app.planning.knitting.forecast import Forecast
from app.planning.yarns import Lots
from tests.books import (
    a_book,
    a_mark,
    a_part,
    a_plan,
    a_promise,
    a_skein,
    a_weighing,
    a_yarn,
    some_progress,
)

ROW_G = 497.13 / 120 * 0.45


def weighed(code, gone, plan="pullover"):
    """A ball of 100 g weighed every eight rows, so much gone in each."""
    left = 100.0
    for at, g in enumerate((0.0, *gone)):
        left -= g
        yield a_weighing(
            code,
            round(left * 1000),
            id=f"{code} {at}",
            rows=8 * at,
            plan_id=plan,
            part_id=f"{plan} body",
        )


def wandering(cv, k, seed, n=6):
    """Grams gone in eight rows each, the grist wandering as that of a spinner does."""
    chance = random.Random(seed)
    drift, keep, found = chance.gauss(0, cv), exp(-1 / k), []
    for _ in range(n):
        gone = 0.0
        for _ in range(round(8 * ROW_G / 0.45)):
            gone += 0.45 * (1 + drift)
            drift = drift * keep + chance.gauss(0, cv * sqrt(1 - keep * keep))
        found.append(gone)
    return found


def book_of(*balls, marks=()):
    """Each ball in a pullover of its own; the last plan is on the needles."""
    records, held = [], {}
    for at, gone in enumerate(balls):
        code, plan = f"G-{at}", f"plan {at}"
        held[code] = (100, 222)
        records += [a_skein(code), a_plan(plan, state="being knit"), a_part(f"{plan} body", plan)]
        records += [a_promise(code, 200_000, plan_id=plan, part_id=f"{plan} body")]
        records += [some_progress(f"{plan} body", 48, plan_id=plan), *weighed(code, gone, plan)]
    return a_book(a_yarn(), *records, *marks, held=held)


EVEN, UNEVEN = [8 * ROW_G] * 6, [8 * ROW_G + step for step in (2, -2.2, 2.4, -2, 1.8, -2)]


def test_a_yarn_nobody_weighed_is_learned_nothing_of():
    assert drifts_learned(book_of()) == ()
    assert drifts_learned(book_of(EVEN[:1])) == ()


def test_even_balls_say_an_even_yarn_and_uneven_ones_an_uneven():
    (even,), (uneven,) = (
        drifts_learned(book_of(EVEN, EVEN)),
        drifts_learned(book_of(UNEVEN, UNEVEN)),
    )
    assert even.cv < even.before_cv < uneven.cv
    assert (even.balls, even.yarn_id) == (2, "grey two-ply")
    assert uneven.k < uneven.before_k


def test_the_order_of_the_balls_does_not_matter():
    book = book_of(EVEN, UNEVEN)
    balls = [
        ball
        for plan in book.plans
        for ball in on_needles(Lots(book), plan.id, courses_of(book, plan.id))
    ]
    one, other = drifts_after(balls), drifts_after(balls[::-1])
    for a, b in zip(one, other, strict=True):
        assert a[2] == pytest.approx(b[2])
    assert sum(weight for _, _, weight in one) == pytest.approx(1.0)


def test_the_next_ball_begins_with_what_the_others_told():
    book = book_of(EVEN, EVEN, EVEN[:2])
    ahead = Forecast(book, reckon(book).plan("plan 2"))
    (ball,) = ahead.balls
    assert ball.ball.drifts == drifts_before(book, ball.on_needles) != DRIFTS
    alone = replace(book, weighings=tuple(o for o in book.weighings if o.plan_id == "plan 2"))
    (by_itself,) = Forecast(alone, reckon(alone).plan("plan 2")).balls
    assert by_itself.ball.drifts == DRIFTS


def test_its_own_weighings_are_not_counted_twice():
    (ball,) = Forecast(book := book_of(EVEN), reckon(book).plan("plan 0")).balls
    assert ball.ball.drifts == DRIFTS


def test_a_ball_struck_out_tells_nothing():
    assert drifts_learned(book_of(UNEVEN, marks=(a_mark("ball G-0 0"),))) == ()


@pytest.mark.parametrize(("cv", "narrower"), [(0.03, True), (0.095, False)])
def test_twelve_balls_of_a_spinner_tell_her_evenness(cv, narrower):
    (found,) = drifts_learned(book_of(*(wandering(cv, 20.0, seed) for seed in range(12))))
    assert (found.cv < found.before_cv) == narrower
