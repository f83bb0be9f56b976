"""The small sums are worked from a plan's own numbers, and by hand here."""

import pytest

from app.book.gauge import Gauge
from app.book.shape import Counted, Metres, Run, Runs
from app.planning.small_sums import Asked, borders, small_sums
from tests.books import a_book, a_part, a_plan, a_yarn

SLEEVE = Runs((Run(135, 48, 80),))


def sums(*parts, **asked):
    book = a_book(a_yarn(), a_plan(), *parts)
    return small_sums(book, book.plan["pullover"], Asked(**asked))


def front_bands(stitches=110, rows=8, **other):
    return a_part("front bands", shape=Counted(stitches, rows), place="band", **other)


def test_buttonholes_divide_the_stitches_of_a_picked_up_band():
    """110 stitches, 7 holes of 3, 4 at either end: (110 − 8 − 21) ÷ 6 = 13.5 between."""
    (one,) = sums(front_bands(), buttons=7).buttons
    assert one.holes == (4, 21, 37, 54, 70, 87, 103)
    assert set(one.between) == {13, 14}
    assert one.holes[-1] + 3 + 4 == 110
    assert one.gap_mm == pytest.approx(13.5 * 100 / 22)


def test_a_band_knit_by_itself_is_divided_by_its_rows():
    (one,) = sums(a_part("button band", shape=Counted(9, 150)), buttons=6, hole=2, end=3).buttons
    assert (one.count, one.unit) == (150, "rows")
    assert one.holes[0] == 3
    assert one.holes[-1] == 150 - 3 - 2


def test_as_many_buttons_as_are_usual():
    """110 stitches at 22 in 10 cm are 50 cm: a button every 8 cm or so is 7."""
    (one,) = sums(front_bands()).buttons
    assert len(one.holes) == 7


def test_one_button_sits_in_the_middle():
    (one,) = sums(front_bands(), buttons=1).buttons
    assert one.holes == (54,)
    assert (one.between, one.gap_mm) == ((), 0.0)


def test_more_buttons_than_fit_are_refused_in_words():
    found = sums(front_bands(), buttons=60)
    assert found.buttons == ()
    assert found.refused == {"buttons": "So many buttonholes do not fit on the front bands."}


def test_picking_up_along_the_row_ends_of_a_flat_part():
    """20 × 26: 3 in 4, 3 in 4, 4 in 5 rows; 104 rows are 80 stitches."""
    back = a_part("back", shape=Counted(100, 104), gauge=Gauge(20.0, 26.0))
    (one,) = sums(back, a_part("sleeve", in_round=True, place="sleeve")).picked_up
    assert (one.part, one.rows, one.stitches) == ("back", 104, 80)
    assert one.turn == ((3, 4), (3, 4), (4, 5))


def test_with_more_stitches_than_rows_every_row_gives_one():
    (one,) = sums(a_part("back", shape=Counted(100, 40), gauge=Gauge(30.0, 20.0))).picked_up
    assert one.turn == ()


def test_a_border_fits_a_multiple_flat_with_its_edge_and_round_without():
    """2×2 rib: 229 flat is 226 or 230, round 228 or 232."""
    flat = a_part("back", shape=Counted(229, 120))
    tube = a_part("body", shape=Counted(229, 120), place="body", in_round=True)
    found = {one.part: (one.below, one.above) for one in sums(flat, tube).fits}
    assert found == {"back": (226, 230), "body": (228, 232)}


def test_a_sleeve_is_brought_to_other_stitches():
    found = sums(a_part("sleeves", shape=SLEEVE, in_round=True), part_id="sleeves", stitches_to=70)
    assert found.shaped.startswith("Increase one stitch on each side of the marker")
    assert ": 70 stitches" in found.shaped


def test_too_steep_a_sleeve_is_refused():
    found = sums(a_part("sleeves", shape=SLEEVE), part_id="sleeves", stitches_to=400)
    assert found.shaped == ""
    assert found.refused == {"to": "That is more than one stitch at each end of its 135 rows."}


def test_a_plan_without_rows_has_nothing_to_work_from():
    assert not sums(a_part("loom", shape=Metres(100_000))).any
    book = a_book(a_plan(gauge=None, yarns=()), a_part())
    assert not small_sums(book, book.plan["pullover"], Asked()).any


def test_a_part_without_a_row_is_passed_over():
    assert [one.part for one in sums(a_part("back"), a_part("none", shape=Runs(()))).fits] == [
        "back"
    ]


def test_borders_are_patterns_that_repeat():
    assert "2×2 rib" in borders()
    assert "stocking stitch" not in borders()
