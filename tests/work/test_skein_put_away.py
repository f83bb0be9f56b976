"""Skeins that leave the shelf, and come back."""

from collections.abc import Iterator
from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest
from sqlmodel import Session

from app.book.holding import Holding
from app.book.yarn import Yarn
from app.store.engine import open_store
from app.store.records import get, load_book
from app.store.skein_find import balance_of
from app.work.event_undo import undo_event
from app.work.refusal import Refusal
from app.work.skein_add import NewSkein, add_skein
from app.work.skein_change import change_skein
from app.work.skein_put_away import Going, emptied_by, events_of, put_away
from app.work.skein_readings import Length, Weight

DAY = date(2026, 3, 1)


@pytest.fixture
def session(tmp_path: Path) -> Iterator[Session]:
    store = open_store(tmp_path)
    with store.writing() as session:
        yield session
    store.close()


def skein(session: Session, code: str = "") -> Holding:
    yarn = Yarn("y", "Grey")
    new = NewSkein(yarn, Weight(96_000, "96", "g"), (Length(213_000, "213", "m"),), DAY, code=code)
    return add_skein(session, new).holdings[0]


@pytest.mark.parametrize(
    ("going", "sink"), [("given away", "given away"), ("lost or used up", "waste")]
)
def test_its_wool_goes_where_it_went(session: Session, going: Going, sink: str) -> None:
    one = skein(session)
    put_away(session, one, going, DAY)
    assert balance_of(session, one.id).mg == 0
    assert balance_of(session, sink).mg == 96_000
    kept = get(session, Holding, one.id)
    assert kept
    assert kept.put_away == DAY


def test_undoing_takes_it_back(session: Session) -> None:
    one = skein(session)
    event = put_away(session, one, "given away", DAY)
    assert emptied_by(load_book(session), one.id) == event
    undo_event(session, event.seq, DAY)
    book = load_book(session)
    assert emptied_by(book, one.id) is None
    assert [each.kind for each in events_of(book, one.id)] == ["arrive", "put away", "undo"]
    assert balance_of(session, one.id).mm == 213_000
    assert book.holding[one.id].put_away is None


def test_a_code_may_change_but_not_to_one_in_use(session: Session) -> None:
    one, other = skein(session), skein(session)
    change_skein(session, replace(one, place="drawer"))
    change_skein(session, replace(one, code="Heron"))
    with pytest.raises(Refusal, match="Heron is already in use"):
        change_skein(session, replace(other, code="Heron"))
