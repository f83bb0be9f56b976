"""A swatch, and the gauge that is taken from it."""

import pytest

from app.book.checks import check
from app.book.gauge import Gauge
from app.book.swatch import Count, gauge_of
from tests.books import a_book, a_part, a_plan, a_swatch, a_yarn

TAKEN = Gauge(22.0, 30.0, swatch_id="first try")


def test_the_gauge_is_that_of_the_washed_swatch():
    worked = Count(23.0, 100, 29.0, 100)
    gauge = gauge_of(a_swatch(worked=worked, finished=Count(27.5, 125, 36.0, 120)))
    assert gauge == Gauge(22.0, 30.0, True, 4.0, swatch_id="first try")


def test_until_it_is_washed_it_is_the_gauge_off_the_needles():
    gauge = gauge_of(a_swatch(worked=Count(23.0, 100, 29.0, 100), finished=None, needle_mm=None))
    assert gauge == Gauge(23.0, 29.0, washed=False, swatch_id="first try")


def test_a_swatch_not_counted_gives_none():
    assert gauge_of(a_swatch(finished=None)) is None


def test_a_sound_swatch_has_nothing_said_of_it():
    book = a_book(a_yarn(), a_swatch(), a_plan(gauge=TAKEN), a_part(gauge=TAKEN))
    assert check(book) == []


def test_a_gauge_names_a_swatch_that_is_there():
    book = a_book(a_yarn(), a_plan(gauge=TAKEN), a_part(gauge=TAKEN))
    text = "gauge.swatch_id: names first try, which is not in the book."
    assert [str(one) for one in check(book)] == [
        f"plan pullover, {text}",
        f"part body of pullover, {text}",
    ]


def test_a_swatch_names_a_yarn_that_is_there():
    assert [str(one) for one in check(a_book(a_swatch()))] == [
        "swatch first try, yarn_id: names grey two-ply, which is not in the book."
    ]


@pytest.mark.parametrize(
    ("fields", "where"),
    [
        ({"needle_mm": 0.0}, "needle_mm"),
        ({"weight_mg": 0}, "weight_mg"),
        ({"scale_mg": 0}, "scale_mg"),
        ({"whole_stitches": -1.0}, "whole_stitches"),
        ({"unravelled": 0.0}, "unravelled"),
        ({"thread_mm": -5}, "thread_mm"),
        ({"finished": Count(22.0, 0, 30.0, 100)}, "finished.width_mm"),
        ({"worked": Count(22.0, 100, 0.0, 100)}, "worked.rows"),
    ],
)
def test_sizes_are_above_zero(fields, where):
    (found,) = check(a_book(a_yarn(), a_swatch(**fields)))
    assert (found.record, found.field) == ("swatch first try", where)
    assert "more than zero" in found.text
