from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.planning.picture_outline import area, spans, strip, without_straight

SQUARE = ((-5.0, 0.0), (5.0, 0.0), (5.0, 10.0), (-5.0, 10.0))
NOTCHED = ((-5, 0), (5, 0), (5, 10), (2, 10), (2, 6), (-2, 6), (-2, 10), (-5, 10))
"""A front with a square neck, 4 wide and 4 deep."""


def test_a_strip_of_a_square():
    cut = strip(SQUARE, 2.0, 5.0)
    assert area(cut) == pytest.approx(30.0)
    assert {y for _, y in cut} == {2.0, 5.0}


def test_the_fabric_beside_an_opening():
    assert area(NOTCHED) == pytest.approx(84.0)
    assert area(strip(NOTCHED, 7.0, 9.0)) == pytest.approx(12.0)
    assert spans(NOTCHED, 8.0) == [(-5.0, -2.0), (2.0, 5.0)]
    assert spans(NOTCHED, 3.0) == [(-5.0, 5.0)]
    assert spans(NOTCHED, 11.0) == []


@pytest.mark.property
@given(st.lists(st.floats(0.1, 9.9), min_size=1, max_size=30), st.sampled_from([SQUARE, NOTCHED]))
def test_strips_add_up_to_the_whole(cuts: list[float], outline):
    ends = sorted({0.0, 10.0, *cuts})
    pieces = [area(strip(outline, low, high)) for low, high in pairwise(ends)]
    assert sum(pieces) == pytest.approx(area(outline))


def test_points_on_a_straight_way_are_left_out():
    along = ((-5, 0), (0, 0), (5, 0), (5, 4), (5, 4), (5, 10), (-5, 10), (-5, 3))
    assert without_straight(along) == ((-5, 0), (5, 0), (5, 10), (-5, 10), (-5, 3))
    there_and_back = ((0, 0), (5, 0), (2, 0), (2, 5))
    assert without_straight(there_and_back) == there_and_back
