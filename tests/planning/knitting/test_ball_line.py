"""A ball as a line: behind it what was weighed, ahead of it a band."""

import pytest

from app.planning.knitting.ball_line import ball_line
from tests.books import some_progress
from tests.planning.knitting.test_forecast import BODY, ROW_M, ahead_of, at


def a_line(*weighed):
    ahead = ahead_of(BODY, some_progress(rows=weighed[-1].rows), *weighed)
    (ball,) = ahead.balls
    return ball, ball_line(ball)


def test_it_begins_with_the_last_weighing_and_ends_at_nothing():
    ball, line = a_line(at(0, 100.0), at(20, 62.0), at(40, 26.0))
    assert [g for _, g in line.weighed] == [100.0, 62.0, 26.0]
    assert line.ahead[0].x == pytest.approx(40 * ROW_M, rel=0.01)
    assert line.ahead[0].g == pytest.approx(26.0, abs=0.5)
    assert line.ahead[-1].g == 0.0
    assert (line.begun.rows, line.end.rows, line.end.of) == (0, 120, 120)
    assert line.end_x == pytest.approx(120 * ROW_M, rel=0.01)
    assert ball.here.rows == 40


def test_the_band_widens_and_never_lies_below_nothing():
    _, line = a_line(at(0, 100.0), at(20, 60.0))
    widths = [one.most_g - one.least_g for one in line.ahead if one.least_g > 0]
    assert widths == sorted(widths)
    assert all(0 <= one.least_g <= one.g <= one.most_g for one in line.ahead)


def test_a_ball_that_goes_on_is_shown_beyond_the_end_of_the_piece():
    _, line = a_line(at(100, 100.0), at(115, 72.0))
    assert line.far_x > line.end_x
    assert line.ahead[0].x < line.end_x
