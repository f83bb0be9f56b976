import pytest

from app.craft.constructions.bands import (
    at_most,
    band_count,
    edge_band,
    live,
    picked_up,
    share_of,
)
from app.craft.constructions.drawing import Band, Knit

KNIT = Knit(20, 30, 3.25)
RIB = Band(5, "2×2 rib", KNIT)


def test_the_nearest_count_the_pattern_repeats_over():
    """2×2 rib: 4 in the round, 4 and 2 over when flat; a tie takes the smaller."""
    assert band_count(101, "2×2 rib", in_round=True) == 100
    assert band_count(102, "2×2 rib", in_round=True) == 100
    assert band_count(103, "2×2 rib", in_round=True) == 104
    assert band_count(101, "2×2 rib", in_round=False) == 102
    assert band_count(101, "moss stitch", in_round=False) == 101
    assert band_count(101.4, "garter stitch", in_round=False) == 101
    assert band_count(101.4, "cables", in_round=False) == 101
    assert band_count(0, "2×2 rib", in_round=False) == 6


@pytest.mark.published
def test_a_rib_is_cast_on_with_nine_tenths():
    """Zimmermann, Knitting Without Tears: 189 for a body of 210."""
    assert share_of("1×1 rib") * 210 == pytest.approx(189)
    assert share_of("garter stitch") == 1


def test_a_cuff_of_its_own_gauge():
    """20 cm at 20 in 10 cm: 40, of which 36; 5 cm are 15 rounds; 40 stitches go on."""
    cuff = edge_band("cuffs", "cuff", RIB, 20, 40, in_round=True, copies=2)
    assert cuff.runs[0].stitches == 36
    assert cuff.rows == 15
    assert cuff.knit.needle_mm == 3.25
    assert cuff.words == (
        "Cast on 36 stitches and work 15 rounds in 2×2 rib.",
        "In the first round that follows increase 4 evenly, one in every 9 stitches: 40 stitches.",
    )


def test_a_picked_up_band_is_within_a_stitch_and_then_a_multiple():
    """30.7 cm at 20 in 10 cm: 61.4, so 61 are picked up, and 1 is decreased to a multiple of 4."""
    ((made, (join,)),) = picked_up("neck band", "neck", RIB, 30.7, in_round=True)
    assert (join.has, join.wants) == (61, pytest.approx(61.4))
    assert join.holds
    assert made.runs[0].stitches == 60
    assert made.words[:2] == (
        "Pick up 61 stitches.",
        "In the first round that follows decrease one stitch: 60 stitches.",
    )


def test_along_rows_it_is_told_how_many_each_give():
    """20 stitches to 26 rows: 3 in 4, 3 in 4, 4 in 5."""
    band = Band(3, "garter stitch", KNIT)
    ((made, _),) = picked_up("front bands", "band", band, 50, in_round=False, copies=2, rows=26)
    assert made.words[0] == "Pick up 100 stitches: of the rows 3 in 4, 3 in 4, 4 in 5, and so on."
    ((made, _),) = picked_up("front bands", "band", band, 50, in_round=False, copies=2, rows=18)
    assert made.words[0] == "Pick up 100 stitches."


def test_a_band_knit_on_from_live_stitches():
    ((made, (join,)),) = live("neck band", "neck", RIB, 80, in_round=True)
    assert made.words == (
        "Knit on from 80 stitches.",
        "Work 15 rounds in 2×2 rib and cast off loosely.",
    )
    assert join.has == join.wants == 80


def test_a_band_without_depth_is_none():
    none = Band(0, "2×2 rib", KNIT)
    assert edge_band("hem", "band", none, 20, 40, in_round=False, copies=1) is None
    assert picked_up("neck band", "neck", none, 30, in_round=True) == ()


def test_a_short_piece_has_a_short_band():
    assert at_most(RIB, 3).depth_cm == 3
    assert at_most(RIB, 8).depth_cm == 5
    assert at_most(RIB, -1).depth_cm == 0
