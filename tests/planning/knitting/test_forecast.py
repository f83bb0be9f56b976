"""A garment on the needles, looked ahead at: pieces, balls, yarns, and what is still to decide."""

import pytest

from app.book.shape import Counted, Metres
from app.craft.odds import normal_quantile
from app.planning import reckon
from app.planning.knitting.decide import may_become, one_not_both
from app.planning.knitting.forecast import Forecast
from tests.books import (
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
SLEEVES = a_part("sleeves", position=2, copies=2, shape=Counted(60, 100), place="sleeve")
SLEEVE_M = 497.13 * 60 * 100 / (229 * 120)
BODY = a_part(place="body")


def ahead_of(*records, metres=(222.0, 222.0, 222.0), **plan):
    codes = [f"G-{n}" for n in range(1, len(metres) + 1)]
    held = {code: (m * G_PER_M, m) for code, m in zip(codes, metres, strict=True)}
    promises = [a_promise(code, round(m * 1000)) for code, m in zip(codes, metres, strict=True)]
    skeins = [a_skein(code) for code in codes]
    plan = a_plan(state="being knit", **plan)
    book = a_book(a_yarn(), *skeins, plan, *promises, *records, held=held)
    return Forecast(book, reckon(book).plan("pullover"))


def at(rows, g, part_id="body", **other):
    return a_weighing(
        mg=round(g * 1000), rows=rows, part_id=part_id, **{"id": f"{part_id} {rows}"} | other
    )


def test_pieces_with_their_rows_and_stitches_to_come():
    ahead = ahead_of(BODY, SLEEVES, some_progress(rows=20), some_progress("sleeves", rows=100))
    found = [
        (one.place.part, one.place.piece, one.place.rows, one.place.of) for one in ahead.pieces
    ]
    assert found == [("body", 1, 20, 120), ("sleeves", 1, 100, 100), ("sleeves", 2, 0, 100)]
    assert ahead.stitches_left == 229 * 100 + 60 * 100
    assert ahead.pieces[1].place.whole


def test_metres_for_something_else_are_no_piece():
    ahead = ahead_of(a_part(shape=Metres(300_000)))
    assert (ahead.pieces, ahead.yarns, ahead.stitches_left) == ((), (), 0)


def test_the_margin_is_that_of_the_reckoning():
    ahead = ahead_of(BODY, some_progress(rows=40), at(0, 100.0), at(20, 62.0))
    (yarn,), (group,) = ahead.yarns, ahead.told.groups
    assert yarn.margin.value == pytest.approx((group.supply - group.need).value)
    assert yarn.margin.u == pytest.approx((group.supply - group.need).u)


def test_a_yarn_that_suffices_reaches_beyond_the_end():
    (yarn,) = ahead_of(BODY, some_progress(rows=100)).yarns
    assert yarn.expected is None
    assert yarn.at_least is None
    assert yarn.margin.value > 0


def test_a_short_yarn_ends_at_a_row_and_surely_reaches_an_earlier_one():
    """444 m for 497 m: it ends about row 105, by the rows it was planned to take."""
    (yarn,) = ahead_of(BODY, some_progress(rows=1), metres=(222.0, 222.0)).yarns
    assert yarn.expected.rows == pytest.approx(103, abs=2)
    assert yarn.at_least.rows < yarn.expected.rows


def test_nothing_left_ends_where_it_is():
    (yarn,) = ahead_of(BODY, some_progress(rows=60), metres=()).yarns
    assert yarn.at_least.rows <= 60


def test_balls_are_those_that_were_weighed():
    ahead = ahead_of(BODY, at(0, 99.9), at(20, 62.0))
    (ball,) = ahead.balls
    assert ball.reach.code == "G-1"
    assert ball.reach.now_g == 62.0
    assert ball.on_needles.last.rows == 20


def test_a_free_part_may_become_longer_by_what_is_over():
    """168.9 m over, less what is allowed for: some 38 rows of 4.14 m, 12.7 cm more at 30 rows."""
    ahead = ahead_of(BODY, some_progress(rows=1))
    (body,) = may_become(ahead)
    (yarn,) = ahead.yarns
    assert body.planned_mm == pytest.approx(400)
    rows = yarn.margin.value / (ROW_M * yarn.pace.value)
    assert body.likely_mm == pytest.approx((120 + rows) * 100 / 30, rel=1e-3)
    z = normal_quantile(0.9)
    less = z * yarn.margin.u / (ROW_M * yarn.pace.value)
    assert body.surely_mm == pytest.approx((120 + rows - less) * 100 / 30, rel=1e-3)


def test_a_pair_shares_what_is_over_and_no_part_becomes_shorter_than_it_is():
    ahead = ahead_of(SLEEVES, some_progress("sleeves", rows=90), metres=(SLEEVE_M,))
    (sleeves,) = may_become(ahead)
    assert sleeves.surely_mm >= 0
    assert sleeves.likely_mm < sleeves.planned_mm
    done = ahead_of(BODY, some_progress(rows=118), metres=(1.0,))
    (body,) = may_become(done)
    assert body.surely_mm == pytest.approx(118 * 100 / 30)


def test_a_part_that_is_done_or_not_free_may_become_nothing():
    assert may_become(ahead_of(BODY, some_progress(rows=120))) == ()
    assert may_become(ahead_of(a_part(place="band"), some_progress(rows=1))) == ()
    assert may_become(ahead_of(a_part(shape=Metres(300_000), place="piece"))) == ()


def test_a_ball_that_does_one_sleeve_but_not_both():
    """130 m for sleeves of 108.5 m each: the rest of one ball does the first, not the second."""
    grams = 150 * G_PER_M
    ahead = ahead_of(
        SLEEVES,
        at(0, grams, "sleeves"),
        at(40, grams - 40 * SLEEVE_M / 100 * G_PER_M, "sleeves"),
        metres=(150.0,),
    )
    (told,) = one_not_both(ahead)
    assert (told.code, told.part) == ("G-1", "sleeves")
    assert told.odds_one > 0.9
    assert told.odds_both < 0.05


@pytest.mark.parametrize(("metres", "piece"), [(400.0, 1), (60.0, 1), (150.0, 2)])
def test_a_ball_that_does_both_or_none_or_the_last_is_not_told_of(metres, piece):
    grams = metres * G_PER_M
    ahead = ahead_of(SLEEVES, at(0, grams, "sleeves", piece=piece), metres=(metres,))
    assert one_not_both(ahead) == ()
