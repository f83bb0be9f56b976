"""The first page is served by its own room; the others are open by the time they are wanted."""

from collections.abc import Iterator
from threading import Thread
from time import monotonic, sleep

import pytest
from starlette.testclient import TestClient

from app.store.engine import Store
from app.web.rooms import Rooms
from app.web.server import create_app
from tests.web.conftest import HOME

PATIENCE_S = 20


@pytest.fixture
def early(store: Store) -> Iterator[TestClient]:
    with TestClient(create_app(store, at_once=False), base_url=HOME) as browser:
        yield browser


def rooms(browser: TestClient) -> Rooms:
    return browser.app.state.rooms


def test_the_first_page_needs_only_its_own_room(early: TestClient) -> None:
    assert not rooms(early).all_open
    assert early.get("/").status_code == 200


def test_the_other_rooms_open_behind_the_first_page(early: TestClient) -> None:
    early.get("/")
    end = monotonic() + PATIENCE_S
    while not rooms(early).all_open and monotonic() < end:
        sleep(0.01)
    assert rooms(early).all_open
    assert early.get("/skeins").status_code == 200


@pytest.mark.parametrize("address", ["/skeins", "/work-list", "/tables", "/nowhere"])
def test_a_room_asked_for_first_is_open_in_time(early: TestClient, address: str) -> None:
    assert early.get(address).status_code == (404 if address == "/nowhere" else 200)
    assert rooms(early).all_open


def test_rooms_opened_by_two_at_once_are_there_once(early: TestClient, store: Store) -> None:
    callers = [Thread(target=rooms(early).open_all) for _ in range(4)]
    for one in callers:
        one.start()
    for one in callers:
        one.join()
    assert len(early.app.routes) == len(create_app(store).routes)
