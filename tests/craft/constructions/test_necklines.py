from math import hypot

import pytest

from app.craft.constructions.drawing import Knit, KnitRun
from app.craft.constructions.necklines import (
    Neck,
    back_opening,
    front_edge_cm,
    front_opening,
    neck_edge_cm,
    open_up,
)

SQUARE = Knit(10, 10)


def test_a_round_neck_is_cast_off_then_shaped_then_straight():
    """16 stitches, 12 rows: half are cast off at once, the rest over half of the rows."""
    neck = Neck("round", 16, 12, 2)
    assert front_opening(neck, 20) == ((8, 0, 0), (6, 8, 16), (6, 16, 16))
    assert back_opening(neck, 20) == ((18, 0, 0), (2, 16, 16))


def test_a_shallow_neck_is_decreased_at_most_once_a_row():
    """16 stitches over 4 rows: 2 at each edge in the 2 shaped ones, 12 cast off at once; so does
    its half, of which 2 of 8 are decreased."""
    shallow = Neck("high", 16, 4, 2)
    assert shallow.begun == 12
    assert shallow.halved(0).begun == 6
    assert Neck("V", 16, 4, 2).begun == 0


def test_a_v_neck_opens_evenly():
    assert front_opening(Neck("V", 16, 12, 2), 12) == ((0, 0, 0), (12, 0, 16))


def test_an_opening_in_a_shape_that_bends_elsewhere():
    """40 stitches to 30 over 10 rows, then straight for 10; a V of 10 in the last 15 rows."""
    runs = open_up(((10, 40, 30), (10, 30, 30)), ((5, 0, 0), (15, 0, 10)), step=1)
    assert runs == (
        KnitRun(5, 40, 35),
        KnitRun(5, 35, 27, gap=0, gap_to=3),
        KnitRun(10, 27, 20, gap=3, gap_to=10),
    )
    whole = open_up(((10, 40, 30), (10, 30, 30)), ((5, 0, 0), (15, 0, 10)))
    assert all((run.stitches + run.gap) % 2 == 0 for run in whole)


def test_what_is_cast_off_shows_as_a_jump():
    runs = open_up(((4, 20, 20), (6, 16, 16)), ((8, 0, 0), (2, 8, 8)))
    assert runs == (
        KnitRun(4, 20, 20),
        KnitRun(4, 16, 16),
        KnitRun(2, 8, 8, gap=8, gap_to=8),
    )


@pytest.mark.parametrize("shape", ["round", "high"])
def test_the_edge_of_a_round_neck(shape):
    """Half of it: 4 level, then 4 across and 6 up, then 6 straight up."""
    neck = Neck(shape, 16, 12, 2)
    front = 2 * (4 + hypot(4, 6) + 6)
    assert front_edge_cm(neck, SQUARE) == pytest.approx(front)
    assert neck_edge_cm(neck, SQUARE) == pytest.approx(front + 16 + 2 * 2)


def test_the_edge_of_a_v_neck():
    assert front_edge_cm(Neck("V", 16, 15, 2), SQUARE) == pytest.approx(2 * 17)


def test_a_neck_beside_an_opened_front():
    neck = Neck("round", 16, 12, 2)
    assert neck.halved(3).width == 5
    assert neck.narrowed(6).width == 10
