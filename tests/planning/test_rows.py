"""Metres row by row add up to what the part takes."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.book.gauge import Gauge
from app.book.plan import Extra
from app.book.shape import Counted, Metres, Run, Runs, Strand, Trapezoid
from app.craft.fabric import loop_cm
from app.planning import reckon
from app.planning.needs import needs_of
from app.planning.rows import metres_per_row, stitches_per_row
from app.planning.yarns import Lots
from tests.books import a_book, a_part, a_plan, a_yarn

GAUGE = Gauge(22.0, 30.0)
LOOP = loop_cm(22.0, 30.0)


@pytest.mark.golden
def test_a_row_of_229_stitches_takes_4_14_m():
    assert metres_per_row(a_part(), GAUGE, LOOP) == pytest.approx([4.1428] * 120, abs=1e-4)


def test_a_narrowing_piece_takes_less_in_every_row():
    found = metres_per_row(a_part(shape=Trapezoid(360, 220, 450)), GAUGE, LOOP)
    assert len(found) == 135
    assert found == sorted(found, reverse=True)
    assert sum(found) == pytest.approx(156.3, abs=0.05)


def test_the_first_row_is_cast_on_and_the_last_cast_off():
    part = a_part(shape=Counted(229, 3), edges="cast on, off and seams")
    first, middle, last = metres_per_row(part, GAUGE, LOOP)
    assert first == pytest.approx(2 * middle + 3.3 * 229 / 220)
    assert last == pytest.approx(2.15 * middle)


def test_a_stranded_row_takes_its_floats_and_a_row_of_no_stitches_nothing():
    band = Run(2, 100, 100, "stranded", strands=(Strand(share=0.5), Strand("contrast", 0.5)))
    found = metres_per_row(a_part(shape=Runs((band, Run(1, 0, 0)))), GAUGE, LOOP)
    assert found == pytest.approx([1.25 * LOOP.value, 1.25 * LOOP.value, 0.0])


def test_an_amount_has_no_rows():
    assert metres_per_row(a_part(shape=Metres(9_000)), GAUGE, LOOP) == []


SOME = st.integers(0, 200)
EDGES = st.sampled_from(["none", "cast on and off", "cast on, stretchy cast-off"])


@pytest.mark.property
@given(st.lists(st.tuples(st.integers(1, 40), SOME, SOME), min_size=1, max_size=4), EDGES)
def test_rows_add_up_to_the_need(runs, edges):
    shape = Runs(tuple(Run(*one, "cables") for one in runs))
    part = a_part(shape=shape, edges=edges, extras=(Extra("panel", 7.0, 1.0),))
    (answer,) = reckon(a_book(a_yarn(), a_plan(), part)).plan("pullover").parts
    assert sum(metres_per_row(part, GAUGE, LOOP)) == pytest.approx(answer.need.value)


def test_stitches_of_each_row_and_none_for_an_amount():
    plan = a_plan()
    parts = [a_part(shape=Trapezoid(360, 220, 450)), a_part("else", shape=Metres(100_000))]
    drawn, amount = needs_of(plan, parts, Lots(a_book(a_yarn(), plan, *parts)))
    assert sum(stitches_per_row(drawn)) == pytest.approx(8640)  # by hand, 80 to 48 in 135 rows
    assert stitches_per_row(amount) == []
