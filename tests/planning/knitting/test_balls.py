"""Balls on the needles: what they tell of the garment, and how far they reach."""

from datetime import date

import pytest

from app.book.mark import Mark
from app.book.shape import Counted
from app.craft.ball import Weighed
from app.planning import reckon
from app.planning.groups import groups
from app.planning.knitting.balls import as_ball, current, on_needles, pace_without, reach
from app.planning.knitting.course import courses
from app.planning.knitting.pace import Gone, gone, pace
from app.planning.needs import needs_of
from app.planning.yarns import Lots
from tests.books import (
    DAY,
    a_book,
    a_part,
    a_plan,
    a_promise,
    a_skein,
    a_weighing,
    a_yarn,
    some_progress,
)

G_PER_M = 0.45
ROW_M = 497.13 / 120


def at(rows, g, **other):
    return a_weighing(mg=round(g * 1000), rows=rows, **{"id": f"{rows} rows {g}"} | other)


def knit(*records, held=None):
    """A pullover on the needles, and its balls."""
    plan = a_plan(state="being knit")
    held = held or {"G-1": (100.0, 100 / G_PER_M)}
    book = a_book(a_yarn(), a_skein(), plan, a_part(), *records, held=held)
    lots = Lots(book)
    needs = needs_of(plan, book.parts_of["pullover"], lots)
    ways = courses(plan, needs, groups(needs, [], {}))
    return book, on_needles(lots, "pullover", ways)


def test_a_ball_knows_the_planned_metres_between_its_weighings():
    _, (ball,) = knit(at(0, 100.0), at(30, 44.0))
    assert ball.weighed == (
        Weighed(0.0, 100.0),
        Weighed(pytest.approx(30 * ROW_M, rel=1e-4), 44.0),
    )
    assert ball.g_per_m == pytest.approx(G_PER_M, rel=1e-5)
    assert ball.last.rows == 30


def test_as_planned_the_ball_ends_where_its_metres_do():
    """100 g at 0.45 g/m is 222 m: 53 rows and a half."""
    book, (ball,) = knit(at(0, 100.0))
    told = reach(ball, as_ball(ball, pace_without(0.07, (ball,), ball, book)))
    assert told.expected.rows == 53
    assert told.at_least.rows < 53 < told.at_most.rows
    assert told.odds < 0.01
    assert told.left_g == pytest.approx(100 - 497.13 * G_PER_M, abs=0.1)


def test_a_ball_that_goes_faster_ends_before():
    """Planned, 30 rows take 55.9 g; really 62 went: 38 g last 18 rows more."""
    book, (ball,) = knit(at(0, 100.0), at(30, 38.0))
    told = reach(ball, as_ball(ball, pace_without(0.07, (ball,), ball, book)))
    assert told.expected.rows == 48
    assert told.now_g == 38.0
    assert told.to_end_m == pytest.approx(90 * ROW_M, rel=1e-3)


def test_another_ball_tells_of_this_one():
    second = a_skein("G-2")
    first = [at(0, 100.0), at(30, 38.0)]
    other = at(30, 100.0, holding_id="G-2", id="second")
    held = {"G-1": (100.0, 100 / G_PER_M), "G-2": (100.0, 100 / G_PER_M)}
    book, balls = knit(second, *first, other, held=held)
    told = pace_without(0.07, balls, balls[1], book)
    assert told.value == pytest.approx(62 / 55.93, abs=0.03)
    alone = reach(balls[1], as_ball(balls[1], pace_without(0.07, (), None, book)))
    taught = reach(balls[1], as_ball(balls[1], told))
    assert taught.expected.rows < alone.expected.rows


def test_a_ball_begins_anew_where_knitting_was_undone():
    records = [at(0, 100.0, minute=1), at(40, 25.0, minute=2), at(20, 25.0, minute=3)]
    records.append(at(30, 6.0, minute=4))
    _, balls = knit(*records)
    assert [len(one.weighings) for one in balls] == [2, 2]
    (now,) = current(balls)
    assert now.last.rows == 30
    assert [one.told.grams for one in balls] == [75.0, 19.0]


def test_a_ball_that_grew_begins_anew():
    _, balls = knit(at(0, 60.0, minute=1), at(10, 80.0, minute=2))
    assert [len(one.weighings) for one in balls] == [1, 1]


def test_weighings_are_taken_in_their_order_in_time():
    late = at(30, 44.0, day=date(2026, 5, 2))
    early = at(10, 81.0, day=date(2026, 5, 1))
    _, (ball,) = knit(late, at(0, 100.0), early)
    assert [one.g for one in ball.weighed] == [100.0, 81.0, 44.0]


def test_a_weighing_of_what_this_plan_does_not_knit_is_left_out():
    loan, scarf = a_plan("loan"), a_part("scarf", "loan", shape=Counted(40, 100))
    _, balls = knit(loan, scarf, at(0, 100.0, part_id="scarf"))
    assert balls == ()


def test_a_skein_only_weighed_goes_by_the_grist_of_its_yarn():
    bare = a_yarn("bare", target_tex=450.0)
    skein = a_skein("B-1", "bare")
    weighed = at(0, 50.0, holding_id="B-1")
    _, balls = knit(bare, skein, weighed, held={"B-1": (50.0, 0.0)})
    assert [one.g_per_m for one in balls] == [0.45]
    unknown = a_skein("N-1", None)
    _, balls = knit(unknown, at(0, 50.0, holding_id="N-1"), held={"N-1": (50.0, 0.0)})
    assert balls == ()


def test_too_little_gone_tells_nothing():
    assert gone("ball", (Weighed(0, 100.0), Weighed(3, 99.0)), G_PER_M) is None
    assert gone("ball", (Weighed(0, 100.0), Weighed(0, 90.0)), G_PER_M) is None


def test_many_balls_narrow_the_pace():
    told = [Gone(str(n), 50.0, 100.0, G_PER_M, 0.3) for n in range(4)]
    wide, narrow = pace(0.07, (), {}), pace(0.07, tuple(told), {})
    assert (wide.value, wide.u) == (1.0, pytest.approx(0.076, abs=0.001))
    assert narrow.value == pytest.approx(1.10, abs=0.02)
    assert narrow.u < wide.u / 2


def test_a_strange_ball_is_set_aside_until_it_is_let_in():
    odd = Gone("ball 9", 95.0, 100.0, G_PER_M, 0.3)
    assert pace(0.07, (odd,), {}).value == 1.0
    assert pace(0.07, (odd,), {"ball 9": "let in"}).value > 1.3


def running(*records, state="being knit"):
    plan = a_plan(state=state)
    skeins = [a_skein("G-1"), a_skein("G-2"), a_skein("G-3")]
    held = dict.fromkeys(("G-1", "G-2", "G-3"), (100.0, 100 / G_PER_M))
    promises = [a_promise(one.id, 170_000) for one in skeins]
    book = a_book(a_yarn(), *skeins, plan, a_part(), *promises, *records, held=held)
    return reckon(book).plan("pullover")


def test_the_reckoning_goes_by_what_was_weighed():
    """With no gram knit in by the book, all the rows take yarn at the pace so far: half of them
    have taken theirs since the last weighing."""
    planned = running()
    faster = running(some_progress(rows=60), at(0, 100.0), at(30, 38.0))
    slower = running(some_progress(rows=60), at(0, 100.0), at(30, 50.0))
    assert faster.groups[0].need.value > slower.groups[0].need.value
    assert faster.groups[0].need.u < planned.groups[0].need.u
    told = faster.groups[0].need.value - sum(one.m for one in faster.allowances)
    assert told == pytest.approx(497.13 * 1.09, rel=0.02)


def test_a_plan_not_begun_and_one_without_a_row_are_reckoned_as_planned():
    planned = running()
    assert running(some_progress(rows=0)).need == planned.need
    assert running(some_progress(rows=60), state="intended").need.value == planned.need.value


def test_a_mark_is_heard_in_the_reckoning():
    odd = [some_progress(rows=60), at(0, 100.0), at(20, 2.0)]
    aside = running(*odd).groups[0].need.value
    let_in = running(*odd, Mark("ball 0 rows 100.0", "let in", DAY)).groups[0].need.value
    assert let_in > aside * 1.2
