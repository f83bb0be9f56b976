"""Where to fade or alternate, so that a yarn that will not last reaches the end."""

from dataclasses import replace

import pytest

from app.planning.knitting.fade_when import fades_when, rows_ahead, sure_metres
from tests.books import some_progress
from tests.planning.knitting.test_forecast import BODY, ROW_M, SLEEVE_M, SLEEVES, ahead_of


def taken(metres, begins, last=0.25):
    """By another route: every row named with its own share."""
    found = 0.0
    for at, m in enumerate(metres):
        along = (at - begins) / max(1, len(metres) - 1 - begins)
        found += m * (1.0 if at < begins else 1 - (1 - last) * along)
    return found


def test_a_yarn_that_reaches_the_end_needs_none():
    assert fades_when(ahead_of(BODY, some_progress(rows=20))) == ()


def test_the_fade_begins_at_the_latest_row_that_still_lasts():
    ahead = ahead_of(BODY, some_progress(rows=1), metres=(222.0, 222.0))
    (yarn,), (found,) = ahead.yarns, fades_when(ahead)
    have, metres = sure_metres(ahead, yarn), [ROW_M] * 119
    begins = found.at.row - 2
    assert (found.kind, found.at.part, found.at.pieces) == ("fade", "body", 1)
    assert taken(metres, begins) <= have * 1.001
    assert taken(metres, begins + 1) > have * 0.999
    assert 0.25 < found.share < 1


def test_what_surely_lasts_is_less_than_what_is_there():
    ahead = ahead_of(BODY, some_progress(rows=1), metres=(222.0, 222.0))
    (yarn,) = ahead.yarns
    surely = sure_metres(ahead, yarn)
    assert 0 < surely < 444
    assert surely == pytest.approx(yarn.at_least.rows * ROW_M - ROW_M, abs=2 * ROW_M)


def test_where_a_fade_comes_too_late_they_alternate_from_here():
    ahead = ahead_of(BODY, some_progress(rows=1), metres=(250.0,))
    (found,) = fades_when(ahead)
    assert (found.kind, found.at.row) == ("alternate", 2)
    assert found.share == pytest.approx(
        sure_metres(ahead, ahead.yarns[0]) / (119 * ROW_M), rel=0.02
    )


def test_with_less_than_a_quarter_nothing_helps():
    assert fades_when(ahead_of(BODY, some_progress(rows=1), metres=(80.0,))) == ()


def test_both_sleeves_are_knit_alike_while_they_are_as_far_as_each_other():
    ahead = ahead_of(BODY, SLEEVES, some_progress(rows=120))
    (yarn,) = ahead.yarns
    rows = rows_ahead(ahead, yarn)
    assert (len(rows), rows[0].part, rows[0].row, rows[0].pieces) == (100, "sleeves", 1, 2)
    assert sum(one.metres for one in rows) == pytest.approx(2 * SLEEVE_M, rel=1e-4)


def test_a_sleeve_that_is_ahead_of_the_other_is_knit_by_itself():
    ahead = ahead_of(BODY, SLEEVES, some_progress(rows=120), some_progress("sleeves", rows=60))
    rows = rows_ahead(ahead, ahead.yarns[0])
    assert [(one.row, one.pieces) for one in (rows[0], rows[39], rows[40])] == [
        (61, 1),
        (100, 1),
        (1, 1),
    ]


def test_a_garment_that_is_done_has_no_row_to_begin_at():
    ahead = ahead_of(BODY, some_progress(rows=120), metres=(100.0,))
    assert fades_when(ahead) == ()
    assert rows_ahead(ahead, replace(ahead.yarns[0])) == ()
