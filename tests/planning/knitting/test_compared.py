"""What was planned of a finished garment, against what it took."""

import pytest

from app.book.knitting import Took
from app.planning.hours import hours_for
from app.planning.knitting.compared import compared
from tests.books import a_book, a_part, a_plan, a_yarn

SLEEVES = a_part("sleeves", copies=2, position=2)


def told(*took, **plan):
    known = {"state": "finished", "took": took} | plan
    return compared(a_book(a_yarn(), a_plan(**known), a_part(), SLEEVES), "pullover")


def test_each_part_against_its_plan():
    """A tube of 229 × 120 stitches of 1.809 cm is 497.1 m."""
    found = told(
        Took("body", mg=240_000, mm=530_000, minutes=900),
        Took("sleeves", mg=450_000, mm=994_300, minutes=1_800),
    )
    body, sleeves = found.parts
    assert body.planned_m == pytest.approx(497.1, abs=0.2)
    assert body.times == pytest.approx(530 / 497.1, rel=1e-3)
    assert sleeves.times == pytest.approx(1.0, rel=1e-3)
    assert (found.took_g, found.took_h) == (690.0, 45.0)
    assert found.planned_m == pytest.approx(3 * 497.13, rel=1e-3)
    assert found.took_m == pytest.approx(1524.3)
    assert found.planned_h == pytest.approx(hours_for(3 * 229 * 120).value)


def test_hours_nobody_noted_are_not_known():
    assert told(Took("body", mg=240_000, mm=530_000)).took_h is None


def test_a_part_or_role_that_is_gone_has_no_plan():
    found = told(Took("collar", mg=1, mm=1), Took("body", role="contrast", mg=9_000, mm=20_000))
    (one,) = found.parts
    assert (one.planned_m, one.yarn_id, one.times) == (0.0, None, None)


def test_grams_alone_say_nothing_of_metres():
    (one,) = told(Took("body", mg=240_000)).parts
    assert (one.took_m, one.times) == (0.0, None)


@pytest.mark.parametrize("plan", [{"state": "being knit"}, {"took": ()}])
def test_nothing_kept_is_nothing_told(plan):
    assert told(**{"took": (Took("body", mg=1, mm=1),)} | plan) is None
