import pytest

from app.craft.figure import Figure
from app.planning import reckon
from app.planning.fleeces import fleece_yield, metres_at
from tests.books import a_book, a_fleece, a_holding


def a_raw_fleece(grams=1000.0, state="raw", **fleece):
    holding = a_holding("F-1", fleece_id="Bramble", state=state)
    return a_book(a_fleece("Bramble", **fleece), holding, held={"F-1": (grams, 0)})


def test_her_own_yield_wins_over_the_breed():
    figure, step = fleece_yield(a_fleece(breed="Romney", yield_pct=58.0))
    assert figure.value == pytest.approx(0.58)
    assert step.standing == "measured"


@pytest.mark.published
def test_romney_yields_55_to_70_percent():
    """A printed breed table: 55 to 70 %."""
    figure, step = fleece_yield(a_fleece(breed="Romney"))
    assert figure.value == pytest.approx(0.625)
    assert figure.u == pytest.approx(0.075)
    assert step.standing == "published"


def test_an_unknown_breed_is_assumed_and_wide():
    figure, step = fleece_yield(a_fleece(breed="hill cross"))
    assert step.standing == "assumed"
    assert figure.u > 0.09


def test_what_a_raw_fleece_becomes():
    """By hand: 1000 × 0.85 × 0.60 × 0.93 × 0.97 × 0.98 = 450.9 g (the settings' losses)."""
    answer = reckon(a_raw_fleece(yield_pct=60.0)).fleeces["Bramble"]
    assert answer.now_g == 1000
    assert answer.yarn_g.value == pytest.approx(450.9, abs=0.1)
    assert answer.prepared_g.value == pytest.approx(474.3, abs=0.1)
    assert answer.yarn_g.u > 25
    assert answer.working[0].value == 60.0


def test_carded_wool_has_only_spinning_before_it():
    answer = reckon(a_raw_fleece(state="carded")).fleeces["Bramble"]
    assert answer.yarn_g.value == pytest.approx(1000 * 0.97 * 0.98)
    assert answer.prepared_g.value == 1000


def test_a_fleece_without_wool_becomes_nothing():
    answer = reckon(a_book(a_fleece("Bramble"))).fleeces["Bramble"]
    assert (answer.now_g, answer.yarn_g.value) == (0, 0)


def test_metres_follow_from_the_grist():
    metres = metres_at(Figure(450.0, "g", {"yield": 45.0}), 450.0)
    assert (metres.value, metres.u, metres.unit) == (1000.0, 100.0, "m")
