"""Undo where it happened: skeins in their places, parts, plans, garments on the needles."""

import pytest
from starlette.testclient import TestClient

from app.store.engine import Store
from app.store.fill import fill
from tests.web.forms import shown_values
from tests.web.garden import SWAP, book_of, page, promise_stamp, stamp_of, undo_of, words
from tests.work.shelf import a_shelf

PULLOVER = "/garments/pullover"
PROMISED = f"{PULLOVER}/promises/G-1 promised"
FORMS = ("parts/new", "parts/body/change", "change")
STEPS = ("put", "off", "how much", "fill", "begin", "part out", *FORMS)


@pytest.fixture(autouse=True)
def shelf(store: Store) -> None:
    with store.writing() as session:
        fill(session, a_shelf())


def asked(client: TestClient, store: Store, what: str) -> tuple[str, dict[str, str]]:
    """An address and what is sent to it."""
    if what in FORMS:
        address = f"{PULLOVER}/{what}"
        form = shown_values(page(client, address), address)
        return address, form | {"name": "renamed", "counted_stitches": "9", "counted_rows": "9"}
    return {
        "put": (f"{PULLOVER}/assign", {"part_id": "sleeves", "holding_id": "W-1", "amount": "20"}),
        "off": (f"{PROMISED}/off", {}),
        "how much": (
            f"{PROMISED}/change",
            {"stamp": promise_stamp(store, "G-1 promised"), "amount": "150"},
        ),
        "fill": (f"{PULLOVER}/fill", {}),
        "part out": (f"{PULLOVER}/parts/body/remove", {"stamp": stamp_of(store, "part", "body")}),
        "begin": (f"{PULLOVER}/begin", {"stamp": stamp_of(store, "plan", "pullover")}),
    }[what]


@pytest.mark.parametrize("what", STEPS)
def test_what_was_done_can_be_undone_at_once_and_later(
    client: TestClient, store: Store, what: str
) -> None:
    before = book_of(store)
    address, told = asked(client, store, what)
    said = client.post(address, data=told)
    assert book_of(store) != before
    assert 'id="said"' in said.text
    assert undo_of(said.text)
    later = page(client, PULLOVER)
    assert 'id="said"' not in later
    assert "Changed last:" in words(later)
    answer = client.post(undo_of(later), data={"back": PULLOVER})
    assert "Undone:" in words(answer.text)
    assert book_of(store) == before
    assert "Changed last:" not in words(page(client, PULLOVER))


def test_with_htmx_the_undo_comes_with_the_message(client: TestClient, store: Store) -> None:
    answer = client.post(f"{PROMISED}/off", headers=SWAP)
    client.post(undo_of(answer.text), data={"back": PULLOVER})
    assert book_of(store).promises[0].mm == 100_000


@pytest.mark.parametrize("what", ["keep", "drop"])
def test_a_proposal_kept_or_dropped_is_a_proposal_again(
    client: TestClient, store: Store, what: str
) -> None:
    client.post(f"{PULLOVER}/fill")
    before = book_of(store)
    answer = client.post(f"{PULLOVER}/{what}")
    client.post(undo_of(answer.text), data={"back": PULLOVER})
    assert book_of(store) == before


def test_what_was_changed_since_is_not_undone(client: TestClient, store: Store) -> None:
    address, told = asked(client, store, "how much")
    undo = undo_of(client.post(address, data=told).text)
    client.post(f"{PROMISED}/off")
    answer = client.post(undo, data={"back": PULLOVER})
    assert answer.status_code == 409
    assert "changed again since" in answer.text
    assert f'href="{PULLOVER}"' in answer.text
    assert book_of(store).promises == ()


@pytest.mark.parametrize("rest", ["used", "free"])
def test_finishing_is_undone_as_one(client: TestClient, store: Store, rest: str) -> None:
    address, told = asked(client, store, "begin")
    client.post(address, data=told)
    before = book_of(store)
    told = {"stamp": stamp_of(store, "plan", "pullover"), "rest": rest}
    client.post(f"{PULLOVER}/needles/finish", data=told)
    assert book_of(store).plan["pullover"].state == "finished"
    client.post(undo_of(page(client, PULLOVER)), data={"back": PULLOVER})
    after = book_of(store)
    assert (after.plans, after.promises) == (before.plans, before.promises)
    assert after.balances["G-1"] == before.balances["G-1"]
    assert "Is it finished?" in words(page(client, PULLOVER))


def test_undoing_what_was_used_promises_it_again(client: TestClient, store: Store) -> None:
    address, told = asked(client, store, "begin")
    client.post(address, data=told)
    told = {"stamp": promise_stamp(store, "G-1 promised"), "used": "40"}
    answer = client.post(f"{PROMISED}/use", data=told)
    assert book_of(store).promises[0].mm == 60_000
    client.post(undo_of(answer.text), data={"back": PULLOVER})
    assert book_of(store).promises[0].mm == 100_000
    assert book_of(store).balances["G-1"].mm == 213_000


def test_a_key_that_is_none(client: TestClient) -> None:
    answer = client.post("/undo/change/<b>", data={"back": PULLOVER})
    assert answer.status_code == 409
    assert "too long ago" in answer.text
