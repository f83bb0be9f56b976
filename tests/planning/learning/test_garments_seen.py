"""What finished garments tell, and what that teaches of the next one."""

from dataclasses import replace
from datetime import date
from math import exp, hypot

import pytest

from app.book.gauge import Gauge
from app.book.knitting import CastOn, Settled, Took
from app.book.shape import Counted, Run, Runs, Stated
from app.craft.learning import Belief, Normal, Observed
from app.planning import reckon
from app.planning.learning import learn
from app.planning.learning.garments_seen import PATTERN, PLACE, garment_hours_seen, garments_seen
from app.planning.learning.garments_taught import taught
from app.planning.needs import needs_of
from app.planning.needs_planned import planned_needs, stated_factor
from app.planning.yarns import Lots
from tests.books import (
    a_book,
    a_mark,
    a_part,
    a_pattern,
    a_plan,
    a_skein,
    a_stint,
    a_swatch,
    a_weighing,
    a_yarn,
)

TUBE_M = 497.13
NEXT = a_plan("next"), a_part("next body", "next", place="body")


def old(name="old", times=1.1, day=1, part=None, minutes=None, **plan):
    """A garment that took so much more or less than planned."""
    part = part or a_part(f"{name} body", name, place="body")
    took = (Took(part.id, mg=1, mm=round(TUBE_M * times * 1000), minutes=minutes),)
    known = {"state": "finished", "finished_on": date(2026, 1, day), "took": took}
    return a_plan(name, **known | plan), part


def book_of(*records, **other):
    flat = [one for each in records for one in (each if isinstance(each, tuple) else (each,))]
    return a_book(a_yarn(), a_skein(), *flat, held={"G-1": (96, 213)}, **other)


def need_of(book, plan_id="next"):
    lots = Lots(book)
    (need,) = needs_of(book.plan[plan_id], book.parts_of[plan_id], lots)
    return need


def metres(book, plan_id="next"):
    return need_of(book, plan_id).roles[0].need


# What is seen


def test_a_finished_garment_is_an_observation_of_what_it_took():
    (seen,) = garments_seen(book_of(old(times=1.06)))
    assert seen.factors == ("took by gauge",)
    assert seen.measured == pytest.approx(1.06, rel=1e-4)
    assert (seen.unit, seen.usual, seen.day) == ("times", 1.0, date(2026, 1, 1))


@pytest.mark.parametrize("plan", [{"state": "being knit"}, {"state": "put away"}, {"took": ()}])
def test_what_is_not_finished_or_not_kept_tells_nothing(plan):
    assert [*garments_seen(book_of(old(**plan)))] == []


def test_it_is_compared_with_a_plan_without_learning_whatever_it_was_cast_on_with():
    cast_on = CastOn(date(2026, 1, 1), (Settled("yarn in a stitch, old body", 2.5, 0.1),))
    (seen,) = garments_seen(book_of(old(times=1.06, cast_on=cast_on)))
    assert seen.measured == pytest.approx(1.06, rel=1e-4)


def test_a_swatch_that_was_weighed_is_a_factor_of_its_own():
    swatch = a_swatch(yarn_id="grey two-ply", weight_mg=10_000, whole_stitches=1228, scale_mg=1000)
    gauge = Gauge(22.0, 30.0, needle_mm=4.0, swatch_id=swatch.id)
    (seen,) = garments_seen(book_of(swatch, old(gauge=gauge)))
    assert seen.factors == ("took by swatch",)


def test_a_stated_amount_is_told_by_its_source():
    pattern = a_pattern(source="a printed leaflet, 1998")
    part = a_part("shawl", "old", shape=Stated(600_000))
    (seen,) = garments_seen(book_of(pattern, old(part=part, pattern_id=pattern.id)))
    assert seen.factors == ("took of stated",)
    assert seen.measured == pytest.approx(TUBE_M * 1.1 / 600, rel=1e-4)
    assert (seen.usual, seen.names.source) == (0.83, "a printed leaflet, 1998")


def test_a_trifle_tells_nothing():
    part = a_part("tab", "old", shape=Counted(4, 4))
    assert [*garments_seen(book_of(old(part=part)))] == []


def sleeved(body=1.0, sleeves=1.2, pattern="stocking stitch"):
    """Body and sleeves of which the balls told each its own."""
    runs = Runs((Run(120, 229, 229, pattern),))
    second = a_part("old sleeves", "old", position=2, place="sleeve", shape=runs)
    plan, first = old()
    (_, need) = planned_needs(plan, [first, second], Lots(book_of()))
    planned = need.roles[0].need.value
    took = (
        Took("old body", mm=round(TUBE_M * body * 1000)),
        Took("old sleeves", mm=round(planned * sleeves * 1000)),
    )
    return replace(plan, took=took), first, second


def test_each_part_beside_the_rest():
    whole, body, sleeves = garments_seen(book_of(sleeved()))
    assert whole.measured == pytest.approx(1.1, rel=1e-3)
    assert body.factors == sleeves.factors == (PLACE,)
    assert (body.names.place, sleeves.names.place) == ("body", "sleeve")
    assert sleeves.measured == pytest.approx(1.2 / 1.1, rel=1e-3)


def test_parts_that_nobody_weighed_apart_tell_nothing_by_themselves():
    assert len([*garments_seen(book_of(sleeved(1.1, 1.1)))]) == 1


def test_a_part_in_another_pattern_tells_of_its_place_and_its_pattern():
    *_, sleeves = garments_seen(book_of(sleeved(pattern="cable")))
    assert sleeves.factors == (PLACE, PATTERN)
    assert sleeves.names.pattern


def test_hours_of_a_garment_count_where_no_evening_was_noted():
    (seen,) = garment_hours_seen(book_of(old(minutes=1200)))
    assert seen.measured == pytest.approx(TUBE_M * 1.1 / 20, rel=1e-4)
    noted = a_stint(work="knit", plan_id="old", mm=1000, mg=None)
    assert [*garment_hours_seen(book_of(old(minutes=1200), noted))] == []
    assert [*garment_hours_seen(book_of(old()))] == []


# What it teaches


def test_with_nothing_finished_every_figure_stays():
    book = book_of(NEXT)
    (planned,) = planned_needs(book.plan["next"], book.parts_of["next"], Lots(book))
    assert need_of(book) == planned
    assert reckon(book).plan("next").need.value == reckon(book_of(NEXT)).plan("next").need.value


def test_a_hand_that_took_more_takes_more_again():
    """By the normal-normal row: prior 0 ± 0.10, seen ln 1.1 ± hypot(0.03, 0.01)."""
    found = metres(book_of(old(times=1.1), NEXT))
    assert TUBE_M * 1.05 < found.value < TUBE_M * 1.1
    belief = Belief(lambda _: Normal(0.0, 0.10))
    belief.see(Observed("", (("hand",),), 0.09531, hypot(0.03, 0.01)))
    mean = belief.expected([("hand",)]).mean
    assert found.value == pytest.approx(TUBE_M * exp(mean), rel=1e-3)


def test_three_garments_teach_more_than_one():
    one = metres(book_of(old(times=1.1), NEXT))
    three = metres(book_of(*(old(f"old {n}", 1.1, n) for n in (1, 2, 3)), NEXT))
    assert TUBE_M * 1.1 - three.value < TUBE_M * 1.1 - one.value
    assert three.u < one.u < metres(book_of(NEXT)).u
    assert three.u / three.value > 0.03


def test_a_swatchs_own_error_stays():
    swatch = a_swatch(yarn_id="grey two-ply", weight_mg=10_000, whole_stitches=1228, scale_mg=1000)
    gauge = Gauge(22.0, 30.0, needle_mm=4.0, swatch_id=swatch.id)
    book = book_of(swatch, old(gauge=gauge), a_plan("next", gauge=gauge), NEXT[1])
    (planned,) = planned_needs(book.plan["next"], book.parts_of["next"], Lots(book))
    assert set(planned.roles[0].need.causes) < set(metres(book).causes)


def test_gauge_and_swatch_are_learned_apart():
    swatch = a_swatch(yarn_id="grey two-ply", weight_mg=10_000, whole_stitches=1228, scale_mg=1000)
    gauge = Gauge(22.0, 30.0, needle_mm=4.0, swatch_id=swatch.id)
    book = book_of(swatch, old(gauge=gauge), NEXT)
    assert metres(book).value == metres(book_of(NEXT)).value


def test_how_far_stated_amounts_run_high_is_learned_by_source():
    pattern, other = a_pattern(source="one house"), a_pattern("other", source="another house")
    done = old(part=a_part("shawl", "old", shape=Stated(497_130)), times=1.0, pattern_id=pattern.id)
    part = a_part("next body", "next", shape=Stated(500_000))
    same, next_to = (
        metres(book_of(pattern, other, done, a_plan("next", pattern_id=one.id), part))
        for one in (pattern, other)
    )
    before = stated_factor().value * 500
    assert before < next_to.value < same.value < 500
    assert same.u < stated_factor().u * 500


def test_a_plan_on_the_needles_keeps_what_it_was_cast_on_with():
    knit = a_plan("next", state="being knit"), NEXT[1]
    assert metres(book_of(old(), knit)).value == pytest.approx(TUBE_M, rel=1e-4)


def test_a_place_that_took_more_takes_more_again():
    sleeves = a_part("next body", "next", place="sleeve")
    on_sleeves = metres(book_of(sleeved(), a_plan("next"), sleeves))
    on_body = metres(book_of(sleeved(), NEXT))
    on_yoke = metres(book_of(sleeved(), a_plan("next"), a_part("next body", "next", place="yoke")))
    assert on_sleeves.value > on_yoke.value > on_body.value


def test_one_struck_out_is_not_learned_from():
    book = book_of(old(), NEXT, a_mark("garment old took by gauge"))
    assert learn(book).seen("took by gauge") == 0
    assert metres(book).value == pytest.approx(TUBE_M, rel=1e-4)


def test_one_that_is_far_off_is_set_aside():
    book = book_of(old(times=1.6), NEXT)
    assert metres(book).value == pytest.approx(TUBE_M, rel=1e-4)
    let_in = book_of(old(times=1.6), NEXT, a_mark("garment old took by gauge", verdict="let in"))
    assert metres(let_in).value > TUBE_M * 1.3


def test_the_working_says_what_was_learned():
    (*_, step) = need_of(book_of(old(), NEXT)).working
    assert step.what == "What your garments took"
    assert "learned from one of your own measurements" in step.how


def test_a_bare_amount_learns_nothing():
    book = book_of(old(), NEXT)
    (need,) = planned_needs(book.plan["next"], book.parts_of["next"], Lots(book))
    assert taught(learn(book), book.plan["next"], replace(need, basis="")) is None


def test_a_weighing_on_the_needles_goes_by_what_was_learned_when_it_was_cast_on():
    weighed = a_weighing(part_id="next body", plan_id="next", rows=10)
    book = book_of(old(), a_plan("next", state="being knit"), NEXT[1], weighed)
    assert reckon(book).plan("next").begun
