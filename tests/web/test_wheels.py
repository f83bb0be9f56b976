import pytest
from starlette.testclient import TestClient

from app.book.wheel import Ratio
from app.store.engine import Store
from tests.web.forms import shown_values
from tests.web.garden import book_of, words

NEW = "/settings/wheels/new"


def filled(client: TestClient, **typed: str) -> dict[str, str]:
    return shown_values(client.get(NEW).text, NEW) | {"name": "Upright"} | typed


def test_a_wheel_is_written_down_with_its_ratios(client: TestClient, store: Store):
    assert "No wheel is written down yet." in client.get("/settings/wheels").text
    typed = filled(client, ratios="14:1; 8 to 1; 10.5", bobbin="110 g")
    page = words(client.post(NEW, data=typed).text)
    assert "Upright : a wheel, 8 : 1, 10.5 : 1, 14 : 1, a bobbin holds 110 g" in page
    (wheel,) = book_of(store).wheels
    assert wheel.ratios == (Ratio(8.0), Ratio(10.5), Ratio(14.0))
    assert (wheel.bobbin_mg, wheel.kind) == (110_000, "wheel")


def test_a_form_sent_back_unchanged_changes_nothing(client: TestClient, store: Store):
    client.post(NEW, data=filled(client, ratios="8, 14.5", kind="spindle", notes="light"))
    (wheel,) = book_of(store).wheels
    url = f"/settings/wheels/{wheel.id}/change"
    client.post(url, data=shown_values(client.get(url).text, url))
    assert book_of(store).wheels == (wheel,)
    assert wheel.ratios == (Ratio(8.0), Ratio(14.5))


def test_one_put_away_is_listed_apart_and_can_come_back(client: TestClient, store: Store):
    client.post(NEW, data=filled(client))
    (wheel,) = book_of(store).wheels
    url = f"/settings/wheels/{wheel.id}/change"
    form = shown_values(client.get(url).text, url)
    page = client.post(url, data=form | {"put_away": "1"}).text
    assert "Put away" in page
    form = shown_values(client.get(url).text, url)
    assert form["put_away"] == "1"
    del form["put_away"]
    client.post(url, data=form)
    assert book_of(store).wheels == (wheel,)


@pytest.mark.parametrize(
    ("typed", "fault"),
    [
        ({"name": " "}, "This is needed."),
        ({"ratios": "eight"}, "Give numbers with a semicolon"),
        ({"ratios": "800"}, "A ratio lies between"),
        ({"bobbin": "0"}, "This must be 1"),
        ({"kind": "loom"}, "Choose one of these."),
    ],
)
def test_what_cannot_be_is_refused_and_kept(client, store, typed, fault):
    answer = client.post(NEW, data=filled(client, ratios="8") | typed)
    assert answer.status_code == 422
    assert fault in answer.text
    assert book_of(store).wheels == ()


def test_a_name_is_used_once(client: TestClient):
    client.post(NEW, data=filled(client))
    answer = client.post(NEW, data=filled(client, name="UPRIGHT"))
    assert answer.status_code == 422
    assert "already one called UPRIGHT" in answer.text


def test_a_change_meanwhile_is_not_overwritten(client: TestClient, store: Store):
    client.post(NEW, data=filled(client))
    (wheel,) = book_of(store).wheels
    url = f"/settings/wheels/{wheel.id}/change"
    form = shown_values(client.get(url).text, url)
    client.post(url, data=form | {"notes": "oiled"})
    assert client.post(url, data=form | {"notes": "squeaks"}).status_code == 409
    assert client.get("/settings/wheels/none/change").status_code == 404


def test_a_decimal_comma_parts_no_ratios(client: TestClient, store: Store):
    settings = shown_values(client.get("/settings").text, "/settings")
    client.post("/settings", data=settings | {"decimal": ",", "girth_mm": "150"})
    client.post(NEW, data=filled(client, ratios="8; 10,5"))
    assert book_of(store).wheels[0].ratios == (Ratio(8.0), Ratio(10.5))
