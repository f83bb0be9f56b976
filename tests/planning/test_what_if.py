"""A book beside the book: what it changes is all that differs, and nothing is lost on the way."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.book.checks import check
from app.book.shape import Counted
from app.planning import reckon
from app.planning.what_if import ToCome, WhatIf, between
from tests.books import a_book, a_part, a_plan, a_promise, a_skein, a_yarn, an_errand
from tests.random_books import books


def a_small_book():
    held = {"G-1": (96, 213)}
    records = [a_yarn(), a_skein(), a_plan(), a_part(), a_promise()]
    return a_book(*records, held=held)


def test_records_take_the_place_of_their_older_selves():
    book = a_small_book()
    shorter = a_part(shape=Counted(229, 100))
    change = WhatIf(put=(shorter, an_errand()), gone=(book.promises[0],))
    changed = change.in_book(book)
    assert changed.part["body"] == shorter
    assert changed.promises == ()
    assert changed.errands == (an_errand(),)
    assert (changed.plans, changed.yarns) == (book.plans, book.yarns)


def test_what_lies_between_two_books():
    book = a_small_book()
    change = WhatIf(put=(a_plan("hat"), an_errand()), gone=(book.promises[0],))
    found = between(book, change.in_book(book))
    assert (set(found.put), found.gone) == (set(change.put), change.gone)
    assert between(book, book).nothing
    assert not found.nothing


@pytest.mark.property
@given(books(), books())
def test_what_lies_between_any_two_books_makes_one_of_the_other(one, other):
    made = between(one, other).in_book(one)
    assert set(made.plans) == set(other.plans)
    assert set(made.parts) == set(other.parts)
    assert set(made.promises) == set(other.promises)


@pytest.mark.property
@given(st.integers(1, 900_000), st.integers(1, 900_000))
def test_a_skein_to_come_is_a_sound_skein(mm, mg):
    """Reeled and finished: 5 % one-sided is not in it, half a turn and the girth are."""
    there = WhatIf(to_come=(ToCome("new", "grey two-ply", mm, mg),)).in_book(a_small_book())
    assert there.balances["new"].mm == mm
    assert check(there) == check(a_small_book())
    line = reckon(there).shelf["new"]
    assert line.held.value == pytest.approx(mm / 1000)
    assert line.free_m <= mm / 1000


def test_a_skein_comes_into_a_book_in_which_nothing_has_happened():
    book = replace(a_book(a_yarn()), events=())
    there = WhatIf(to_come=(ToCome("new", "grey two-ply", 1000, 450),)).in_book(book)
    assert [event.seq for event in there.events] == [1]
