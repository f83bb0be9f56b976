"""Yarn beyond the stitches: extras of patterns, floats, panels, and patterns nobody swatched."""

from dataclasses import replace
from math import sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.book.gauge import Gauge
from app.book.plan import Extra, RoleYarn
from app.book.shape import Run, Runs, Stated, Strand
from app.craft.figure import Figure
from app.planning import reckon
from app.planning.beyond import beyond, fabric, in_all
from tests.books import a_book, a_part, a_plan, a_skein, a_swatch, a_yarn

LOOP = sqrt(21.6 / 6.6)
"""Yarn in a stitch at 22 × 30, washed: 1.8091 cm (Munden 1959)."""

TWO = (Strand("main", 0.6), Strand("contrast", 0.4))


def knit(*runs, **other):
    """A part of these runs, and its answer."""
    part = a_part(shape=Runs(runs), **other)
    yarns = (RoleYarn("main", "grey two-ply"), RoleYarn("contrast", "cream two-ply"))
    plan = a_plan(yarns=yarns)
    book = a_book(a_yarn(), a_yarn("cream two-ply"), a_swatch(), plan, part)
    (answer,) = reckon(book).plan("pullover").parts
    return answer


def stitches_m(count):
    return count * LOOP / 100


@pytest.mark.golden
def test_a_cable_panel_takes_its_share_of_the_yarn_and_says_how_unsure():
    """100 × 100 stitches, 6 ± 2 % more: 180.9 m and 10.9 m."""
    plain = knit(Run(100, 100, 100))
    panel = knit(Run(100, 100, 100), extras=(Extra("cable panel", 6.0, 2.0),))
    assert plain.need.value == pytest.approx(180.9, abs=0.05)
    assert panel.need.value - plain.need.value == pytest.approx(10.85, abs=0.01)
    assert panel.need.causes["cable panel of pullover, body"] == pytest.approx(3.618, abs=0.001)
    (line,) = [one for one in panel.working if one.what == "Cable panel"]
    assert (line.how, line.value) == ("6 ± 2 % of its stitches", pytest.approx(10.85, abs=0.01))


def test_extras_leave_the_edges_alone_and_are_of_every_piece():
    one = (Extra("cable panel", 10.0, 0.0),)
    edged = knit(Run(100, 100, 100), edges="cast on and off", copies=2)
    more = knit(Run(100, 100, 100), edges="cast on and off", copies=2, extras=one)
    assert more.need.value - edged.need.value == pytest.approx(2 * stitches_m(1000))


@pytest.mark.golden
def test_floats_pass_behind_the_stitches_of_the_other_yarn():
    """24 rows of 200: 4800 stitches. Behind them in all a quarter of their yarn, 21.7 m: the
    contrast, which knits 40 %, passes behind 60 %."""
    part = a_part(shape=Runs((Run(24, 200, 200, "stranded", strands=TWO),)))
    took = in_all(part.shape.runs, beyond(part, part.shape.runs, "pullover"))
    assert took["main"].value == pytest.approx(2880 + 0.25 * 1920)
    assert took["contrast"].value == pytest.approx(1920 + 0.25 * 2880)
    assert took["contrast"].causes["floats"] == pytest.approx(0.08 * 2880)
    whole = knit(*part.shape.runs)
    assert whole.need.value == pytest.approx(stitches_m(4800) * 1.25)
    assert {one.what for one in whole.working} >= {"Floats"}


def test_stripes_and_yarn_held_double_carry_no_floats():
    assert knit(Run(24, 200, 200, strands=TWO)).need.value == pytest.approx(stitches_m(4800))
    double = knit(Run(24, 200, 200, "stranded", strands=(Strand(ends=2),)))
    assert double.need.value == pytest.approx(2 * stitches_m(4800) * 1.25)
    assert "Floats" not in {one.what for one in double.working}


def test_the_extras_of_a_pattern_are_its_share_of_the_table():
    cables = knit(Run(100, 100, 100, "Cables"), gauge=Gauge(22.0, 30.5))
    assert cables.need.value == pytest.approx(sqrt(21.6 / 6.71) * 100 * 1.05)
    assert cables.need.causes["extras of cables"] == pytest.approx(0.05 * cables.need.value / 1.05)


@pytest.mark.parametrize(
    ("pattern", "area_pct"), [("2×2 rib", 35), ("Owls in a row", 30), ("garter stitch", 30)]
)
def test_a_pattern_nobody_swatched_is_as_unsure_as_its_length(pattern, area_pct):
    plain, ribbed = knit(Run(100, 100, 100)), knit(Run(100, 100, 100, pattern))
    assert ribbed.need.value == pytest.approx(plain.need.value)
    found = ribbed.need.causes[f"no swatch of {pattern}, length"]
    assert found == pytest.approx(stitches_m(10_000) * area_pct / 100 / sqrt(2))


def test_it_is_unsure_once_however_many_runs_it_has():
    split = knit(Run(50, 100, 100, "2×2 rib"), Run(50, 100, 100, "2×2 rib"))
    whole = knit(Run(100, 100, 100, "2×2 rib"))
    assert split.need.u == pytest.approx(whole.need.u)
    assert [one.what for one in split.working].count("Rows of 2×2 rib") == 1


@pytest.mark.parametrize(
    ("gauge", "unsure"),
    [
        (None, True),
        (Gauge(22.0, 30.0), True),
        (Gauge(24.0, 34.0), False),
        (Gauge(24.0, 34.0, assumed_pct=15.0), True),
        (Gauge(22.0, 30.0, swatch_id="first try", needle_mm=4.0), False),
    ],
    ids=["the plan's", "the same", "its own", "a guess", "of a swatch"],
)
def test_a_gauge_of_its_own_settles_it(gauge, unsure):
    part = a_part(shape=Runs((Run(9, 80, 80, "2×2 rib"),)), gauge=gauge)
    swatch = a_swatch(pattern="2×2 rib")
    book = a_book(a_yarn(), swatch, a_plan(), part)
    (answer,) = reckon(book).plan("pullover").parts
    assert ("no swatch of 2×2 rib, length" in answer.need.causes) == unsure


def test_a_swatch_in_another_pattern_does_not_settle_it():
    gauge = Gauge(22.0, 30.0, swatch_id="first try", needle_mm=4.0)
    assert knit(Run(9, 80, 80, "2×2 rib"), gauge=gauge).need.causes["no swatch of 2×2 rib, length"]


def test_without_a_pattern_it_is_stocking_stitch():
    assert fabric("").name == "stocking stitch"
    assert not fabric("").own_gauge


MEASURED = {
    "weighed": {"weight_mg": 10_000, "whole_stitches": 1_228.0},
    "unravelled": {"thread_mm": 1_810, "unravelled": 100.0},
}


@pytest.mark.parametrize("how", MEASURED)
@pytest.mark.parametrize(
    ("pattern", "panel"), [("cables", "cable panel"), ("stranded", "floats"), ("stranded", "")]
)
def test_what_a_measured_swatch_holds_is_not_counted_twice(how, pattern, panel):
    """The yarn in a stitch of a swatch in cables holds what its crossings take."""
    gauge = Gauge(22.0, 30.0, needle_mm=4.0, swatch_id="first try")
    extras = (Extra(panel, 6.0, 2.0),) if panel else ()
    run = Run(100, 100, 100, pattern, strands=TWO if pattern == "stranded" else (Strand(),))
    found = of_swatch(run, gauge, MEASURED[how], pattern, extras)
    plain = of_swatch(replace(run, pattern="stocking stitch"), gauge, MEASURED[how], pattern, ())
    assert found.need.value == pytest.approx(plain.need.value)
    held = [one for one in found.working if "the swatch was knit so, and measured" in one.how]
    assert held
    assert {one.value for one in held} == {0.0}


@pytest.mark.parametrize(
    ("measured", "pattern", "needle"),
    [
        ({}, "cables", 4.0),
        (MEASURED["weighed"], "stocking stitch", 4.0),
        (MEASURED["weighed"], "cables", 5.0),
    ],
    ids=["only counted", "another pattern", "another needle"],
)
def test_what_it_does_not_hold_is_counted(measured, pattern, needle):
    gauge = Gauge(22.0, 30.0, needle_mm=needle, swatch_id="first try")
    run = Run(100, 100, 100, "cables")
    found = of_swatch(run, gauge, measured, pattern, ())
    (line,) = [one for one in found.working if one.what == "Extras of cables"]
    assert line.value == pytest.approx(0.05 * found.need.value / 1.05)


def test_an_extra_of_another_kind_is_counted_whatever_the_swatch():
    gauge = Gauge(22.0, 30.0, needle_mm=4.0, swatch_id="first try")
    run, other = Run(100, 100, 100, "cables"), (Extra("pockets", 10.0, 5.0),)
    plain, more = (of_swatch(run, gauge, MEASURED["weighed"], "cables", one) for one in ((), other))
    assert more.need.value == pytest.approx(1.1 * plain.need.value)


def of_swatch(run, gauge, measured, pattern, extras):
    """A part of that run, knit to the gauge of a swatch measured so."""
    swatch = a_swatch(pattern=pattern, needle_mm=4.0, **measured)
    part = a_part(shape=Runs((run,)), gauge=gauge, extras=extras)
    yarns = (RoleYarn("main", "grey two-ply"), RoleYarn("contrast", "grey two-ply"))
    book = a_book(a_yarn(), a_skein(), swatch, a_plan(yarns=yarns), part, held={"G-1": (45, 100)})
    (answer,) = reckon(book).plan("pullover").parts
    return answer


@pytest.mark.golden
def test_a_panel_is_added_to_a_stated_amount():
    """Of 1000 m stated 836 are expected (practice); 6 ± 2 % of them are 50 ± 17 m."""
    plain = a_part(shape=Stated(1_000_000))
    panel = replace(plain, extras=(Extra("cable panel", 6.0, 2.0),))
    first, second = (
        reckon(a_book(a_yarn(), a_plan(), one)).plan("pullover").parts[0] for one in (plain, panel)
    )
    assert second.need.value == pytest.approx(1.06 * first.need.value)
    assert second.need.causes["cable panel of pullover, body"] == pytest.approx(
        0.02 * first.need.value
    )
    (line,) = [one for one in second.working if one.what == "Cable panel"]
    assert line.value == pytest.approx(50.2, abs=0.1)


SHARES = st.floats(0, 40)


@pytest.mark.property
@given(st.lists(SHARES, max_size=4), st.integers(1, 200), st.integers(1, 300))
def test_extras_add(shares, rows, stitches):
    part = a_part(extras=tuple(Extra(f"panel {n}", pct, 1.0) for n, pct in enumerate(shares)))
    runs = (Run(rows, stitches, stitches),)
    together = in_all(runs, beyond(part, runs, "it"))["main"]
    alone = [
        in_all(runs, beyond(replace(part, extras=(one,)), runs, "it"))["main"]
        for one in part.extras
    ]
    plain = rows * stitches
    assert together.value == pytest.approx(plain + sum(one.value - plain for one in alone))
    assert together.u == pytest.approx(sqrt(sum(one.u**2 for one in alone)))


@pytest.mark.property
@given(st.floats(0.01, 0.99), st.integers(1, 200), st.integers(1, 300))
def test_floats_in_all_are_a_quarter_of_the_round_however_it_is_shared(share, rows, stitches):
    strands = (Strand("main", share), Strand("contrast", 1 - share))
    runs = (Run(rows, stitches, stitches, "stranded", strands=strands),)
    took = in_all(runs, beyond(a_part(), runs, "it"))
    whole = sum(took.values(), Figure(0.0, "stitches"))
    assert whole.value == pytest.approx(1.25 * rows * stitches)
