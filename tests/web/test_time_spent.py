import re

import pytest
from starlette.testclient import TestClient

from app import paths
from app.book.exchange import loads
from app.store.engine import Store
from app.store.fill import fill
from tests.books import a_book, a_yarn
from tests.web.forms import shown_values
from tests.web.garden import book_of, page, words

URL = "/work-list/time"


def noted(client: TestClient, **typed: str):
    return client.post(URL, data=shown_values(page(client, URL), URL) | {"minutes": "90"} | typed)


def with_yarn(store: Store) -> None:
    with store.writing() as session:
        fill(session, a_book(a_yarn("grey", target_tex=450.0)))


def demo(store: Store) -> None:
    with store.writing() as session:
        fill(session, loads(paths.DEMO.read_text(encoding="utf-8")))


def test_an_empty_list_takes_no_time(client: TestClient):
    text = words(page(client, URL))
    assert "No garment waits for wool to be spun." in text
    assert "120 minutes, from the settings" in text


def test_time_is_noted_and_becomes_a_pace(client: TestClient, store: Store):
    with_yarn(store)
    text = words(noted(client, work="spin", length="330 m", yarn="grey", note="by the fire").text)
    assert "The time is noted." in text
    assert "90 min spinning, 330 m, grey, by the fire" in text
    (stint,) = book_of(store).stints
    assert (stint.work, stint.minutes, stint.mm) == ("spin", 90, 330_000)
    assert "Pace: spin" in page(client, "/settings/own-numbers")


def test_a_note_is_taken_out_again(client: TestClient, store: Store):
    with_yarn(store)
    html = noted(client, work="card", mass="100").text
    found = re.search(r'action="(/work-list/time/[^"]+/remove)"', html)
    assert found
    assert "The note is taken out." in client.post(found[1]).text
    assert book_of(store).stints == ()
    assert client.post(found[1]).status_code == 404


@pytest.mark.parametrize(
    ("typed", "fault"),
    [
        ({"minutes": ""}, "This is needed."),
        ({"minutes": "0"}, "or more"),
        ({"work": "weave"}, "Choose one of these."),
        ({"mass": "much"}, "much"),
        ({"day": "2199-01-01"}, "This day has not come yet"),
        ({"yarn": "none"}, "Choose one of these."),
    ],
)
def test_what_cannot_be_is_refused_and_kept(client, store, typed, fault):
    with_yarn(store)
    answer = noted(client, note="kept", **typed)
    assert answer.status_code == 422
    assert fault in answer.text
    assert 'value="kept"' in answer.text
    assert book_of(store).stints == ()


def test_the_demo_takes_evenings_in_an_order(client: TestClient, store: Store):
    demo(store)
    text = words(page(client, URL))
    assert re.search(r"About \d+ evenings:", text)
    assert "120 min an evening." in text
    assert "spinning Tansy three-ply" in text
    assert "could be knit by" in text
    assert "Pace: spin" in text
    assert "Hours and evenings" in page(client, "/work-list")


def test_an_evening_of_another_length(client: TestClient, store: Store):
    demo(store)
    settings = shown_values(page(client, "/settings"), "/settings")
    client.post("/settings", data=settings | {"evening_minutes": "600"})
    text = words(page(client, URL))
    assert re.search(r"(About two|About 2|One|About \d) evenings?:", text)
    assert "600 min an evening" in text


def test_the_calendar_is_a_file(client: TestClient, store: Store):
    demo(store)
    answer = client.get("/work-list/time.ics")
    assert answer.headers["content-type"] == "text/calendar; charset=utf-8"
    assert answer.text.startswith("BEGIN:VCALENDAR")
    assert answer.text.count("BEGIN:VEVENT") >= 2
