"""Needle against gauge over the swatches of one yarn, and which needle to try."""

import pytest

from app.book.swatch import Count
from app.planning.needle_line import needle_asked, needle_line
from app.planning.swatches import tell
from app.planning.yarns import Lots
from tests.books import a_book, a_reading, a_skein, a_swatch, a_yarn


def tried(needle, stitches, id=None, **other):
    return a_swatch(
        id or f"on {needle}", needle_mm=needle, finished=Count(stitches, 100, 30.0, 100), **other
    )


def asked(stitches, *swatches, wraps=None, of=None):
    records = [a_yarn(), a_skein(), *swatches]
    if wraps:
        records.append(a_reading(id="wrapped", kind="wraps", value=wraps * 1000))
    lots = Lots(a_book(*records, held={"G-1": (96, 213)}))
    swatch = of or swatches[0]
    known = needle_line(swatch, lots)
    return known, needle_asked(stitches, swatch, tell(swatch, lots), known, lots)


THREE = (tried(3.5, 24.0), tried(4.0, 22.0), tried(4.5, 20.0))


def test_a_line_through_three_swatches():
    known, answer = asked(23.0, *THREE)
    assert known.line.slope == pytest.approx(-4.0)
    assert answer.needle.value == pytest.approx(3.75)
    assert answer.needle.u == pytest.approx(0.0, abs=1e-9)
    assert not answer.beyond
    assert "3 swatches" in answer.steps[0].source


def test_scatter_makes_a_range():
    """Least squares by hand: slope −4, scatter √(0.96) about it; at the middle u √(1 + 1/4)."""
    four = (tried(3.5, 24.4), tried(4.0, 21.6), tried(4.0, 22.4, "again"), tried(4.5, 19.6))
    _, answer = asked(22.0, *four)
    known, _ = asked(22.0, *four)
    scatter = known.line.residual_sd
    assert answer.needle.u == pytest.approx(scatter * 1.25**0.5 / abs(known.line.slope), rel=1e-6)


def test_two_swatches_take_the_usual_scatter():
    _, answer = asked(22.0, tried(3.5, 24.0), tried(4.5, 20.0))
    assert answer.needle.value == pytest.approx(4.0)
    assert answer.needle.u == pytest.approx(0.6 * 1.5**0.5 / 4)


def test_a_needle_nobody_tried_is_said_to_be_beyond():
    _, answer = asked(26.0, *THREE)
    assert answer.beyond
    assert answer.needle.value == pytest.approx(3.0)


def test_swatches_that_do_not_loosen_tell_nothing():
    _, answer = asked(22.0, tried(3.5, 20.0), tried(4.5, 21.0))
    assert answer.needle is None
    assert "do not become looser" in answer.why


def test_one_swatch_shows_the_hand():
    """The same gauge leads back to the same needle."""
    for wraps in (None, 13):
        known, answer = asked(22.0, tried(4.0, 22.0), wraps=wraps)
        assert known.line is None
        assert answer.needle.value == pytest.approx(4.0, abs=0.01)
        assert answer.needle.u > 0


def test_more_stitches_want_a_thinner_needle():
    _, more = asked(26.0, tried(4.0, 22.0))
    assert more.needle.value < 4.0


@pytest.mark.parametrize(
    ("swatch", "why"),
    [
        (a_swatch(needle_mm=None), "wants a count and its needle first"),
        (a_swatch(finished=None), "wants a count and its needle first"),
        (a_swatch(yarn_id=None), "grist of its yarn is not known"),
    ],
)
def test_too_little_to_tell_from(swatch, why):
    _, answer = asked(22.0, swatch)
    assert answer.needle is None
    assert answer.between == (0.0, 0.0)
    assert why in answer.why


def test_only_like_swatches_are_compared():
    first = tried(4.0, 22.0, "first")
    others = (
        tried(4.5, 20.0, "rib", pattern="2×2 rib"),
        tried(4.5, 20.0, "other yarn", yarn_id=None),
        a_swatch("not washed", needle_mm=4.5, worked=Count(20.0, 100, 30.0, 100), finished=None),
        tried(4.5, 20.0, "alike", pattern="Stocking stitch"),
    )
    known, _ = asked(22.0, first, *others)
    assert [one.swatch.id for one in known.tried] == ["first", "alike"]


def test_swatches_without_a_yarn_stand_alone():
    known, _ = asked(22.0, tried(4.0, 22.0, yarn_id=None), tried(4.5, 20.0, yarn_id=None))
    assert [one.needle_mm for one in known.tried] == [4.0]
