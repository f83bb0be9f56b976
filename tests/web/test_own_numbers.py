import re
from html import unescape

from starlette.testclient import TestClient

from app.book.shape import Stated
from app.store.engine import Store
from app.store.fill import fill
from tests.books import a_part, a_pattern
from tests.planning.knitting.test_drift import EVEN
from tests.planning.knitting.test_drift import book_of as book_of_balls
from tests.planning.learning.test_garments_seen import NEXT, old, sleeved
from tests.planning.learning.test_garments_seen import book_of as book_of_garments
from tests.planning.learning.test_learnt import washed
from tests.web.garden import book_of, page, words

PAGE = "/settings/own-numbers"


def filled(store: Store, *yields: float) -> None:
    with store.writing() as session:
        fill(session, washed(*yields).book())


def key_of(html: str, button: str) -> str:
    found = re.search(rf'name="key" value="([^"]*)">\s*<input[^>]*>\s*<button[^>]*>{button}', html)
    assert found
    return unescape(found[1])


def test_an_empty_book_has_learned_nothing(client: TestClient):
    text = words(page(client, PAGE))
    assert "Nothing is learned yet." in text
    assert "Weigh a fleece before and after each step" in text


def test_before_and_now_stand_side_by_side(client: TestClient, store: Store):
    filled(store, 540, 500, 520)
    text = words(page(client, PAGE))
    assert "Learned from three measurements of your own." in text
    assert "Yield, scoured from skirted: any other Cheviot 47.4 to 63.9 %" in text
    assert "Yield, scoured from skirted: ewe 1 47.4 to 63.9 %" in text
    assert "what you measured" in text


def test_one_set_aside_is_named_and_let_in(client: TestClient, store: Store):
    filled(store, 540, 500, 520, 40)
    html = page(client, PAGE)
    assert "ewe 3, skirted to scoured is set aside: too far off." in words(html)
    form = {"key": key_of(html, "Let it in"), "verdict": "let in"}
    html = client.post(f"{PAGE}/mark", data=form).text
    assert "Let in: ewe 3, skirted to scoured." in words(html)
    assert "set aside: too far off" not in words(html)
    assert [one.verdict for one in book_of(store).marks] == ["let in"]
    form = {"key": key_of(html, "Set it aside again"), "verdict": ""}
    assert "is set aside" in words(client.post(f"{PAGE}/mark", data=form).text)
    assert book_of(store).marks == ()


def test_one_is_struck_out_and_counted_again(client: TestClient, store: Store):
    filled(store, 540, 500)
    key = key_of(page(client, PAGE), "Strike it out")
    html = client.post(f"{PAGE}/mark", data={"key": key, "verdict": "struck out"}).text
    assert "Struck out by you" in html
    assert "Learned from one measurement of your own." in words(html)
    assert "Count it again" in html
    html = client.post(f"{PAGE}/mark", data={"key": key, "verdict": ""}).text
    assert "Learned from two measurements" in words(html)
    assert client.post(f"{PAGE}/mark", data={"key": key, "verdict": ""}).status_code == 200


def test_a_measurement_nobody_made_is_missing(client: TestClient):
    assert client.post(f"{PAGE}/mark", data={"key": "step 99"}).status_code == 404


def test_what_finished_garments_changed_is_shown_plan_by_plan(client: TestClient, store: Store):
    with store.writing() as session:
        fill(session, book_of_garments(sleeved(), NEXT))
    said = words(page(client, PAGE))
    assert "Yarn taken, against planned by a gauge 0.84 to 1.19 of what was planned" in said
    assert re.search(r"What your garments changed .* next 430 to 560.m 470 to 565.m", said)
    assert "Yarn of a part beside the rest: sleeve" in said
    assert re.search(r"old, yarn taken against planned, 1 January 2026", said)
    assert "× 1.1" in said


def test_a_source_of_stated_amounts_has_its_own_number(client: TestClient, store: Store):
    pattern = a_pattern(source="a printed leaflet, 1998")
    shawl = a_part("shawl", "old", shape=Stated(600_000))
    with store.writing() as session:
        fill(session, book_of_garments(pattern, old(part=shawl, pattern_id=pattern.id)))
    said = words(page(client, PAGE))
    assert (
        "Yarn taken of a stated amount: a printed leaflet, 1998 0.68 to 1.02 of what is stated"
        in said
    )


def test_how_even_a_yarn_is(client: TestClient, store: Store):
    with store.writing() as session:
        fill(session, book_of_balls(EVEN, EVEN))
    said = words(page(client, PAGE))
    assert re.search(r"grey two-ply: its grist wanders by about 3.2.*, by two balls weighed", said)
