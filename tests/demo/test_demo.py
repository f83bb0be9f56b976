"""The demo is a sound book, made the same every time, and tells the stories it is meant to."""

import re
from collections import Counter
from dataclasses import replace
from datetime import date

import pytest

from app.book.checks import check
from app.book.event import balances
from app.book.exchange import dumps, loads
from app.book.words import SINKS
from app.craft.sizes import EASES
from app.planning.knitting.compared import compared
from app.planning.knitting.forecast import Forecast
from app.planning.knitting.spin_in_time import spin_in_time
from app.planning.learned_effect import learned_effect
from app.planning.needs_planned import planned_needs
from app.planning.reckoning import reckon
from app.planning.ways_out.judged import ways_out
from app.planning.yarns import Lots
from app.work.pattern_take import SizeAsked, ask_size
from tests.demo.make_demo import DEMO, demo_book


@pytest.fixture(scope="module")
def book():
    return loads(DEMO.read_bytes())


@pytest.fixture(scope="module")
def plans(book):
    return {plan.name: plan for plan in reckon(book).plans}


@pytest.fixture(scope="module")
def work(book):
    return reckon(book).work


def test_the_document_is_what_its_maker_writes():
    assert DEMO.read_bytes() == dumps(demo_book()).encode(), (
        "run python -m tests.demo.make_demo and look at what changed"
    )


def test_the_document_is_canonical(book):
    assert dumps(book).encode() == DEMO.read_bytes()


def test_the_book_is_sound_on_every_day(book):
    assert check(book) == []
    for end in range(len(book.events)):
        below = [
            name
            for name, held in balances(book.events[:end]).items()
            if name not in SINKS and (held.mg < 0 or held.mm < 0)
        ]
        assert below == []


def test_events_come_in_the_order_of_their_days(book):
    days = [event.day for event in book.events]
    assert days == sorted(days)
    assert {day.year for day in days} == {2026}


def test_the_cast(book):
    states = {one.state for one in book.holdings if one.kind == "fleece"}
    assert states == {"raw", "skirted", "drying", "carded", "combed", "part spun"}
    kinds = Counter(one.kind for one in book.holdings)
    assert (kinds["fleece"], kinds["skein"] + kinds["ball"]) == (6, 41)
    assert (len(book.fleeces), len(book.yarns), len(book.people), len(book.plans)) == (6, 9, 3, 7)
    ways = {part.shape.way for part in book.parts}
    assert ways == {"rectangle", "trapezoid", "counted", "runs", "stated"}


def test_ids_look_like_the_programs_own_and_are_older(book):
    for record in (*book.holdings, *book.readings, *book.promises):
        assert record.id in SINKS or re.fullmatch(r"00demx\d{4}0{10}", record.id)


def test_each_fleece_went_somewhere_and_none_is_used_up(book):
    for fleece in book.fleeces:
        (holding,) = [
            one for one in book.holdings if one.kind == "fleece" and one.fleece_id == fleece.id
        ]
        assert book.balances[holding.id].mg > 0


def test_the_waistcoat_is_finished_and_its_left_overs_are_weighed(book, plans):
    assert plans["Waistcoat"].state == "finished"
    (garment,) = [one for one in book.holdings if one.code == "Waistcoat"]
    assert 340_000 < book.balances[garment.id].mg < 360_000
    left = {one.code: book.balances[one.id].mg for one in book.holdings if one.code[:2] == "N-"}
    assert (left["N-01"], left["N-03"], left["N-03 end"], left["N-04"]) == (0, 0, 9_000, 31_000)
    weighed = [one.value for one in book.readings if one.day == date(2026, 9, 20)]
    assert weighed == [31_000]


def test_the_pullover_on_the_needles_is_about_to_run_short(plans, work):
    pullover = plans["Round-yoke pullover"]
    assert pullover.state == "being knit"
    assert pullover.odds < 0.05
    assert 50 < pullover.short_m < 250
    assert pullover.to_make_m > 0
    assert {part.skeins[0].state for part in pullover.parts} == {"settled"}
    (line,) = [one for one in work if one.plan == pullover.name]
    assert (line.kind, line.fleece) == ("spin", "Bramble")


def test_its_balls_tell_that_she_knits_a_little_closer_than_her_swatch(book, plans):
    pullover = plans["Round-yoke pullover"]
    ahead = Forecast(book, pullover)
    assert [one.on_needles.code for one in ahead.balls] == ["B-03"]
    (yarn,) = ahead.yarns
    assert 1.0 < yarn.pace.value < 1.08
    assert yarn.expected.part == "Yoke"
    assert ahead.pieces[0].place.rows == 111
    (warning,) = spin_in_time(book, reckon(book), date(2026, 11, 1))
    assert warning.plan_id == pullover.plan_id
    assert warning.late_days == 0


def test_its_ways_out_reach_as_surely_as_was_asked(book, plans):
    pullover = plans["Round-yoke pullover"]
    found = {
        one.proposal.key.split("-")[0]: one
        for one in ways_out(book, reckon(book), pullover.plan_id)
    }
    assert found["spin"].after.short_m == 0
    assert found["other"].after.enough


def test_the_waistcoat_took_a_little_less_and_teaches_the_next(book):
    (plan,) = [one for one in book.plans if one.name == "Waistcoat"]
    told = compared(book, plan.id)
    assert 0.9 < told.took_m / told.planned_m < 1.0
    assert told.took_h == pytest.approx(21, abs=0.1)
    changed = {one.name for one in learned_effect(book)}
    assert {"Small patterned pullover", "Wrist warmers"} <= changed
    assert "Round-yoke pullover" not in changed


def test_its_parts_were_planned_at_what_the_handbook_tube_and_sleeve_take(book):
    (plan,) = [one for one in book.plans if one.name == "Round-yoke pullover"]
    body, sleeves, _ = planned_needs(plan, book.parts_of[plan.id], Lots(book))
    assert (body.stitches, body.rows) == (229 * 120, 120)
    assert body.roles[0].need.value == pytest.approx(497.1, abs=15)
    assert (sleeves.stitches, sleeves.rows) == (8640, 135)
    assert sleeves.roles[0].need.value == pytest.approx(2 * 156.3, abs=2)


def test_the_swatches_tell_and_the_garments_knit_to_them_are_the_surer(book, plans):
    assert [one.name for one in book.swatches if one.put_away] == ["Nettle on 4 mm"]
    on_bramble = [one.needle_mm for one in book.swatches if one.name.startswith("Bramble")]
    assert sorted(on_bramble) == [3.5, 4.0, 4.5]
    weighed, unravelled = plans["Round-yoke pullover"].parts, plans["Grey cardigan"].parts
    counted = plans["Wrist warmers"].parts
    shares = [parts[0].need.u / parts[0].need.value for parts in (counted, weighed, unravelled)]
    assert shares == sorted(shares, reverse=True)
    assert shares[2] < 0.02
    assert weighed[0].working[0].how.endswith("when it was cast on")
    (plan,) = [one for one in book.plans if one.name == "Round-yoke pullover"]
    planned = planned_needs(replace(plan, cast_on=None), book.parts_of[plan.id], Lots(book))
    assert planned[0].working[0].how.endswith("counted on the swatch Bramble on 4 mm")
    assert planned[0].working[3].how.endswith("most by weight")


def test_the_cardigan_is_short_until_the_fleece_on_the_rack_is_spun(book, plans, work):
    cardigan = plans["Grey cardigan"]
    assert not cardigan.enough
    assert cardigan.odds < 0.01
    lines = [one for one in work if one.plan == cardigan.name]
    assert [(one.kind, one.fleece) for one in lines] == [("spin", "Tansy")]
    assert lines[0].m == pytest.approx(cardigan.to_make_m, abs=1)
    (fleece,) = [one for one in book.fleeces if one.name == "Tansy"]
    has = reckon(book).fleeces[fleece.id].yarn_g
    assert has.value - 1.645 * has.u > lines[0].g


def test_the_small_pullover_fits_comfortably(plans):
    pullover = plans["Small patterned pullover"]
    assert pullover.enough
    assert pullover.odds > 0.98
    assert pullover.left_at_least_m > 50
    assert len(pullover.groups) == 2


def test_the_wrist_warmers_are_far_too_small_for_their_yarn(plans):
    warmers = plans["Wrist warmers"]
    assert warmers.enough
    assert warmers.left_at_least_m > 3 * warmers.need.value


def test_two_ideas_one_waiting_for_its_yarn_and_one_not_begun(plans):
    shawl, soft = plans["Lace shawl"], plans["Something soft in alpaca"]
    assert shawl.waiting
    assert shawl.promised_m == 0
    assert not soft.begun
    assert soft.parts == ()


def test_the_pattern_comes_out_a_size_larger_at_the_cardigans_gauge(book):
    """208 stitches at 18 in 10 cm are 115.6 cm, on a chest of 106 cm."""
    (pattern,) = book.patterns
    plan = next(one for one in book.plans if one.name == "Grey cardigan")
    own = {one.name: one.mm / 10 for one in book.person[plan.person_id].measures}
    standard = next(one for one in EASES if one.name == "standard")
    best = ask_size(book, plan, SizeAsked(pattern, "stitches", own, standard)).best
    assert (len(pattern.sizes), best.size.name, best.beyond) == (5, "M", 0)
    at_its_own = replace(plan, gauge=pattern.gauge)
    printed = ask_size(book, at_its_own, SizeAsked(pattern, "stitches", own, standard)).best
    assert printed.size.name == "L"
    assert not best.contradicts


def test_every_promise_is_covered(book):
    assert reckon(book).uncovered == ()
