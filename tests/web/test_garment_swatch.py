"""A garment takes its gauge from a swatch, says so, and keeps the numbers it took."""

import pytest
from starlette.testclient import TestClient

from app.book.gauge import Gauge
from app.book.stamp import stamp
from app.book.swatch import Count, gauge_of
from app.store.engine import Store
from app.store.fill import fill
from app.store.records import put
from tests.books import a_book, a_part, a_plan, a_skein, a_swatch, a_yarn
from tests.web.forms import shown_values
from tests.web.garden import BLANK_PART, BLANK_PLAN, book_of, page, stamp_of, words

CHANGE = "/garments/pullover/change"
TAKEN = Gauge(22.0, 30.0, needle_mm=4.0, swatch_id="first try")
ANEW = Count(24.0, 100, 33.0, 100)


@pytest.fixture
def shelf(store: Store) -> Store:
    """Grey yarn, a swatch of it, and a pullover whose gauge was typed."""
    records = (a_yarn(), a_skein(), a_swatch(), a_plan(gauge=Gauge(20.0, 28.0)), a_part())
    with store.writing() as session:
        fill(session, a_book(*records, held={"G-1": (96, 96 / 0.45)}))
    return store


def keep(store: Store, *records: object) -> None:
    with store.writing() as session:
        for one in records:
            put(session, one)


def gauge(store: Store) -> Gauge | None:
    return book_of(store).plan["pullover"].gauge


def send(client: TestClient, **typed: str) -> int:
    form = shown_values(page(client, CHANGE), CHANGE)
    return client.post(CHANGE, data=form | typed).status_code


def test_a_new_plan_takes_the_gauge_of_a_swatch(client: TestClient, shelf: Store) -> None:
    answer = client.post("/garments/new", data=BLANK_PLAN | {"gauge_swatch": "first try"})
    assert answer.status_code == 200
    (plan,) = [one for one in book_of(shelf).plans if one.name == "Waistcoat"]
    assert plan.gauge == TAKEN


def test_the_swatchs_page_leads_to_a_plan_with_its_gauge_and_yarn(
    client: TestClient, shelf: Store
) -> None:
    assert 'href="/garments/new?swatch=first try"' in page(client, "/swatches/first try")
    form = shown_values(page(client, "/garments/new?swatch=first try"), "/garments/new")
    assert (form["gauge_swatch"], form["yarn_id"]) == ("first try", "grey two-ply")
    client.post("/garments/new", data=form | {"name": "Vest"})
    assert [one.gauge for one in book_of(shelf).plans if one.name == "Vest"] == [TAKEN]
    assert page(client, "/garments/new?swatch=none")


def test_a_swatch_takes_the_place_of_what_was_typed(client: TestClient, shelf: Store) -> None:
    assert send(client, gauge_swatch="first try") == 200
    assert gauge(shelf) == TAKEN
    assert send(client) == 200
    assert gauge(shelf) == TAKEN


def test_the_garment_says_where_its_gauge_is_from(client: TestClient, shelf: Store) -> None:
    keep(shelf, a_plan(gauge=TAKEN), a_part(gauge=Gauge(20.0, 28.0, washed=False)))
    html = page(client, "/garments/pullover")
    assert 'taken from the swatch <a href="/swatches/first try">first try</a>' in html
    assert "body: 20 × 28 in 10 cm, not washed yet." in words(html)
    keep(shelf, a_swatch(finished=ANEW))
    said = words(page(client, "/garments/pullover"))
    assert "22 × 30 in 10 cm, washed, taken from the swatch first try" in said
    assert "which by now says 24 × 33 in 10 cm, washed" in said


def test_a_part_takes_the_gauge_of_a_swatch(client: TestClient, shelf: Store) -> None:
    typed = {"gauge_swatch": "first try", "counted_stitches": "60", "counted_rows": "20"}
    client.post("/garments/pullover/parts/new", data=BLANK_PART | typed)
    assert [one.gauge for one in book_of(shelf).parts if one.name == "Collar"] == [TAKEN]
    assert "Collar" in words(page(client, "/swatches/first try"))


def test_numbers_changed_beside_a_swatch_are_a_contradiction(
    client: TestClient, shelf: Store
) -> None:
    form = shown_values(page(client, CHANGE), CHANGE)
    typed = form | {"gauge_swatch": "first try", "gauge_stitches": "21"}
    answer = client.post(CHANGE, data=typed)
    assert answer.status_code == 422
    assert "Choose no swatch to go by numbers of your own" in words(answer.text)
    assert 'value="21"' in answer.text
    assert gauge(shelf) == Gauge(20.0, 28.0)


def test_numbers_of_ones_own_instead_of_the_swatchs(client: TestClient, shelf: Store) -> None:
    keep(shelf, a_plan(gauge=TAKEN))
    assert send(client, gauge_swatch="", gauge_stitches="21") == 200
    assert gauge(shelf) == Gauge(21.0, 30.0, needle_mm=4.0)


def test_a_swatch_that_is_none(client: TestClient, shelf: Store) -> None:
    assert send(client, gauge_swatch="moth") == 422
    keep(shelf, a_swatch(finished=None))
    assert send(client, gauge_swatch="first try") == 422


def test_saving_the_plan_again_does_not_take_new_numbers(client: TestClient, shelf: Store) -> None:
    keep(shelf, a_plan(gauge=TAKEN), a_swatch(finished=ANEW))
    assert send(client, notes="still the same") == 200
    assert gauge(shelf) == TAKEN


def test_a_swatch_put_away_stays_with_the_plan_that_took_it(
    client: TestClient, shelf: Store
) -> None:
    keep(shelf, a_plan(gauge=TAKEN), a_swatch(put_away=a_swatch().day))
    assert send(client, notes="still the same") == 200
    assert gauge(shelf) == TAKEN
    assert "first try:" not in page(client, "/garments/new")


def test_the_new_numbers_are_offered_and_taken(client: TestClient, shelf: Store) -> None:
    keep(shelf, a_plan(gauge=TAKEN), a_part(gauge=TAKEN), a_swatch(finished=ANEW))
    said = words(page(client, "/swatches/first try"))
    assert "pullover all of it 22 × 30 in 10 cm; the swatch says something else by now" in said
    sent = {"stamp": stamp_of(shelf, "swatch", "first try"), "garment": "pullover"}
    said = words(client.post("/swatches/first try/take", data=sent).text)
    assert "pullover has the new numbers." in said
    book = book_of(shelf)
    assert gauge(shelf) == gauge_of(book.swatch["first try"])
    assert book.part["body"].gauge == gauge(shelf)
    assert client.post("/swatches/first try/take", data=sent).status_code == 409


def test_what_is_being_knit_keeps_the_numbers_it_was_cast_on_with(
    client: TestClient, shelf: Store
) -> None:
    keep(shelf, a_plan(gauge=TAKEN, state="being knit"), a_swatch(finished=ANEW))
    html = page(client, "/swatches/first try")
    assert "being knit: it keeps the numbers it was cast on with" in words(html)
    assert "/swatches/first try/take" not in html
    sent = {"stamp": stamp_of(shelf, "swatch", "first try"), "garment": "pullover"}
    assert client.post("/swatches/first try/take", data=sent).status_code == 409
    assert gauge(shelf) == TAKEN


def test_a_swatch_no_longer_counted_has_no_numbers_to_give(
    client: TestClient, shelf: Store
) -> None:
    keep(shelf, a_plan(gauge=TAKEN), a_swatch(finished=None))
    sent = {"stamp": stamp(a_swatch(finished=None)), "garment": "pullover"}
    assert client.post("/swatches/first try/take", data=sent).status_code == 409
    assert gauge(shelf) == TAKEN
    assert "which by now" not in page(client, "/garments/pullover")


def test_a_gauge_of_no_swatch_says_how_it_was_come_by(client: TestClient, shelf: Store) -> None:
    keep(shelf, a_plan(gauge=Gauge(20.0, 28.0, assumed_pct=15.0)))
    assert "20 × 28 in 10 cm, a guess." in words(page(client, "/garments/pullover"))
    keep(shelf, a_plan(gauge=None))
    assert "Knit to" not in words(page(client, "/garments/pullover"))
