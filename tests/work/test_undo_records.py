"""A change of garments, promises and lines of the work list is undone as one, or not at all."""

from collections.abc import Callable
from dataclasses import replace
from datetime import date

import pytest
from sqlmodel import Session

from app.book.book import Book
from app.book.errors import CannotUndo
from app.book.shape import Counted
from app.store.records import load_book, put
from app.work.errand_list import add_errand, remove_errand
from app.work.knit_finish import Finished, finish_knitting
from app.work.part_save import add_part, change_part, remove_part
from app.work.plan_save import change_plan
from app.work.promise_fill import drop_proposed, fill_plan, keep_proposed
from app.work.promise_make import change_promise, promise_skein, take_off
from app.work.undo_records import MOST, last_change, remember, undo_change
from tests.books import a_part, a_promise, an_errand

DAY = date(2026, 6, 1)
Step = Callable[[Session, Book], object]

CHANGES: dict[str, Step] = {
    "put": lambda session, _: promise_skein(session, "sleeves", "W-1", 50_000),
    "put more": lambda session, _: promise_skein(session, "body", "G-1", 20_000),
    "how much": lambda session, book: change_promise(session, book.promises[0], 150_000),
    "off": lambda session, book: take_off(session, book.promises[0]),
    "fill": lambda session, _: fill_plan(session, "pullover"),
    "part added": lambda session, _: add_part(session, a_part("collar")),
    "part changed": lambda session, book: change_part(
        session, replace(book.part["body"], shape=Counted(100, 100))
    ),
    "part out": lambda session, book: remove_part(session, book.part["body"]),
    "plan changed": lambda session, book: change_plan(
        session, replace(book.plan["pullover"], state="put away")
    ),
    "line out": lambda session, _: remove_errand(session, "soap"),
    "finished, used": lambda session, book: finish_knitting(
        session, book.plan["pullover"], Finished(DAY, all_used=True)
    ),
    "finished, free": lambda session, book: finish_knitting(
        session, book.plan["pullover"], Finished(DAY)
    ),
}


def kept(book: Book) -> tuple[object, ...]:
    """What an undo brings back: the records, and what every skein holds."""
    skeins = {one.id: book.balances[one.id] for one in book.holdings if one.kind == "skein"}
    return (set(book.plans), set(book.parts), set(book.promises), set(book.errands), skeins)


def done(session: Session, step: Step) -> str:
    was = load_book(session)
    step(session, was)
    return remember(session, was, "It is done.")


@pytest.mark.parametrize("step", CHANGES.values(), ids=CHANGES)
def test_undone_all_is_as_it_was(writing: Session, step: Step) -> None:
    add_errand(writing, an_errand())
    before = kept(load_book(writing))
    key = done(writing, step)
    assert kept(load_book(writing)) != before
    assert undo_change(writing, key, DAY).words == "It is done."
    assert kept(load_book(writing)) == before


@pytest.mark.parametrize("step", [keep_proposed, drop_proposed])
def test_a_proposal_is_there_again(writing: Session, step: Callable[[Session, str], int]) -> None:
    fill_plan(writing, "pullover")
    before = kept(load_book(writing))
    key = done(writing, lambda session, _: step(session, "pullover"))
    undo_change(writing, key, DAY)
    assert kept(load_book(writing)) == before


def test_changed_again_since_it_is_refused(writing: Session) -> None:
    key = done(writing, CHANGES["how much"])
    change_promise(writing, load_book(writing).promises[0], 90_000)
    with pytest.raises(CannotUndo, match="changed again since"):
        undo_change(writing, key, DAY)
    assert load_book(writing).promises[0].mm == 90_000


def test_undone_once_only(writing: Session) -> None:
    key = done(writing, CHANGES["off"])
    undo_change(writing, key, DAY)
    with pytest.raises(CannotUndo):
        undo_change(writing, key, DAY)


def test_yarn_promised_elsewhere_meanwhile_is_not_promised_twice(writing: Session) -> None:
    key = done(writing, CHANGES["off"])
    put(writing, a_promise("G-1", 200_000, id="other", plan_id="hat", part_id="crown"))
    with pytest.raises(CannotUndo, match="promised elsewhere by now"):
        undo_change(writing, key, DAY)


def test_what_was_too_long_ago(writing: Session) -> None:
    first = done(writing, CHANGES["put"])
    for _ in range(MOST):
        done(writing, lambda *_: None)
    with pytest.raises(CannotUndo, match="too long ago"):
        undo_change(writing, first, DAY)


def test_the_last_change_of_a_garment_for_as_long_as_it_stands(writing: Session) -> None:
    add_errand(writing, an_errand())
    key = done(writing, CHANGES["off"])
    done(writing, CHANGES["line out"])
    about = last_change(writing, load_book(writing), lambda one: one.about("pullover"))
    assert about is not None
    assert about.key == key
    assert last_change(writing, load_book(writing), lambda one: one.about("hat")) is None
    errands = last_change(writing, load_book(writing), lambda one: one.of_errands())
    assert errands is not None
    assert errands.before == (an_errand(),)
    undo_change(writing, key, DAY)
    assert last_change(writing, load_book(writing), lambda one: one.about("pullover")) is None
