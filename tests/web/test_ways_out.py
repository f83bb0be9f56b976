"""The ways out of a short garment: compared on its page, looked at, taken with one click, undone."""

import re

import pytest
from starlette.testclient import TestClient

from app.store.engine import Store
from app.store.fill import fill
from tests.books import a_part, a_plan
from tests.web.garden import SWAP, book_of, page, undo_of, words
from tests.work.shelf import a_shelf

WAYS = "/garments/pullover/ways-out"


@pytest.fixture(autouse=True)
def shelf(store: Store) -> None:
    """The hat asks for no yarn of the pullover's, which is short."""
    with store.writing() as session:
        fill(session, a_shelf())


def offer(html: str, key: str) -> dict[str, str]:
    """What the form of a way out sends."""
    found = re.search(rf'name="key" value="{key}">\s*<input[^>]* name="stamp" value="(\w+)"', html)
    assert found, f"no way {key}"
    return {"key": key, "stamp": found[1]}


def test_they_come_in_after_the_page_and_are_a_link_without_scripts(client: TestClient) -> None:
    html = page(client, "/garments/pullover")
    assert f'href="{WAYS}"' in html
    assert f'hx-get="{WAYS}"' in html
    whole, swapped = page(client, WAYS), client.get(WAYS, headers=SWAP).text
    assert "<html" in whole
    assert "<html" not in swapped
    assert "Show me the plan so" in words(swapped)


def test_looked_at_nothing_is_saved(client: TestClient, store: Store) -> None:
    before = book_of(store)
    html = page(client, f"{WAYS}/shorten-sleeves")
    said = words(html)
    assert "as it would be, nothing saved" in said
    assert "The budget, before and after" in said
    assert "<svg" in html
    assert book_of(store) == before
