"""What a skein really holds, by how it was measured."""

import pytest

from app.planning import reckon
from app.planning.supply import working
from tests.books import DAY, a_book, a_reading, a_skein, a_yarn

GREY = "grey two-ply"


def reel(code="G-1", turns=142.0, finished=True):
    return a_reading(
        code,
        round(turns * 1500),
        id=f"{code} reeled {finished}",
        kind="length",
        typed=f"{turns:g} turns",
        unit="turns",
        instrument="reel",
        girth_mm=1500,
        turns=turns,
        finished=finished,
    )


def length(code, metres, instrument, finished=True):
    return a_reading(
        code,
        round(metres * 1000),
        id=f"{code} {instrument} {finished}",
        kind="length",
        typed=f"{metres} m",
        unit="m",
        instrument=instrument,
        finished=finished,
    )


def held(*records, g=96.0, m=213.0):
    book = a_book(a_yarn(), a_skein("G-1"), *records, held={"G-1": (g, m)})
    return reckon(book).shelf["G-1"].held, book


@pytest.mark.published
def test_142_turns_of_a_1_5_m_reel_are_213_m():
    """Principle of ISO 2060: length = turns × girth; 0.5 % girth, half a turn."""
    figure, book = held(reel())
    assert figure.value == pytest.approx(213.0)
    assert 1.0 < figure.u < 1.3
    (step,) = working(book, "G-1")
    assert "142 turns × 1.5 m" in step.how
    assert step.standing == "measured"


def test_two_skeins_of_one_reel_share_its_error():
    book = a_book(
        a_yarn(), a_skein("G-1"), a_skein("G-2"), reel("G-1"), reel("G-2"),
        held={"G-1": (96, 213), "G-2": (96, 213)},
    )  # fmt: skip
    one, two = (reckon(book).shelf[code].held for code in ("G-1", "G-2"))
    assert 0 < one.covariance(two) < one.u * two.u


def test_what_was_used_leaves_the_share_of_the_error():
    whole, _ = held(reel())
    half, _ = held(reel(), m=106.5)
    assert half.value == pytest.approx(106.5)
    assert half.u == pytest.approx(whole.u / 2)


def test_before_finishing_a_skein_is_expected_shorter_and_much_less_sure():
    figure, book = held(reel(finished=False))
    assert figure.value == pytest.approx(213 * 0.88)
    assert figure.u > 0.08 * 213
    shrink, _ = working(book, "G-1")
    assert (shrink.value, shrink.standing) == (pytest.approx(12), "assumed")


def test_the_yarns_own_shrinkage_is_used_when_it_is_known():
    other = a_skein("G-2")
    before, after = length("G-2", 200, "tape", finished=False), length("G-2", 160, "tape")
    book = a_book(
        a_yarn(), a_skein("G-1"), other, reel(finished=False), before, after,
        held={"G-1": (96, 213), "G-2": (70, 160)},
    )  # fmt: skip
    figure = reckon(book).shelf["G-1"].held
    assert figure.value == pytest.approx(213 * 0.8)
    assert figure.u < 0.06 * 213
    assert working(book, "G-1")[0].standing == "measured"


@pytest.mark.parametrize(("instrument", "share"), [("tape", 0.02), ("label", 0.02)])
def test_tape_and_label(instrument, share):
    figure, _ = held(length("G-1", 213, instrument))
    assert figure.u == pytest.approx(213 * share)
    _, book = held(length("G-1", 213, instrument))
    assert working(book, "G-1")[0].how == f"by {instrument}: 213 m"


def test_an_estimate_and_no_reading_are_wide_and_said():
    guessed, book = held(length("G-1", 213, "estimate"))
    unmeasured, other = held()
    assert guessed.u == unmeasured.u == pytest.approx(21.3)
    assert working(book, "G-1")[0].standing == working(other, "G-1")[0].standing == "assumed"


def test_a_left_over_that_was_only_weighed_takes_its_yarns_grist():
    book = a_book(a_yarn(), a_skein("G-1"), a_skein("G-2"), held={"G-1": (96, 213), "G-2": (48, 0)})
    figure = reckon(book).shelf["G-2"].held
    assert figure.value == pytest.approx(106.5)
    assert working(book, "G-2")[0].source == "ISO 1144"


def test_only_weighed_and_of_no_known_grist_holds_no_metres():
    book = a_book(a_skein("G-2", None), held={"G-2": (48, 0)})
    assert reckon(book).shelf["G-2"].held.value == 0


def test_what_is_empty_or_put_away_is_not_on_the_shelf():
    away = a_skein("G-2", put_away=DAY)
    book = a_book(a_yarn(), a_skein("G-1"), away, a_skein("G-3"), held={"G-2": (96, 213)})
    assert reckon(book).shelf == {}
