import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.planning.picture_outline import area, spans, strip

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
    pieces = [area(strip(outline, low, high)) for low, high in zip(ends, ends[1:], strict=False)]
    assert sum(pieces) == pytest.approx(area(outline))
