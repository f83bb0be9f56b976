"""A garment on the needles keeps the yarn in a stitch that it was cast on with."""

from datetime import date

import pytest

from app.book.knitting import CastOn
from app.craft.figure import Figure
from app.planning.knitting.cast_on import as_cast_on, cast_on
from tests.books import a_part, a_plan

DAY = date(2026, 6, 1)
BODY = Figure(1.80, "cm", {"gauge": 0.03, "scale": 0.04})


def test_it_is_kept_with_its_uncertainty_and_its_causes():
    plan = a_plan(cast_on=cast_on(DAY, {"body": BODY}))
    now = Figure(2.0, "cm", {"gauge": 0.06, "hand": 0.08})
    kept, (step,) = as_cast_on(plan, a_part(), now)
    assert kept.value == 1.80
    assert kept.u == pytest.approx(0.05)
    assert kept.causes["hand"] == pytest.approx(0.04)
    assert "2026-06-01" in step.how


def test_a_part_added_later_goes_by_what_is_known_now():
    plan = a_plan(cast_on=cast_on(DAY, {"body": BODY}))
    assert as_cast_on(plan, a_part("hood"), BODY) is None
    assert as_cast_on(a_plan(), a_part(), BODY) is None
    assert as_cast_on(a_plan(cast_on=CastOn(DAY)), a_part(), BODY) is None


def test_an_exact_figure_has_no_causes_to_scale():
    plan = a_plan(cast_on=cast_on(DAY, {"body": BODY}))
    assert as_cast_on(plan, a_part(), Figure(2.0, "cm"))[0] == Figure(1.80, "cm")
