"""One request, one transaction, committed before the answer goes out."""

import ast
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest
from fastapi import Request, Response
from sqlmodel import Session
from starlette.testclient import TestClient

from app.book.person import Person
from app.book.settings import Settings
from app.store.engine import Store
from app.store.errors import FULL, NotSaved, Refused
from app.store.records import data_version, load_book, put
from app.web import routes
from app.web.errors import ErrorPage
from app.web.server import create_app
from app.web.templating import render
from tests.web.conftest import HOME
from tests.web.forms import shown_values


class FailingStore:
    """A store whose commit fails."""

    def __init__(self, store: Store, error: Exception) -> None:
        self.reading = store.reading
        self.folder = store.folder
        self._store, self._error = store, error

    @contextmanager
    def writing(self) -> Iterator[Session]:
        with self._store.writing() as session:
            yield session
            raise self._error


@pytest.mark.parametrize(
    ("error", "status", "said"),
    [
        (NotSaved(FULL), 503, "The disk is full"),
        (Refused("Another skein or fleece has this label."), 409, "has this label"),
        (RuntimeError("broken"), 500, "Nothing of this was saved"),
    ],
)
def test_a_commit_that_fails_is_an_error_page_and_never_a_saved_that_was_not(
    store: Store, error: Exception, status: int, said: str
):
    app = create_app(FailingStore(store, error))  # type: ignore[arg-type]
    with TestClient(app, base_url=HOME, headers={"origin": HOME}) as browser:
        answer = browser.post("/settings/people/new", data={"name": "Ines"})
        assert answer.status_code == status
        assert said in answer.text
        assert "set-cookie" not in answer.headers
        assert "Traceback" not in answer.text
        assert "RuntimeError" not in answer.text
    with store.reading() as session:
        assert load_book(session).people == ()


def test_an_answer_of_400_or_more_saves_nothing(store: Store, client: TestClient, monkeypatch):
    """A route that writes first and finds the fault later leaves nothing half saved."""

    def written_then_refused(session: Session, settings: Settings) -> None:
        put(session, settings)
        put(session, Person(id="p1", name="Half saved"))

    monkeypatch.setattr("app.web.routes.settings.change_settings", written_then_refused)
    monkeypatch.setattr("app.web.routes.settings.after_save", _refused)
    with store.reading() as session:
        before = data_version(session)
    answer = client.post("/settings", data=_as_shown(client))
    assert answer.status_code == 422
    with store.reading() as session:
        assert load_book(session).people == ()
        assert data_version(session) == before


def test_every_route_takes_its_session_at_function_scope():
    """`Depends(reading)` without its scope would commit after the answer has gone out."""
    for file in Path(routes.__path__[0]).glob("*.py"):
        names = {
            node.id for node in ast.walk(ast.parse(file.read_text())) if isinstance(node, ast.Name)
        }
        assert not names & {"Depends", "reading", "writing"}, file.name


def _refused(request: Request, *_: object, **__: object) -> Response:
    page = ErrorPage("No", "No.", "No.")
    return render(request, "errors/error.html", page, status=422)


def _as_shown(client: TestClient) -> dict[str, str]:
    return shown_values(client.get("/settings").text, "/settings")
