"""Questions that take long on a large shelf: answered beside the program, heard, stopped.

An answer holds for one version of the data; what was asked of an older one is let go of.
"""

from collections.abc import Callable
from dataclasses import dataclass
from threading import Lock
from typing import Any

from sqlmodel import Session

from app.store.version import data_version
from app.work.apart import Apart, apart
from app.work.assign_known import place

MOST = 4
"""So many questions are remembered, the latest ones."""

Question = tuple[object, ...]


@dataclass(frozen=True, slots=True)
class Heard:
    """The latest that was told (None before that), and whether the work still goes on."""

    told: Any
    going_on: bool


_asked: dict[tuple[str, Question], tuple[int, Apart]] = {}
_one_at_a_time = Lock()


def ask_beside(
    session: Session, question: Question, work: Callable[..., None], *given: Any
) -> Heard:
    """What is known of a question; `work(tell, *given)` is begun where it was not asked yet."""
    key, version = (place(session), question), data_version(session)
    with _one_at_a_time:
        was = _asked.get(key)
        if was is None or was[0] != version:
            _let_go(key)
            _asked[key] = version, apart(work, *given)
            for oldest in list(_asked)[:-MOST]:
                _let_go(oldest)
        running = _asked[key][1]
        running.listen()
        return Heard(running.heard, not running.ended)


def stop_beside(session: Session, question: Question) -> None:
    """End the work on a question; what it told stays."""
    with _one_at_a_time:
        if asked := _asked.get((place(session), question)):
            asked[1].stop()


def forget_beside(session: Session, question: Question) -> None:
    """End the work on a question, so that it can be asked anew."""
    with _one_at_a_time:
        _let_go((place(session), question))


def _let_go(key: tuple[str, Question]) -> None:
    if asked := _asked.pop(key, None):
        asked[1].stop()
