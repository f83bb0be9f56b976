"""Parts are added at the end, changed, moved, and taken out with what was promised to them."""

from dataclasses import replace

from sqlmodel import Session

from app.book.shape import Counted
from app.store.records import load_book
from app.work.part_save import add_part, change_part, move_part, remove_part
from tests.books import a_part


def names(session: Session) -> list[str]:
    return [one.name for one in load_book(session).parts_of["pullover"]]


def test_a_new_part_stands_last(writing: Session) -> None:
    assert add_part(writing, a_part("collar")).position == 3
    assert names(writing) == ["body", "sleeves", "collar"]


def test_the_first_part_of_a_garment(writing: Session) -> None:
    remove_part(writing, load_book(writing).part["crown"])
    assert add_part(writing, a_part("brim", plan_id="hat")).position == 1


def test_a_part_is_changed_in_its_place(writing: Session) -> None:
    body = load_book(writing).part["body"]
    change_part(writing, replace(body, shape=Counted(200, 100)))
    assert load_book(writing).part["body"].shape == Counted(200, 100)
    assert names(writing) == ["body", "sleeves"]


def test_a_part_moves_and_the_ends_stay(writing: Session) -> None:
    assert move_part(writing, load_book(writing).part["sleeves"], earlier=True)
    assert names(writing) == ["sleeves", "body"]
    assert not move_part(writing, load_book(writing).part["sleeves"], earlier=True)
    assert names(writing) == ["sleeves", "body"]


def test_taking_a_part_out_frees_its_skeins_and_only_them(writing: Session) -> None:
    assert remove_part(writing, load_book(writing).part["sleeves"]) == 0
    assert len(load_book(writing).promises) == 1
    assert remove_part(writing, load_book(writing).part["body"]) == 1
    assert load_book(writing).promises == ()
