"""Questions answered beside the program: asked once, let go of when the data change or crowd."""

import time
from collections.abc import Callable, Iterator
from itertools import count

import pytest
from sqlmodel import Session

from app.store.engine import Store
from app.work.beside import MOST, Heard, ask_beside, forget_beside, stop_beside

versions = count(1)


def slow(tell: Callable[[str], None], word: str) -> None:
    tell(word)
    time.sleep(600)


@pytest.fixture
def session(shelf: Store, monkeypatch: pytest.MonkeyPatch) -> Iterator[Session]:
    version = next(versions)
    monkeypatch.setattr("app.work.beside.data_version", lambda _: version)
    with shelf.reading() as found:
        yield found
        for at in range(MOST + 1):
            forget_beside(found, (at,))


def heard(session: Session, word: str, at: int = 0) -> Heard:
    for _ in range(600):
        found = ask_beside(session, (at,), slow, word)
        if found.told:
            return found
        time.sleep(0.05)
    raise AssertionError("nothing was told")


def test_asked_again_it_is_the_same_work(session: Session) -> None:
    assert heard(session, "first") == Heard("first", True)
    assert ask_beside(session, (0,), slow, "second") == Heard("first", True)


def test_stopped_what_it_told_stays_until_it_is_forgotten(session: Session) -> None:
    heard(session, "first")
    stop_beside(session, (0,))
    assert ask_beside(session, (0,), slow, "second") == Heard("first", False)
    forget_beside(session, (0,))
    assert heard(session, "second") == Heard("second", True)


def test_nothing_asked_is_nothing_to_stop(session: Session) -> None:
    stop_beside(session, (0,))
    forget_beside(session, (0,))
    assert heard(session, "first") == Heard("first", True)


def test_an_answer_holds_for_one_version_of_the_data(
    session: Session, monkeypatch: pytest.MonkeyPatch
) -> None:
    heard(session, "first")
    monkeypatch.setattr("app.work.beside.data_version", lambda _: -7)
    assert heard(session, "second") == Heard("second", True)


def test_the_oldest_question_gives_way(session: Session) -> None:
    for at in range(MOST):
        ask_beside(session, (at,), slow, "first")
    ask_beside(session, (MOST,), slow, "first")
    assert heard(session, "second").told == "second"
