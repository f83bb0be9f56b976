"""Skeins are knit into their garment: grams and metres move, what remains stays promised."""

from datetime import date

import pytest
from sqlmodel import Session

from app.book.book import Book
from app.book.errors import MakesTooMuch
from app.book.event import Balance
from app.book.plan import Promise
from app.store.records import load_book, put
from app.work.plan_used import knit_into
from app.work.promise_use import use_down_to, use_promised
from tests.books import a_holding

DAY = date(2026, 6, 1)


def promise(session: Session) -> Promise:
    return load_book(session).promises[0]


def garment(book: Book) -> Balance:
    made = next(one for one in book.holdings if one.kind == "garment")
    assert made.plan_id == "pullover"
    return book.balances[made.id]


def test_all_that_was_promised_is_knit(writing: Session) -> None:
    """100 of 213 m of a 96 g skein are 45.070 g, by hand."""
    use_promised(writing, promise(writing), 100_000, DAY)
    book = load_book(writing)
    assert book.promises == ()
    assert garment(book) == Balance(45_070, 0)
    assert book.balances["G-1"] == Balance(50_930, 113_000)


def test_some_of_it_leaves_the_rest_promised(writing: Session) -> None:
    use_promised(writing, promise(writing), 40_000, DAY)
    assert promise(writing).mm == 60_000
    assert load_book(writing).balances["G-1"].mm == 173_000


def test_to_the_last_metre_no_dust_is_left(writing: Session) -> None:
    use_promised(writing, promise(writing), 212_999, DAY)
    assert load_book(writing).balances["G-1"] == Balance(0, 0)


def test_by_what_is_left_on_the_scale(writing: Session) -> None:
    """48 g left of 96 g: half of 213 m went in; the promise is done with."""
    use_down_to(writing, promise(writing), 48_000, DAY)
    book = load_book(writing)
    assert book.balances["G-1"] == Balance(48_000, 106_500)
    assert book.promises == ()


def test_more_left_than_there_was_is_refused(writing: Session) -> None:
    with pytest.raises(MakesTooMuch):
        use_down_to(writing, promise(writing), 97_000, DAY)


def test_a_garment_has_one_holding_for_all_its_skeins(writing: Session) -> None:
    use_promised(writing, promise(writing), 40_000, DAY)
    use_promised(writing, promise(writing), 60_000, DAY)
    made = [one for one in load_book(writing).holdings if one.kind == "garment"]
    assert len(made) == 1


def test_its_code_is_the_garments_name_unless_that_is_taken(writing: Session) -> None:
    put(writing, a_holding("other", "left-over", code="pullover"))
    use_promised(writing, promise(writing), 40_000, DAY)
    made = next(one for one in load_book(writing).holdings if one.kind == "garment")
    assert made.code == "pullover 2"


def test_what_was_knit_in_is_told_skein_by_skein(writing: Session) -> None:
    use_promised(writing, promise(writing), 100_000, DAY)
    (row,) = knit_into(load_book(writing), "pullover")
    assert (row.code, row.m, row.g, row.day) == ("G-1", 100.0, 45.07, DAY)
    assert knit_into(load_book(writing), "hat") == ()
