"""What a change does: more or less yarn, part by part, and the odds before and after."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.book.plan import Extra, Losses, RoleYarn
from app.book.shape import Counted
from app.planning.changes import PartChange, change_effects
from tests.books import a_book, a_part, a_plan, a_skein, a_yarn

HELD = {"G-1": (450.0, 1000.0)}


def a_tube(*parts, **plan):
    parts = parts or (a_part(),)
    return a_book(a_yarn(), a_skein(), a_plan(**plan), *parts, held=HELD)


@pytest.mark.golden
def test_ten_rows_more_take_41_m_and_19_g():
    """229 stitches × 10 rows × 1.8091 cm = 41.43 m, 18.6 g at 450 tex; and 1 % unusable."""
    found = change_effects(a_tube(), a_tube(a_part(shape=Counted(229, 130))), "pullover")
    assert found.parts == (PartChange("body", "body", pytest.approx(41.43, abs=0.01)),)
    assert found.m == pytest.approx(41.43 * 1.01, abs=0.01)
    assert found.g == pytest.approx(41.43 * 1.01 * 0.45, abs=0.01)
    assert found.after.short_m > found.before.short_m


def test_what_is_taken_of_each_yarn():
    """A body of 497.1 m goes from one yarn to another; sleeves stay."""
    white = a_yarn("white")
    sleeves = a_part("sleeves", shape=Counted(60, 100), copies=2, position=2)
    other = a_part(yarns=(RoleYarn("main", "white"),))
    before, after = (
        replace(one, yarns=(*one.yarns, white))
        for one in (a_tube(a_part(), sleeves), a_tube(other, sleeves))
    )
    grey, new = change_effects(before, after, "pullover").yarns
    assert (grey.name, grey.m) == ("grey two-ply", pytest.approx(-497.1, abs=0.05))
    assert grey.g == pytest.approx(-497.1 * 0.45, abs=0.05)
    assert (new.name, new.m, new.g) == ("white", pytest.approx(-grey.m), None)


def test_a_part_added_and_one_taken_out():
    sleeves = a_part("sleeves", shape=Counted(60, 100), copies=2, position=2)
    added = change_effects(a_tube(), a_tube(a_part(), sleeves), "pullover")
    (one,) = added.parts
    assert (one.name, one.m) == ("sleeves", pytest.approx(217.1, abs=0.05))
    taken = change_effects(a_tube(a_part(), sleeves), a_tube(), "pullover")
    assert taken.m == pytest.approx(-added.m)
    assert taken.parts[0].m == -one.m


def test_nothing_changed_does_nothing():
    found = change_effects(a_tube(), a_tube(), "pullover")
    assert (found.parts, found.m, found.g) == ((), 0.0, 0.0)


def test_grams_are_not_known_without_a_grist():
    nothing = a_tube(yarns=())
    assert change_effects(a_tube(), nothing, "pullover").g is None
    strange = replace(nothing, plans=(a_plan(yarns=(RoleYarn("main", "new"),)),))
    strange = replace(strange, yarns=(*strange.yarns, a_yarn("new")))
    assert change_effects(strange, strange, "pullover").g is None


def test_a_plan_that_is_in_one_of_the_books_only():
    with pytest.raises(KeyError):
        change_effects(a_book(), a_tube(), "pullover")


@pytest.mark.property
@given(st.floats(0, 30), st.integers(0, 100))
def test_more_of_anything_never_takes_less(pct, rows):
    more = a_part(shape=Counted(229, 120 + rows), extras=(Extra("cable panel", pct, 1.0),))
    no_tails = {"losses": Losses(0, 0, 1.0, 0)}
    found = change_effects(a_tube(**no_tails), a_tube(more, **no_tails), "pullover")
    assert found.m >= 0
    assert found.m == pytest.approx(sum(one.m for one in found.parts) * 1.01)
