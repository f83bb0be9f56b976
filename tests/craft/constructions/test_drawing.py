from dataclasses import replace

import pytest

from app.craft.constructions.drawing import Drawing, DrawnPiece, Join, Knit, KnitRun, nearest

KNIT = Knit(22, 30)


def test_a_width_in_stitches_and_a_length_in_rows():
    """10 cm: 22 stitches, 30 rows; 11 cm: 24.2, in pairs 24; 9 cm: 27 rows, in pairs 28."""
    assert KNIT.across(10) == 22
    assert KNIT.pairs(11) == 24
    assert KNIT.along(9) == 27
    assert KNIT.along(9, 2) == 28
    assert KNIT.wide(22) == KNIT.long(30) == 10


def test_halves_go_up_and_so_does_what_is_a_hair_below():
    assert [nearest(n) for n in (1.4999, 1.5, 1.5 - 1e-12, 2.5, 0.0)] == [1, 2, 2, 3, 0]


def test_a_join_holds_within_what_is_allowed():
    eased = Join("cap", "armhole", "eased into", 51, 50, "cm", -0.5, 2.5)
    assert eased.holds
    assert not Join("cap", "armhole", "eased into", 49, 50, "cm", -0.5, 2.5).holds
    assert not Join("cap", "armhole", "eased into", 53, 50, "cm", -0.5, 2.5).holds


def test_a_join_says_what_meets_what():
    eased = Join("cap of the sleeve", "armhole", "eased into", 51.86, 51.0, "cm", -0.5, 2.5)
    assert eased.words == "Cap of the sleeve eased into armhole: 51.9 cm to 51.0 cm."
    joined = Join("yoke", "body and sleeves", "joined to", 268, 268, "stitches", 0, 0)
    assert joined.words == "Yoke joined to body and sleeves: 268 stitches to 268 stitches."


def test_stitches_and_rows_of_a_piece():
    runs = (KnitRun(10, 20, 20), KnitRun(10, 20, 10))
    one = DrawnPiece("back", "back", False, 1, runs, KNIT, "none", (), ())
    assert (one.rows, one.worked) == (20, 350)
    assert Drawing((one,)).piece("back") is one
    with pytest.raises(StopIteration):
        Drawing((one,)).piece("front")


def test_half_a_stitch_that_was_rounded_up_still_meets():
    """3.75 cm at 20 in 10 cm is 7.5 stitches, or a hair less in sums: 8 are picked up."""
    join = Join(
        "neck band", "the edge", "picked up along", 8, 7.499999999999998, "stitches", -0.5, 0.5
    )
    assert join.holds
    assert not replace(join, wants=7.49).holds
