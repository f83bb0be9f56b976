"""A garment is finished: its promises are knit in, or go back to the shelf."""

from datetime import date

from sqlmodel import Session

from app.book.event import Balance, Line
from app.store.records import load_book, post
from app.work.plan_finish import finish_plan
from tests.work.shelf import HELD

DAY = date(2026, 6, 1)


def test_what_was_promised_went_in(writing: Session) -> None:
    finish_plan(writing, load_book(writing).plan["pullover"], True, DAY)
    book = load_book(writing)
    assert book.plan["pullover"].state == "finished"
    assert book.promises == ()
    assert book.balances["G-1"].mm == 113_000


def test_what_was_promised_is_free_again(writing: Session) -> None:
    finish_plan(writing, load_book(writing).plan["pullover"], False, DAY)
    book = load_book(writing)
    assert book.plan["pullover"].state == "finished"
    assert book.promises == ()
    assert book.balances["G-1"] == Balance(96_000, round(HELD["G-1"][1] * 1000))


def test_a_skein_that_is_no_longer_there_hinders_nothing(writing: Session) -> None:
    gone = [Line("G-1", -96_000, -213_000), Line("given away", 96_000)]
    post(writing, "put away", DAY, gone)
    finish_plan(writing, load_book(writing).plan["pullover"], True, DAY)
    assert load_book(writing).promises == ()
