import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.craft.counts import COUNTS, plied, to_tex
from app.craft.plying import cabled, equal_singles, missing_single, resultant

SYSTEM = st.sampled_from(sorted(COUNTS))
NUMBER = st.floats(0.5, 500)
CONTRACTION = st.floats(1, 1.3)


def test_which_single_with_a_40_gives_a_13_and_a_third():
    """Brooks backwards: 3/40 − 1/40."""
    assert missing_single("cotton", 40 / 3, 40) == pytest.approx(20)


def test_a_missing_single_in_tex_is_a_difference():
    assert missing_single("tex", 450, 150, 120) == pytest.approx(180)
    assert missing_single("tex", 495, 150, 120, contraction=1.1) == pytest.approx(180)


@pytest.mark.parametrize("others", [(450,), (300, 200)])
def test_nothing_is_missing_where_the_others_are_heavy_enough(others):
    assert missing_single("tex", 450, *others) is None


def test_a_cable_folds_step_by_step():
    """60 cotton two-fold is 30, three of those are 10; 20 tex becomes 40, then 120."""
    assert cabled("cotton", 60, 2, 3) == pytest.approx(10)
    assert cabled("tex", 20, 2, 3) == pytest.approx(120)
    assert cabled("tex", 20) == 20


def test_contraction_makes_the_resultant_heavier():
    assert resultant("tex", 200, 200, contraction=1.05) == pytest.approx(420)
    assert resultant("cotton", 40, 40, contraction=1.05) == pytest.approx(20 / 1.05)
    assert equal_singles("tex", 420, 2, contraction=1.05) == pytest.approx(200)


@pytest.mark.property
@given(SYSTEM, NUMBER, NUMBER, NUMBER, CONTRACTION)
def test_the_missing_single_is_the_one_that_was_plied(system, one, two, three, contraction):
    whole = resultant(system, one, two, three, contraction=contraction)
    found = missing_single(system, whole, one, two, contraction=contraction)
    assert found == pytest.approx(three, rel=1e-6)


@pytest.mark.property
@given(SYSTEM, NUMBER, st.integers(1, 8), CONTRACTION)
def test_equal_singles_make_the_yarn(system, wanted, plies, contraction):
    single = equal_singles(system, wanted, plies, contraction)
    assert resultant(system, *[single] * plies, contraction=contraction) == pytest.approx(wanted)


@pytest.mark.property
@given(SYSTEM, NUMBER, st.integers(1, 5), st.integers(1, 5))
def test_a_cable_weighs_what_all_its_singles_weigh(system, number, inner, outer):
    once = plied(system, *[number] * (inner * outer))
    assert to_tex(system, cabled(system, number, inner, outer)) == pytest.approx(
        to_tex(system, once)
    )


@pytest.mark.parametrize(
    ("call", "words"),
    [
        (lambda: resultant("tex", 200, contraction=0.9), "contraction is at least 1, not 0.9"),
        (lambda: resultant("tex"), "at least one yarn"),
        (lambda: cabled("cotton", 60, 0), "at least one yarn"),
        (lambda: missing_single("cotton", 0, 40), "must be more than zero"),
        (lambda: missing_single("cotton", 20, -40), "must be more than zero"),
        (lambda: equal_singles("cotton", 20, 0), "at least one ply, not 0"),
    ],
)
def test_outside_the_domain(call, words):
    with pytest.raises(ValueError, match=words):
        call()
