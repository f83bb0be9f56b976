"""However many rows there are, a page asks the database the same number of questions."""

from collections.abc import Callable
from contextlib import closing
from pathlib import Path

import pytest
from sqlalchemy import event
from starlette.testclient import TestClient

from app.store import Store
from app.web.server import create_app
from tests.bench.shelf import LARGE, guild_book, store_of

HOME = "http://127.0.0.1:8765"
PAGES = (
    "/",
    "/skeins",
    "/skeins?state=free&sort=metres",
    "/skeins/skein-00001",
    "/yarns",
    "/yarns/yarn-000",
    "/swatches",
    "/fleeces",
    "/fleeces/Bramble",
    "/garments",
    "/garments/plan-000",
    f"/garments/{LARGE}",
    f"/garments/{LARGE}/print",
    "/work-list",
    "/settings/people",
    "/wool-book",
    "/wool-book/balances",
    "/wool-book/skein-00001",
)


@pytest.fixture(scope="module")
def statements(tmp_path_factory: pytest.TempPathFactory) -> Callable[[int, int], dict[str, int]]:
    """The number of statements of each page on a shelf of so many skeins and plans."""

    def count(skeins: int, plans: int) -> dict[str, int]:
        folder: Path = tmp_path_factory.mktemp("shelf")
        with closing(store_of(folder, guild_book(skeins, plans, large=True))) as store:
            return _statements_of_pages(store)

    return count


def _statements_of_pages(store: Store) -> dict[str, int]:
    asked: list[str] = []

    @event.listens_for(store._reader, "before_cursor_execute")
    def note(_connection, _cursor, statement, *_rest) -> None:
        asked.append(statement)

    found = {}
    with TestClient(create_app(store), base_url=HOME) as browser:
        for page in PAGES:
            # The first page after a change reckons, and reads every table once.
            browser.get("/settings")
            asked.clear()
            assert browser.get(page).status_code == 200, page
            found[page] = len(asked)
    return found


def test_the_number_of_statements_of_a_page_does_not_grow_with_rows(statements):
    few, many = statements(70, 1), statements(400, 20)
    assert few == many
    assert max(many.values()) <= 25, many
