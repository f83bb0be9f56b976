"""Skeins weighed and measured again: what is read is kept, and the book follows where it should."""

from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest
from sqlmodel import Session

from app.book.event import Balance
from app.book.holding import Holding
from app.book.yarn import Yarn
from app.store.engine import open_store
from app.store.skein_find import balance_of, readings_of
from app.work.skein_add import NewSkein, add_skein
from app.work.skein_measure import Weighing, measure_again
from app.work.skein_readings import Length, Weight, Wraps, by_reel

FIRST, LATER = date(2026, 3, 1), date(2026, 3, 9)


@pytest.fixture
def session(tmp_path: Path) -> Iterator[Session]:
    store = open_store(tmp_path)
    with store.writing() as session:
        yield session
    store.close()


def skein(session: Session, finished: bool = True) -> Holding:
    """The worked skein: 142 turns of 1.5 m, 96 g."""
    length = by_reel(1500, 142, "142", finished)
    new = NewSkein(Yarn("y", "Grey"), Weight(96_000, "96", "g"), (length,), FIRST)
    return add_skein(session, new).holdings[0]


def test_a_lighter_skein_is_shorter_in_proportion(session: Session) -> None:
    """48 g of 96 g: 106.5 m of 213 m; the missing 48 g stand in weighing and moisture."""
    one = skein(session)
    event = measure_again(session, one, Weighing(LATER, Weight(48_000, "48", "g")))
    assert balance_of(session, one.id) == Balance(48_000, 106_500)
    assert balance_of(session, "weighing and moisture").mg == 48_000
    assert event
    assert (event.kind, event.day) == ("correct", LATER)


def test_a_damp_weight_is_kept_and_moves_nothing(session: Session) -> None:
    one = skein(session)
    damp = Weight(130_000, "130", "g", wool="damp")
    assert measure_again(session, one, Weighing(LATER, damp)) is None
    assert balance_of(session, one.id) == Balance(96_000, 213_000)
    assert readings_of(session, one.id)[-1].wool == "damp"


def test_the_same_weight_moves_nothing(session: Session) -> None:
    one = skein(session)
    assert measure_again(session, one, Weighing(LATER, Weight(96_000, "96", "g"))) is None


def test_the_finished_length_takes_the_place_of_the_one_before(session: Session) -> None:
    one = skein(session, finished=False)
    event = measure_again(session, one, Weighing(LATER, lengths=(by_reel(1500, 130, "130"),)))
    assert balance_of(session, one.id) == Balance(96_000, 195_000)
    assert event
    assert [line.holding_id for line in event.lines] == [one.id]


def test_a_length_before_finishing_never_moves_a_finished_one(session: Session) -> None:
    one = skein(session)
    before = Length(250_000, "250", "m", finished=False)
    assert measure_again(session, one, Weighing(LATER, lengths=(before,))) is None
    assert balance_of(session, one.id).mm == 213_000


def test_of_two_lengths_in_one_sitting_the_finished_one_counts(session: Session) -> None:
    one = skein(session, finished=False)
    before = Length(214_000, "214", "m", finished=False)
    both = (before, Length(190_000, "190", "m"))
    measure_again(session, one, Weighing(LATER, lengths=both))
    assert balance_of(session, one.id).mm == 190_000


def test_weight_and_length_together_are_one_event(session: Session) -> None:
    one = skein(session)
    weighing = Weighing(LATER, Weight(90_000, "90", "g"), (Length(205_000, "205", "m"),))
    event = measure_again(session, one, weighing)
    assert balance_of(session, one.id) == Balance(90_000, 205_000)
    assert event
    assert sum(line.mg for line in event.lines) == 0


def test_an_older_weighing_entered_late_does_not_move_the_book(session: Session) -> None:
    one = skein(session)
    early = Weighing(date(2026, 2, 1), Weight(99_000, "99", "g"))
    assert measure_again(session, one, early) is None


def test_wraps_are_kept(session: Session) -> None:
    one = skein(session)
    assert measure_again(session, one, Weighing(LATER, wraps=Wraps(12_000, "12"))) is None
    assert readings_of(session, one.id)[-1].kind == "wraps"
