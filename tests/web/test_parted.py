"""A part of a drawn garment is changed: what was drawn to meet it is named, and drawn to match."""

from dataclasses import replace

import pytest
from starlette.testclient import TestClient

from app.book.design import Design
from app.book.gauge import Gauge
from app.book.person import Measure
from app.book.plan import Plan
from app.book.shape import Runs
from app.planning.design import parts_from
from app.store.engine import Store
from app.store.fill import fill
from app.store.records import put
from tests.books import a_book, a_yarn
from tests.web.forms import shown_values
from tests.web.garden import book_of, page, words

SAID = "The front bands were drawn to meet the body, which has 20 rows more now."


@pytest.fixture
def plan(store: Store) -> Plan:
    """A round-yoke cardigan as it was drawn."""
    design = Design("cardigan, round yoke", (Measure("chest", 960),))
    plan = Plan("cardigan", "Cardigan", gauge=Gauge(22.0, 30.0), design=design)
    with store.writing() as session:
        fill(session, a_book(a_yarn(), plan, *parts_from(plan, plan.gauge)))
    return plan


def lengthen(store: Store) -> None:
    part = next(one for one in book_of(store).parts if one.name == "body")
    (run,) = part.shape.runs
    longer = replace(part, shape=Runs((replace(run, rows=run.rows + 20),)))
    with store.writing() as session:
        put(session, longer)


@pytest.mark.usefixtures("plan")
def test_a_longer_body_says_that_its_bands_are_too_short(client: TestClient, store: Store) -> None:
    assert "drawn to meet" not in words(page(client, "/garments/cardigan"))
    lengthen(store)
    shown = page(client, "/garments/cardigan")
    assert SAID in words(shown)
    assert "Draw the front bands to match: 150 stitches" in words(shown)
    action = "/garments/cardigan/parts/cardigan-front-bands/match"
    answer = client.post(action, data=shown_values(shown, action))
    assert "drawn to match." in words(answer.text)
    band = next(one for one in book_of(store).parts if one.name == "front bands")
    assert band.shape.runs[0].stitches == 150
    assert "drawn to meet" not in words(answer.text)


@pytest.mark.usefixtures("plan")
def test_it_is_said_when_the_body_is_saved(client: TestClient) -> None:
    url = "/garments/cardigan/parts/cardigan-body/change"
    form = shown_values(page(client, url), url)
    counted = {"way": "counted", "counted_stitches": "222", "counted_rows": "110"}
    answer = client.post(url, data={**form, **counted})
    assert SAID in words(answer.text)


@pytest.mark.usefixtures("plan")
def test_what_meets_is_not_drawn_again(client: TestClient, store: Store) -> None:
    lengthen(store)
    shown = page(client, "/garments/cardigan")
    action = "/garments/cardigan/parts/cardigan-front-bands/match"
    first = shown_values(shown, action)
    client.post(action, data=first)
    again = client.post(action, data=first)
    assert again.status_code == 409


def test_nothing_is_off_where_nothing_was_changed(
    client: TestClient, store: Store, plan: Plan
) -> None:
    lengthen(store)
    stamp = shown_values(
        page(client, "/garments/cardigan"), "/garments/cardigan/parts/cardigan-front-bands/match"
    )["stamp"]
    with store.writing() as session:
        for part in parts_from(plan, plan.gauge):
            put(session, part)
    answer = client.post(
        "/garments/cardigan/parts/cardigan-front-bands/match", data={"stamp": stamp}
    )
    assert "is as it was" in words(answer.text)
