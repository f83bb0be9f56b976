"""Today: the empty start, and what wants looking at."""

import re
from dataclasses import replace
from datetime import date, timedelta

from starlette.testclient import TestClient

from app.book.event import Line
from app.store.engine import Store
from app.store.fill import fill
from app.store.records import load_book, post, put
from tests.books import DAY, a_fleece, a_holding, a_person, a_plan, an_errand
from tests.web.garden import page, words
from tests.work.shelf import a_shelf


def test_an_empty_book_says_what_to_do_first_and_what_for(client: TestClient) -> None:
    html = page(client, "/")
    said = words(html)
    assert "Is this wool enough for that garment?" in said
    assert "to see how many metres it can become" in said
    for url in ("/fleeces/new", "/skeins/new", "/skeins/bought", "/garments/new"):
        assert f'href="{url}"' in html


def test_the_list_of_garments_of_an_empty_book(client: TestClient) -> None:
    said = words(page(client, "/garments"))
    assert "No garment waits for yarn." in said
    assert "Plan a garment to learn whether your wool reaches" in said


def test_what_is_short_being_knit_and_drying(client: TestClient, store: Store) -> None:
    drying = a_holding("F-1", fleece_id="Bramble", state="drying")
    old = a_holding("old bag", "fibre", look_again=date(2026, 1, 2), apart=True, place="attic")
    new = a_holding("new bag", fleece_id="Bramble", look_again=date(2199, 1, 2), apart=True)
    with store.writing() as session:
        fill(session, a_shelf(a_fleece(), drying, old, new, an_errand()))
        post(session, "arrive", DAY, (Line("F-1", 1_000_000), Line("come in", -1_000_000)))
    html = page(client, "/")
    said = words(html)
    assert "Short of yarn: pullover and hat. No garment is covered yet." in said
    assert "Short of wool pullover intended Short by" in said
    assert "Being knit" not in said
    assert "Bramble : Weigh it again tomorrow." in said
    assert "Dry, it will weigh about 500 to 1 000 g." in said.replace("\u2009", " ")
    assert 'href="/fleeces/Bramble/dry?wool=F-1"' in html
    apart = "kept apart until it was looked at"
    assert f"old bag : due, {apart}, in attic." in said
    assert f"Bramble : look again on 2 January 2199, {apart}." in said
    assert "buy soap" in said


def test_wool_that_was_looked_at_is_not_apart_any_more(client: TestClient, store: Store) -> None:
    with store.writing() as session:
        fill(session, a_shelf(a_holding("bag", "fibre", look_again=DAY, apart=True)))
    answer = client.post("/wool-book/bag/looked")
    assert "bag was looked at. Today asks again on" in answer.text
    assert "To be looked at for moth" not in words(answer.text)
    with store.reading() as session:
        bag = load_book(session).holding["bag"]
    assert bag.apart is False
    assert bag.look_again == date.today() + timedelta(days=90)
    assert client.post("/wool-book/nobody/looked").status_code == 404


def test_a_promise_the_shelf_no_longer_holds_is_named(client: TestClient, store: Store) -> None:
    with store.writing() as session:
        fill(session, a_shelf())
        lost = [Line("G-1", -60_000, -133_000), Line("weighing and moisture", 60_000)]
        post(session, "correct", DAY, lost)
    said = words(page(client, "/"))
    assert "Promised, but no longer there" in said
    assert "20 m of G-1 for pullover , body." in said


def test_what_a_persons_garments_lack_is_said_beside_the_person(
    client: TestClient, store: Store
) -> None:
    with store.writing() as session:
        fill(session, a_shelf(a_person()))
        put(session, a_plan(person_id="Ines"))
    said = words(page(client, "/settings/people"))
    assert "Ines : chest 96 cm pullover for Ines · intended Short by" in said
    assert not re.search(r"\bhat\b", said)


def test_a_garment_about_to_run_short_is_caught(client: TestClient, store: Store) -> None:
    """Cast on with one skein of four, and its fleece carded: early enough to spin."""
    carded = a_holding("F-1", fleece_id="Bramble", state="carded")
    with store.writing() as session:
        fill(session, a_shelf(a_fleece(), carded))
        post(session, "arrive", DAY, (Line("F-1", 2_000_000), Line("come in", -2_000_000)))
        book = load_book(session)
        yarn = book.yarn["grey two-ply"]
        put(session, replace(yarn, fleece_id="Bramble", target_tex=450.0))
        put(session, replace(book.plan["pullover"], state="being knit"))
    html = page(client, "/")
    told = words(html)
    assert "On the needles, and the yarn will not last pullover : grey two-ply surely lasts" in told
    assert "Begin " in told
    assert 'href="/garments/pullover/needles"' in html
    assert 'href="/garments/pullover/ways-out"' in html
