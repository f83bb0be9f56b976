"""A sound book has no findings; each kind of harm is named with its record and field."""

from dataclasses import replace
from datetime import date

import pytest
from hypothesis import given

from app.book.book import Book
from app.book.checks import check, knit_roles, structure
from app.book.design import Design
from app.book.event import Line
from app.book.gauge import Gauge
from app.book.holding import sinks
from app.book.pattern import PatternSize, Share, SizePart
from app.book.person import Measure
from app.book.plan import Extra, Losses, Part, RoleYarn, Worked
from app.book.sequence import Band, Sequence, SequenceYarn
from app.book.settings import Settings, StepLosses
from app.book.shape import (
    Counted,
    Measured,
    Metres,
    Rectangle,
    Run,
    Runs,
    Stated,
    Strand,
    Trapezoid,
)
from app.book.woolbook import Entry, arrive
from tests.books import (
    a_book,
    a_fleece,
    a_holding,
    a_part,
    a_pattern,
    a_person,
    a_plan,
    a_promise,
    a_reading,
    a_skein,
    a_yarn,
    an_errand,
    an_event,
)
from tests.random_books import books

HELD = {"G-1": (96, 213)}


def found(*records, **other):
    return [str(finding) for finding in check(a_book(*records, **other))]


def sound(*others, **replaced):
    """The records of a small sound book, some of them replaced."""
    records = {
        "yarn": a_yarn(),
        "skein": a_skein(),
        "plan": a_plan(),
        "part": a_part(),
        "promise": a_promise(),
    }
    return [*(records | replaced).values(), *others]


@pytest.mark.property
@given(books())
def test_a_sound_book_has_no_findings(book):
    assert check(book) == []


def test_an_empty_book_is_sound():
    assert check(Book()) == []
    assert found(*sound(), held=HELD) == []


def test_grams_that_do_not_balance():
    lines = (Line("G-1", 96_000, 213_000), Line("come in", -95_000))
    assert found(*sound(), an_event(7, Entry("arrive", lines))) == [
        "event 7 (arrive, 2026-04-30), lines: The grams do not balance: 1000 mg too many, "
        "among G-1, come in."
    ]


def test_undoing_twice_or_without_an_event():
    events = [
        an_event(1, arrive([])),
        an_event(2, Entry("undo", ()), undoes=1),
        an_event(3, Entry("undo", ()), undoes=1),
        an_event(4, Entry("undo", ())),
        an_event(5, Entry("use", ()), undoes=9),
    ]
    assert found(*events) == [
        "event 5 (use, 2026-04-30), undoes: names 9, which is not in the book.",
        "event 1 (arrive, 2026-04-30), seq: It was undone 2 times.",
        "event 4 (undo, 2026-04-30), undoes: "
        "An undo must name the event it undoes, and no other may.",
        "event 5 (use, 2026-04-30), undoes: "
        "An undo must name the event it undoes, and no other may.",
    ]


def test_a_holding_below_zero():
    entry = Entry("use", (Line("G-1", -1_500, -2_000), Line("waste", 1_500)))
    assert found(a_yarn(), a_skein(), an_event(1, entry)) == [
        "skein G-1, balance: It holds less than nothing: -1.5 g, -2 m."
    ]


def test_metres_on_what_is_no_yarn():
    entry = Entry("arrive", (Line("F-1", 0, 1_000),))
    assert found(a_holding(), an_event(1, entry)) == [
        "fleece F-1, balance: It holds metres, but is no skein, ball or left-over."
    ]


def test_sinks_missing_and_doubled():
    first, *others = sinks()
    book = Book(holdings=(*others, replace(first, id="other", code="other")))
    assert [str(one) for one in structure(book)] == [
        'come in, id: The holding "come in", which every book has, is missing.',
        'come in other, kind: There can be only one "come in".',
    ]


def test_a_code_used_twice():
    twice = [a_yarn(), a_skein(), a_skein("other", code="G-1")]
    assert found(*twice) == ["holding G-1, code: 2 holdings have this code."]


@pytest.mark.parametrize(
    ("record", "name", "field"),
    [
        (a_yarn(fleece_id="?"), "yarn grey two-ply", "fleece_id"),
        (a_holding(fleece_id="?"), "fleece F-1", "fleece_id"),
        (a_skein(yarn_id="?"), "skein G-1", "yarn_id"),
        (a_holding(plan_id="?"), "fleece F-1", "plan_id"),
        (a_reading("?"), "mass reading of ? on 2026-04-30", "holding_id"),
        (a_plan(person_id="?", yarns=()), "plan pullover", "person_id"),
        (a_plan(pattern_id="?", yarns=()), "plan pullover", "pattern_id"),
        (
            a_pattern(gauge=Gauge(22.0, 30.0, swatch_id="?")),
            "pattern plain pullover",
            "gauge.swatch_id",
        ),
        (a_plan(yarns=(RoleYarn("main", "?"),)), "plan pullover", "yarns"),
        (a_part(plan_id="?"), "part body of ?", "plan_id"),
        (an_event(1, Entry("use", (Line("?", 0),))), "event 1 (use, 2026-04-30)", "lines"),
        (an_errand(plan_id="?"), "errand buy soap", "plan_id"),
    ],
)
def test_a_link_that_leads_nowhere(record, name, field):
    assert found(record) == [f"{name}, {field}: names ?, which is not in the book."]


def test_a_part_may_name_a_yarn_that_is_missing():
    part = a_part(yarns=(RoleYarn("main", "?"),))
    assert found(a_yarn(), a_plan(), part) == [
        "part body of pullover, yarns: names ?, which is not in the book."
    ]


def test_promises_beyond_what_a_skein_holds():
    second = a_promise(id="second", mm=113_001)
    assert found(*sound(), second, held=HELD) == [
        "skein G-1, promises: 213.001 m are promised, but it holds 213 m."
    ]


def test_a_skein_that_was_only_weighed_may_be_promised():
    assert found(*sound(), held={"G-1": (96, 0)}) == []
    assert found(*sound()) == ["skein G-1, promises: 100 m are promised, but it holds 0 m."]


@pytest.mark.parametrize("state", ["finished", "put away"])
def test_promises_of_a_plan_that_is_over_are_history(state):
    assert found(*sound(plan=a_plan(state=state))) == []


def test_a_promise_of_what_was_put_away():
    gone = a_skein(put_away=date(2026, 5, 1))
    assert found(*sound(skein=gone), held=HELD) == [
        "promise of G-1 to pullover, holding_id: G-1 was put away."
    ]
    assert found(*sound(skein=gone, plan=a_plan(state="finished"))) == []


def test_a_promise_of_what_is_no_yarn():
    fleece = a_holding("G-1")
    assert found(*sound(skein=fleece), held={"G-1": (1000, 0)}) == [
        "promise of G-1 to pullover, holding_id: G-1 is no skein, ball or left-over."
    ]


def test_a_promise_to_a_part_of_another_plan():
    part = a_part(plan_id="loan")
    assert found(*sound(a_plan("loan"), part=part), held=HELD) == [
        "promise of G-1 to pullover, part_id: body belongs to another plan."
    ]


def test_yarns_that_take_turns_have_roles_as_well():
    half = (SequenceYarn("main", 0.5, 0.5), SequenceYarn("white", 0.5, 0.5))
    striped = Sequence("stripes", bands=(Band("red", 2),))
    assert knit_roles(a_part(sequence=Sequence("alternate", half))) == {"main", "white"}
    assert knit_roles(a_part(sequence=striped)) == {"main", "red"}
    part = a_part(sequence=Sequence("alternate", half))
    (finding,) = found(*sound(part=part), held=HELD)
    assert finding.endswith('No yarn is named for the role "white".')


def test_roles_that_nothing_knits_or_no_yarn_has():
    run = Run(10, 40, 40, strands=(Strand("main", 0.5), Strand("contrast", 0.5)))
    part = a_part(shape=Runs((run,)))
    promise = a_promise(role="cuff")
    assert found(*sound(part=part, promise=promise), held=HELD) == [
        'part body of pullover, shape: No yarn is named for the role "contrast".',
        'part body of pullover, promises: Nothing in it is knit with the role "cuff".',
    ]
    named = replace(part, yarns=(RoleYarn("contrast", "grey two-ply"),))
    assert found(*sound(part=named, promise=replace(promise, role="contrast")), held=HELD) == []


NOT_PERCENT = "must lie between 0 and 100 percent."
ABOVE = "must be more than zero."
INSIDE = "must be more than 0 and less than 100 percent."
OF_A_GAUGE = "must lie between 0.1 and 1,000."
NOT_BELOW = "must not be below zero."


def a_size(**other):
    return a_pattern(sizes=(PatternSize(**{"name": "S", "width_mm": 900} | other),))


def a_run(**other):
    return a_part(shape=Runs((Run(**{"rows": 0, "stitches": 0, "stitches_to": 0} | other),)))


@pytest.mark.parametrize(
    ("record", "field", "text"),
    [
        (a_fleece(yield_pct=100.5), "yield_pct", NOT_PERCENT),
        (a_fleece(yield_pct=0.0), "yield_pct", ABOVE),
        (a_fleece(micron=0.0), "micron", ABOVE),
        (a_fleece(staple_mm=0), "staple_mm", ABOVE),
        (a_fleece(colour="grey"), "colour", "must be written like #c8b79a, or be empty."),
        (a_yarn("other", plies=0), "plies", ABOVE),
        (a_yarn("other", target_tex=0.0), "target_tex", "must lie between 0.01 and 1,000,000."),
        (a_yarn("other", ball_mg=-1), "ball_mg", ABOVE),
        (a_yarn("other", colour="#C8B79A"), "colour", "must be written like #c8b79a, or be empty."),
        (a_reading(value=-1), "value", NOT_BELOW),
        (a_reading(girth_mm=0), "girth_mm", ABOVE),
        (a_reading(turns=-0.5), "turns", "must lie between 0 and 1,000,000."),
        (a_person(measures=(Measure("chest", 0),)), "measures, chest", ABOVE),
        (a_plan("other", sureness_pct=100.0), "sureness_pct", INSIDE),
        (a_plan("other", gauge=Gauge(0.0, 30.0)), "gauge.stitches", OF_A_GAUGE),
        (a_plan("other", gauge=Gauge(22.0, 0.0)), "gauge.rows", OF_A_GAUGE),
        (a_plan("other", gauge=Gauge(22.0, 30.0, needle_mm=0.0)), "gauge.needle_mm", ABOVE),
        (
            a_plan("other", gauge=Gauge(22.0, 30.0, assumed_pct=-1.0)),
            "gauge.assumed_pct",
            NOT_PERCENT,
        ),
        (a_plan("other", losses=Losses(tail_mm=-1)), "losses.tail_mm", NOT_BELOW),
        (a_plan("other", losses=Losses(unusable_pct=101.0)), "losses.unusable_pct", NOT_PERCENT),
        (
            a_plan("other", yarns=(RoleYarn("main", "grey two-ply"),) * 2),
            "yarns",
            "gives one role two yarns.",
        ),
        (a_promise(mm=0), "mm", ABOVE),
        (a_part(copies=0), "copies", ABOVE),
        (a_part(shape_u_pct=101.0), "shape_u_pct", NOT_PERCENT),
        (a_part(gauge=Gauge(-1.0, 30.0)), "gauge.stitches", OF_A_GAUGE),
        (a_part(shape=Counted(0, 120)), "shape.stitches", ABOVE),
        (a_part(shape=Counted(229, -1)), "shape.rows", NOT_BELOW),
        (a_part(shape=Rectangle(1040, 0)), "shape.length_mm", ABOVE),
        (a_part(shape=Measured(1040, 1040, 0)), "shape.length_mm", ABOVE),
        (
            a_part(shape=Measured(9, 9, 9, strands=())),
            "shape, strands",
            "names no yarn to knit with.",
        ),
        (a_part(shape=Trapezoid(0, -1, 1)), "shape.width_to_mm", NOT_BELOW),
        (a_part(shape=Stated(0)), "shape.mm", ABOVE),
        (a_part(shape=Metres(0)), "shape.mm", ABOVE),
        (a_run(rows=-1), "run 1, rows", NOT_BELOW),
        (a_run(stitches=-1), "run 1, stitches", NOT_BELOW),
        (a_run(stitches_to=-1), "run 1, stitches_to", NOT_BELOW),
        (a_run(needle_mm=0.0), "run 1, needle_mm", ABOVE),
        (a_run(strands=()), "run 1, strands", "names no yarn to knit with."),
        (a_run(strands=(Strand(role=""),)), "run 1, strands", "has a strand without a role."),
        (a_run(strands=(Strand(share=-0.1),)), "run 1, share", NOT_BELOW),
        (a_run(strands=(Strand(ends=0),)), "run 1, ends", ABOVE),
        (a_part(extras=(Extra("floats", -1.0, 2.0),)), "extras, floats", NOT_BELOW),
        (a_part(extras=(Extra("floats", 1.0, -2.0),)), "extras, floats, u_pct", NOT_BELOW),
        (a_part(worked=Worked(0.0, 100.0)), "worked.width_pct", ABOVE),
        (a_part(worked=Worked(100.0, -5.0)), "worked.length_pct", ABOVE),
        (a_plan("other", design=Design("hat", (Measure("head", 0),))), "design, head", ABOVE),
        (a_pattern(gauge=Gauge(0.0, 30.0)), "gauge.stitches", OF_A_GAUGE),
        (a_size(width_mm=0), "size S, width_mm", ABOVE),
        (a_size(stated_mm=0), "size S, stated_mm", ABOVE),
        (a_size(parts=(SizePart("Body", copies=0),)), "size S, Body, copies", ABOVE),
        (a_size(parts=(SizePart("Body", cast_on=-1),)), "size S, Body, cast_on", NOT_BELOW),
        (a_size(parts=(SizePart("Body", rows=0),)), "size S, Body, rows", ABOVE),
        (a_pattern(sizes=(PatternSize("S", 900),) * 2), "sizes", "gives two sizes one name."),
        (a_pattern(shares=(Share("Body", 101.0),)), "shares, Body", NOT_PERCENT),
    ],
)
def test_a_field_that_makes_no_sense(record, field, text):
    others = [a_yarn(), a_skein(), a_plan(), *([] if isinstance(record, Part) else [a_part()])]
    (finding,) = check(a_book(*others, record, held=HELD))
    assert (finding.field, finding.text) == (field, text)


def test_a_piece_may_begin_in_a_point_and_have_no_rows_yet():
    tip = a_part("tip", shape=Trapezoid(0, 300, 200))
    assert found(a_yarn(), a_plan(), a_run(), tip) == []


@pytest.mark.parametrize(
    ("settings", "field"),
    [
        (Settings(sureness_pct=120.0), "sureness_pct"),
        (Settings(steps=StepLosses(spin=100.0)), "steps.spin"),
        (Settings(girth_mm=0), "girth_mm"),
        (Settings(losses=Losses(swatch_mm=-1)), "losses.swatch_mm"),
        (Settings(steps=StepLosses(take_up=-1.0)), "steps.take_up"),
    ],
)
def test_settings_that_make_no_sense(settings, field):
    (finding,) = check(a_book(settings=settings))
    assert (finding.record, finding.field) == ("settings", field)
