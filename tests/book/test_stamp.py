from dataclasses import fields, replace

import pytest

from app.book.gauge import Gauge
from app.book.stamp import stamp
from tests.books import a_plan, a_yarn


def test_twelve_hexadecimal_digits_that_stay_the_same():
    assert stamp(a_yarn()) == stamp(a_yarn())
    assert len(stamp(a_yarn())) == 12
    assert int(stamp(a_yarn()), 16) >= 0


@pytest.mark.parametrize("field", [one.name for one in fields(a_yarn())])
def test_a_change_of_any_field_shows(field):
    assert stamp(replace(a_yarn(), **{field: "other"})) != stamp(a_yarn())


def test_a_change_deep_inside_shows():
    other = a_plan(gauge=Gauge(22.0, 30.0, washed=False))
    assert stamp(other) != stamp(a_plan())


def test_a_number_is_the_same_whether_it_came_whole_or_not():
    assert stamp(a_plan(gauge=Gauge(22, 30))) == stamp(a_plan(gauge=Gauge(22.0, 30.0)))
