"""The quick reckoning: a true answer from half a sentence, wider for what was left out."""

from math import sqrt

import pytest

from app.book.gauge import Gauge
from app.book.settings import Settings
from app.craft.figure import Figure
from app.planning.quick import Question, quick

GAUGE = Gauge(22.0, 30.0)
CHEST = {"chest": 96.0}


def ask(kind="waistcoat", **question):
    return quick(Question(kind, **question), Settings())


@pytest.mark.published
def test_a_pullover_of_40_inches_at_5_stitches_to_the_inch():
    """Budd, The Knitter's Handy Guide to Yarn Requirements: 1475 yd, and no garment takes all of
    what is printed: 55 to 100 % of it."""
    gauge = Gauge(5 / 2.54 * 10, 7 / 2.54 * 10)
    need = ask("pullover", have_m=1000, gauge=gauge, measures={"chest": 94.1}).need
    assert 0.55 <= need.value / (1475 * 0.9144) <= 1.0


def test_metres_in_hand_against_the_need():
    answer = ask(have_m=640, gauge=GAUGE, measures=CHEST)
    assert answer.supply.value == 640
    assert answer.supply.u == pytest.approx(12.8)
    assert not answer.enough
    assert answer.short_m > answer.need.value - 640


def test_enough_says_what_is_left():
    answer = ask(have_m=1400, gauge=GAUGE, measures=CHEST)
    assert answer.enough
    assert answer.odds > 0.9
    assert 0 < answer.left_at_least_m < answer.left_m


def test_what_is_left_out_widens_the_answer():
    told = ask(have_m=640, gauge=GAUGE, measures=CHEST)
    guessed = ask(have_m=640, measures=CHEST)
    assert guessed.need.u / guessed.need.value > told.need.u / told.need.value
    assert {"Gauge", "Grist of the yarn"} <= {one.what for one in guessed.assumed}
    assert all(one.u for one in guessed.assumed)
    assert guessed.plan.gauge.assumed_pct > 20


def test_grams_that_rest_on_a_guessed_grist_name_it():
    """What is short is said in grams too, so the grist is named even where metres were given."""
    answer = ask(have_m=640, gauge=GAUGE, measures=CHEST)
    assert answer.short_g == pytest.approx(answer.short_m * 0.396, rel=1e-3)
    assert "Grist of the yarn" in {one.what for one in answer.assumed}


def test_guessed_rows_are_named():
    gauge = Gauge(22.0, 29.92, assumed_pct=3.0)
    answer = ask(have_m=640, gauge=gauge, measures=CHEST)
    (rows,) = [one for one in answer.assumed if one.what == "Rows"]
    assert rows.value == 29.92
    assert rows.u == pytest.approx(1.8, abs=0.01)


def test_grams_become_metres_by_the_grist():
    tex = Figure(450.0, "tex", {"grist of grey": 13.5})
    answer = ask(have_g=180, tex=tex, gauge=GAUGE, measures=CHEST)
    assert answer.supply.value == pytest.approx(400)
    assert answer.supply.u == pytest.approx(400 * sqrt(0.03**2 + 0.02**2))


def test_grams_without_a_grist_take_the_one_the_gauge_suggests():
    """An ordinary fabric, √tex/l = 11: l 1.809 cm gives 396 tex."""
    answer = ask(have_g=396, gauge=GAUGE, measures=CHEST)
    assert answer.supply.value == pytest.approx(1000, abs=2)
    assert answer.supply.u > 290
    assert answer.assumed[0].what == "Grist of the yarn"


def test_a_thicker_yarn_than_thought_is_bad_news_on_both_sides():
    tex = Figure(450.0, "tex", {"wraps": 90.0})
    answer = ask(have_g=400, tex=tex, measures=CHEST)
    assert answer.need.covariance(answer.supply) < 0


def test_the_plan_can_be_kept_as_it_was_reckoned():
    answer = ask(have_m=640, gauge=GAUGE, measures=CHEST)
    assert answer.plan.gauge == GAUGE
    assert {one.plan_id for one in answer.parts} == {answer.plan.id}
    assert [one.position for one in answer.parts] == list(range(1, len(answer.parts) + 1))
    assert all(one.shape_u_pct >= 10 for one in answer.parts)


def test_a_body_that_cannot_be_is_refused_in_words():
    with pytest.raises(ValueError, match="chest"):
        ask(have_m=640, measures={"chest": 500.0})
    with pytest.raises(ValueError, match="no garment"):
        ask("sail", have_m=640)
