import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from app.craft.lines import fitted_line

NEEDLES = [(3.25, 24.0), (3.75, 22.5), (4.0, 21.5), (4.5, 20.4)]
"""Stitches in 10 cm of four swatches of one yarn."""


def test_a_line_by_hand():
    """(0, 1), (1, 2), (2, 6): slope 5/2, mean 3 at 1; misses 1/2, −1, 1/2."""
    line = fitted_line([(0, 1), (1, 2), (2, 6)])
    assert line.slope == pytest.approx(2.5)
    assert line.intercept == pytest.approx(0.5)
    assert line.residual_sd == pytest.approx(1.5**0.5)
    assert line.slope_u == pytest.approx((1.5 / 2) ** 0.5)
    assert line.intercept_u == pytest.approx((1.5 * (1 / 3 + 1 / 2)) ** 0.5)
    assert line.fitted_share == pytest.approx(1 - 1.5 / 14)


def test_a_thicker_needle_gives_fewer_stitches_and_the_line_says_how_many():
    line = fitted_line(NEEDLES)
    assert line.slope < 0
    assert line.y_at(line.x_at(22)) == pytest.approx(22)
    ahead = line.ahead(4.25, "st/10 cm", usual_sd=0.7)
    assert 20.4 < ahead.value < 21.5
    assert ahead.chief_cause == "scatter of one observation"


def test_far_from_what_was_measured_the_line_is_less_sure():
    line = fitted_line(NEEDLES)
    assert line.ahead(8, "st/10 cm", 0.7).u > 2 * line.ahead(4, "st/10 cm", 0.7).u


def test_two_swatches_show_no_scatter_and_take_the_usual_one():
    line = fitted_line(NEEDLES[:2])
    assert (line.residual_sd, line.slope_u, line.intercept_u) == (None, None, None)
    ahead = line.ahead(3.5, "st/10 cm", usual_sd=0.7)
    assert ahead.value == pytest.approx(23.25)
    assert ahead.u == pytest.approx(0.7 * 1.5**0.5)


def test_a_level_line_tells_no_needle():
    line = fitted_line([(3, 22), (4, 22), (5, 22)])
    assert line.fitted_share == 1
    with pytest.raises(ValueError, match="the line is level"):
        line.x_at(20)


@pytest.mark.parametrize("points", [[], [(4, 22)], [(4, 22), (4, 21)]])
def test_one_needle_makes_no_line(points):
    with pytest.raises(ValueError, match="two different places"):
        fitted_line(points)


@pytest.mark.property
@given(
    st.lists(st.tuples(st.floats(1, 20), st.floats(5, 60)), min_size=3, max_size=12),
    st.floats(-1000, 1000),
)
def test_the_line_moves_with_its_points(points, shift):
    assume(max(x for x, _ in points) - min(x for x, _ in points) > 0.1)
    here, there = fitted_line(points), fitted_line([(x + shift, y) for x, y in points])
    assert there.slope == pytest.approx(here.slope, rel=1e-6, abs=1e-6)
    assert there.y_at(5 + shift) == pytest.approx(here.y_at(5), rel=1e-6, abs=1e-6)
