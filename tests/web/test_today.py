"""Today: the empty start, and what wants looking at."""

import re

from starlette.testclient import TestClient

from app.book.event import Line
from app.store.engine import Store
from app.store.fill import fill
from app.store.records import post, put
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
    with store.writing() as session:
        fill(session, a_shelf(a_fleece(), drying, an_errand()))
    html = page(client, "/")
    said = words(html)
    assert "Short of yarn: pullover and hat. No garment is covered yet." in said
    assert "Short of wool pullover intended Short by" in said
    assert "Being knit" not in said
    assert "Bramble : dry when two weighings agree." in said
    assert 'href="/fleeces/Bramble/weigh?wool=F-1"' in html
    assert "buy soap" in said


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
