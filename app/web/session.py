"""The database session of one request: committed before the answer goes out, or not at all.

`scope="function"` makes FastAPI leave the session before it sends the answer, so a commit that
fails becomes an error page and never a "saved" that was not.
"""

from collections.abc import Iterator
from typing import Annotated

from fastapi import Depends, Request
from sqlmodel import Session

from app.book.settings import Settings
from app.work.settings_read import settings_now


def reading(request: Request) -> Iterator[Session]:
    """A session that can only read, for GET."""
    with request.app.state.store.reading() as session:
        request.state.session = session
        yield session


def writing(request: Request) -> Iterator[Session]:
    """A session that holds the one right to write, for POST; an error rolls everything back."""
    with request.app.state.store.writing() as session:
        request.state.session = session
        yield session


READS = Depends(reading, scope="function")
"""For a page that needs no more of the book than the settings it is shown in."""

ReadingSession = Annotated[Session, Depends(reading, scope="function")]
WritingSession = Annotated[Session, Depends(writing, scope="function")]


def give_up_changes(request: Request) -> None:
    """Undo whatever this request has written so far: an answer of 400 or more saves nothing."""
    session = getattr(request.state, "session", None)
    if session is not None:
        session.rollback()


def settings_of_request(request: Request) -> Settings:
    """The maker's settings as this request's session first sees them; the defaults without one."""
    state = request.state
    if not hasattr(state, "settings"):
        session = getattr(state, "session", None)
        state.settings = settings_now(session) if session is not None else Settings()
    found: Settings = state.settings
    return found
