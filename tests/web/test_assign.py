"""How the skeins of a garment are divided: how good, why so, what moved, and a longer look."""

import time
from collections.abc import Iterator
from dataclasses import replace

import pytest
from sqlmodel import Session
from starlette.testclient import TestClient

from app.book.shape import Metres
from app.planning.assign import propose
from app.planning.assign_search import Told
from app.planning.reckoning import reckon
from app.store.engine import Store
from app.store.fill import fill
from app.store.records import load_book, put
from app.work import assign_search
from app.work.assign_known import kept_proposal, remember_proposal
from app.work.promise_fill import without_proposed
from tests.books import DAY, a_book, a_part, a_plan, a_promise, a_skein, a_yarn
from tests.web.garden import SWAP, book_of, page, words

PULLOVER = "/garments/pullover"
ASSIGN = f"{PULLOVER}/assign"
HELD = {f"G-{n}": (45.0 + 4 * n, 100.0 + 9 * n) for n in range(1, 8)}


@pytest.fixture(autouse=True)
def shelf(store: Store) -> Iterator[None]:
    """Seven skeins; 60 m of the first are kept for the body."""
    body = a_part(shape=Metres(260_000))
    sleeves = a_part("sleeves", shape=Metres(95_000), copies=2, position=2)
    kept = a_promise("G-1", 60_000)
    skeins = [a_skein(code) for code in HELD]
    book = a_book(a_yarn(), *skeins, a_plan(), body, sleeves, kept, held=HELD)
    with store.writing() as session:
        fill(session, book)
    yield
    with store.reading() as session:
        assign_search.forget_search(session, "pullover")


def filled(client: TestClient) -> str:
    client.post(f"{PULLOVER}/fill")
    return words(page(client, ASSIGN))


def test_before_anything_is_proposed(client: TestClient) -> None:
    said = words(page(client, ASSIGN))
    assert "Nothing is proposed now" in said
    assert "G-1 , 60 m, kept" in said
    assert "What it asks of you" not in said


def test_it_says_how_good_it_is_and_what_it_asks(client: TestClient) -> None:
    said = filled(client)
    assert "The best possible for these prices" in said
    assert "inside a part" in said
    assert "nothing still to be made" in said
    assert "18 times in 20" in said


def test_each_skein_says_why_it_is_there(client: TestClient, store: Store) -> None:
    said = filled(client)
    for one in book_of(store).promises:
        assert one.why in said


def test_the_garment_leads_there(client: TestClient) -> None:
    filled(client)
    assert f'href="{ASSIGN}"' in page(client, PULLOVER)


def test_what_is_kept_stays_and_the_rest_is_solved_again(client: TestClient, store: Store) -> None:
    filled(client)
    first = next(one for one in book_of(store).promises if one.state == "proposed")
    client.post(f"{PULLOVER}/keep", data={"promise_id": first.id})
    assert "Changed since it was proposed" in words(page(client, ASSIGN))
    client.post(f"{PULLOVER}/fill")
    after = book_of(store).promises
    assert {"G-1 promised", first.id} <= {one.id for one in after if one.state == "kept"}
    assert "Changed since" not in words(page(client, ASSIGN))


def test_a_new_proposal_shows_what_it_moved_and_why(client: TestClient, store: Store) -> None:
    filled(client)
    gone = next(one.holding_id for one in book_of(store).promises if one.state == "proposed")
    with store.writing() as session:
        put(session, replace(load_book(session).holding[gone], put_away=DAY))
    said = filled(client)
    assert "What was moved" in said
    assert f"{gone}: no longer with" in said
    assert "it is no longer on the shelf" in said


def test_dropped_it_is_no_longer_told_of(client: TestClient) -> None:
    filled(client)
    client.post(f"{PULLOVER}/drop")
    assert "Nothing is proposed now" in words(page(client, ASSIGN))


class Stand:
    """Stands in for a search in another process."""

    def __init__(self, told: Told | None, ended: bool = True) -> None:
        self.heard, self.ended = told, ended

    def listen(self) -> None:
        pass

    def stop(self) -> None:
        self.ended = True


def told(session: Session, cost: float = -1.0, bound: float = -5.0, done: bool = True) -> Told:
    """What a search would tell: the proposal that stands, at another cost."""
    book = load_book(session)
    kept = kept_proposal(session, book, "pullover")
    bare = without_proposed(book, "pullover")
    found = kept.proposal if kept else propose(bare, reckon(bare), "pullover")
    value = found.value + cost
    solved = replace(found.solved, value=value, bound=value + bound, pool=())
    return Told(found.share, found.problem, solved, done)


def set_running(store: Store, running: Stand) -> None:
    with store.reading() as session:
        assign_search._running[assign_search.place(session), "pullover"] = running


def looked(client: TestClient, store: Store, ended: bool = True, **other: float) -> str:
    filled(client)
    with store.reading() as session:
        found = told(session, **other)
    set_running(store, Stand(found, ended))
    return words(page(client, ASSIGN))


def test_a_better_division_is_offered_and_nothing_is_moved(
    client: TestClient, store: Store
) -> None:
    filled(client)
    before = book_of(store).promises
    said = looked(client, store)
    assert "A better division was found:" in said
    assert {one.holding_id for one in before} == {one.holding_id for one in book_of(store).promises}


def test_taken_it_is_in_place_and_can_be_undone(client: TestClient, store: Store) -> None:
    looked(client, store)
    before = book_of(store).promises
    answer = client.post(f"{ASSIGN}/take")
    assert "The better division is in place, as a proposal." in words(answer.text)
    assert {one.state for one in book_of(store).promises} == {"kept", "proposed"}
    undo = answer.text.split('action="/undo/')[1].split('"')[0]
    client.post(f"/undo/{undo}")
    assert book_of(store).promises == before


def test_found_for_another_shelf_it_is_not_taken(client: TestClient, store: Store) -> None:
    looked(client, store)
    with store.writing() as session:
        body = load_book(session).part["body"]
        put(session, replace(body, shape=Metres(300_000)))
    before = book_of(store)
    assert client.post(f"{ASSIGN}/take").status_code == 409
    assert book_of(store) == before


def test_nothing_found_nothing_to_take(client: TestClient, store: Store) -> None:
    assert client.post(f"{ASSIGN}/take").status_code == 409
    said = looked(client, store, cost=0.0, bound=-3.0)
    assert "Nothing better was found." in said
    assert client.post(f"{ASSIGN}/take").status_code == 409


def test_proof_found_later_is_told(client: TestClient, store: Store) -> None:
    assert "It is proven that nothing costs less." in looked(client, store, cost=0.0, bound=0.0)


def test_how_far_it_may_be_from_the_best(client: TestClient, store: Store) -> None:
    filled(client)
    with store.reading() as session:
        kept = kept_proposal(session, load_book(session), "pullover")
        found = replace(kept.proposal.solved, bound=kept.proposal.value - 2)
        proposal = replace(kept.proposal, solved=found)
        remember_proposal(session, "pullover", proposal, ())
    said = words(page(client, ASSIGN))
    assert "At most so much from the best as 2 changes of skein would cost" in said
    assert "Look for a better one" in said


def test_while_it_looks_the_page_asks_again_by_itself(client: TestClient, store: Store) -> None:
    said = looked(client, store, ended=False, cost=0.0, bound=-3.0, done=False)
    assert "of at most 200 branches followed" in said
    part = client.get(ASSIGN, headers=SWAP).text
    assert 'hx-trigger="every 2s, click"' in part
    assert f'<a href="{ASSIGN}"' in part, "a link for a browser without scripts"
    assert "<h1" not in part


def test_before_it_has_told_anything(client: TestClient, store: Store) -> None:
    set_running(store, Stand(None, ended=False))
    assert "The first division is being worked out." in words(page(client, ASSIGN))


def test_stopped_before_it_had_told_anything(client: TestClient, store: Store) -> None:
    set_running(store, Stand(None, ended=False))
    client.post(f"{ASSIGN}/stop")
    assert "It was stopped." in words(page(client, ASSIGN))


def test_a_plan_too_large_to_wait_for_is_divided_beside_the_program(
    client: TestClient, store: Store, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(assign_search, "AT_ONCE", 2)
    answer = client.post(f"{PULLOVER}/fill")
    assert answer.url.path == ASSIGN
    assert [one.id for one in book_of(store).promises] == ["G-1 promised"]
    for _ in range(200):
        said = words(page(client, ASSIGN))
        if "A division is ready" in said:
            break
        time.sleep(0.1)
    assert "A division is ready" in said
    client.post(f"{ASSIGN}/take")
    assert {one.state for one in book_of(store).promises} == {"kept", "proposed"}


def test_up_to_so_many_pairs_she_waits(store: Store, monkeypatch: pytest.MonkeyPatch) -> None:
    with store.reading() as session:
        monkeypatch.setattr(assign_search, "AT_ONCE", 14)
        assert not assign_search.too_long_to_wait(session, "pullover")
        monkeypatch.setattr(assign_search, "AT_ONCE", 13)
        assert assign_search.too_long_to_wait(session, "pullover")


def test_a_garment_that_is_not_there(client: TestClient) -> None:
    for address in ("", "/look", "/stop", "/take"):
        url = f"/garments/mittens/assign{address}"
        answer = client.post(url) if address else client.get(url)
        assert answer.status_code == 404


def test_a_finished_garment_wants_no_more(client: TestClient, store: Store) -> None:
    with store.writing() as session:
        put(session, replace(load_book(session).plan["pullover"], state="finished"))
    assert client.get(ASSIGN).status_code == 409
