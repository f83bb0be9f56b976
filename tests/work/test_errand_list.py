"""Lines of the maker's own on the work list."""

from datetime import date

import pytest
from sqlmodel import Session

from app.store.records import load_book
from app.work.errand_list import add_errand, remove_errand, tick_errand
from tests.books import an_errand

DAY = date(2026, 6, 1)


def test_added_ticked_unticked_and_taken_out(writing: Session) -> None:
    add_errand(writing, an_errand())
    tick_errand(writing, "soap", DAY)
    assert load_book(writing).errands[0].done == DAY
    tick_errand(writing, "soap", None)
    assert load_book(writing).errands[0].done is None
    assert remove_errand(writing, "soap").text == "buy soap"
    assert load_book(writing).errands == ()


def test_a_line_that_is_gone(writing: Session) -> None:
    with pytest.raises(KeyError):
        tick_errand(writing, "soap", DAY)
    with pytest.raises(KeyError):
        remove_errand(writing, "soap")
