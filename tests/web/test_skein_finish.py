"""A skein is finished on one short form: shelf, book, garment and work list follow."""

import re
from datetime import date

import pytest
from starlette.testclient import TestClient

from app.book.book import Book
from app.book.event import Line
from app.store.engine import Store
from app.store.fill import fill
from app.store.records import load_book, post, put
from tests.books import DAY, a_fleece, a_holding, a_yarn
from tests.web.forms import shown_values
from tests.web.garden import page, words
from tests.work.shelf import a_shelf

pytestmark = pytest.mark.usefixtures("shelf")


@pytest.fixture
def shelf(store: Store) -> Store:
    """The shelf of shelf.py, its yarn spun from 2 kg of carded Bramble."""
    wool = a_holding("F", fleece_id="Bramble", state="carded")
    with store.writing() as session:
        fill(session, a_shelf(a_fleece(), wool))
        put(session, a_yarn(fleece_id="Bramble"))
        post(session, "arrive", DAY, (Line("F", 2_000_000), Line("come in", -2_000_000)))
    return store


def book(store: Store) -> Book:
    with store.reading() as session:
        return load_book(session)


def short_m(client: TestClient) -> float:
    found = re.search(r"Short by ([\d\u2009 ]+) m", words(page(client, "/garments/pullover")))
    return float(re.sub(r"\D", "", found[1])) if found else 0.0


def finish(client: TestClient, **typed: str):
    query = "?yarn=grey two-ply&fleece=Bramble&plan=pullover"
    form = shown_values(page(client, f"/skeins/finish{query}"), "/skeins/finish")
    same = {"girth": "1.5", "turns_before": "200", "turns": "184", "mass": "124"}
    return client.post("/skeins/finish", data=form | same | typed)


def test_the_work_list_leads_to_the_form_with_all_it_knows(client):
    html = page(client, "/work-list")
    found = re.search(r'href="(/skeins/finish[^"]*)"', html)
    assert found
    form = shown_values(page(client, found[1].replace("&amp;", "&")), "/skeins/finish")
    assert (form["yarn"], form["plan"]) == ("grey two-ply", "pullover")


def test_a_finished_skein_is_on_the_shelf_in_the_book_and_promised(client, shelf):
    was = short_m(client)
    answer = finish(client)
    assert answer.url.path == "/garments/pullover"
    said = words(answer.text)
    assert "G-3 is finished: 276 m, 124 g. It lost 8 % of its length in finishing." in said
    assert "Promised to pullover:" in said
    now = book(shelf)
    skein = next(one for one in now.holdings if one.code == "G-3")
    assert (now.balances[skein.id].mg, now.balances[skein.id].mm) == (124_000, 276_000)
    event = now.events[-1]
    assert (event.kind, event.step) == ("spin", "spin")
    lengths = [
        (one.finished, one.value) for one in now.readings_of[skein.id] if one.kind == "length"
    ]
    assert sorted(lengths) == [(False, 300_000), (True, 276_000)]
    promised = sum(one.mm for one in now.promises if one.holding_id == skein.id)
    assert 0 < promised <= 276_000
    assert short_m(client) == pytest.approx(was - 276, abs=8)


def test_one_undo_takes_all_of_it_back(client, shelf):
    was, before = short_m(client), book(shelf)
    html = finish(client).text
    undo = re.search(r'action="(/undo/change/[^"]+)"', html)
    assert undo
    client.post(undo[1], data={"back": "/"})
    now = book(shelf)
    assert short_m(client) == was
    assert now.promises == before.promises
    assert now.balances["F"] == before.balances["F"]


def test_a_plan_short_of_the_yarn_is_offered_by_itself(client):
    form = shown_values(page(client, "/skeins/finish?yarn=grey two-ply"), "/skeins/finish")
    assert form["plan"] == "pullover"
    assert shown_values(page(client, "/skeins/finish"), "/skeins/finish")["plan"] == ""
    assert (
        shown_values(page(client, "/skeins/finish?yarn=no&plan=no"), "/skeins/finish")["plan"] == ""
    )


def test_a_skein_may_be_for_nothing_in_particular(client, shelf):
    answer = finish(client, plan="")
    assert answer.url.path.startswith("/skeins/")
    assert all(one.holding_id != answer.url.path.split("/")[-1] for one in book(shelf).promises)


def test_a_yarn_the_garment_does_not_want_is_not_promised(client, shelf):
    finish(client, yarn="white single")
    assert len(book(shelf).promises) == 1


def test_a_skein_reeled_once_tells_no_shrinkage(client):
    said = words(finish(client, turns_before="").text)
    assert "G-3 is finished: 276 m, 124 g. Promised" in said


@pytest.mark.parametrize(
    ("typed", "field", "said"),
    [
        ({"turns": ""}, "turns", "once it was washed and dried"),
        ({"mass": ""}, "mass", "how much it weighs"),
        ({"mass": "1.2"}, "sure", "no yarn is so thin"),
        ({"turns": "210"}, "sure", "It is longer than before the wash."),
        ({"turns": "90"}, "sure", "It lost 55"),
        ({"code": "G-1"}, "code", "already in use"),
        ({"mass": "3000", "turns": "1800", "turns_before": "2000"}, "fleece", "holds"),
        ({"plan": "nobody"}, "plan", "Choose one of these."),
    ],
)  # fmt: skip
def test_what_is_wrong_stands_beside_its_field(client, shelf, typed, field, said):
    before = len(book(shelf).events)
    answer = finish(client, **typed)
    assert answer.status_code == 422
    found = re.search(rf'id="e-{field}">([^<]*)<', answer.text)
    assert found, answer.text
    assert said in found[1]
    assert len(book(shelf).events) == before


def test_what_was_asked_about_is_kept_once_it_is_ticked(client):
    answer = finish(client, turns="210", sure="1")
    assert "It gained 5 % of its length" in words(answer.text)


# A skein that was reeled before the wash, and is on the shelf


@pytest.fixture
def unwashed(client) -> str:
    """The address of 300 m, 130 g that were only reeled before the wash."""
    form = shown_values(page(client, "/skeins/new?yarn=grey two-ply"), "/skeins/new")
    typed = {"girth": "1.5", "turns_before": "200", "mass": "130", "fleece": ""}
    answer = client.post("/skeins/new", data=form | typed)
    return str(answer.url.path)


def washed(client: TestClient, address: str, **typed: str):
    form = shown_values(page(client, f"{address}/finish"), f"{address}/finish")
    return client.post(f"{address}/finish", data=form | {"girth": "1.5"} | typed)


def test_a_skein_on_the_shelf_is_measured_once_it_is_washed(client, shelf, unwashed):
    assert f'href="{unwashed}/finish"' in page(client, unwashed)
    said = words(washed(client, unwashed, turns="180", mass="124").text)
    assert "is finished: 270 m, 124 g. It lost 10 % of its length in finishing." in said
    now = book(shelf)
    event = now.events[-1]
    assert (event.kind, event.step) == ("prepare", "finish")
    assert {line.holding_id: line.mg for line in event.lines}["waste"] == 6_000
    assert "Not finished yet" not in page(client, unwashed)


def test_without_a_weight_the_grams_stay(client, shelf, unwashed):
    washed(client, unwashed, turns="180", plan="")
    now = book(shelf)
    skein = now.balances[unwashed.split("/")[-1]]
    assert (skein.mg, skein.mm) == (130_000, 270_000)


def test_a_skein_that_is_not_washed_yet_is_not_finished(client, unwashed):
    for typed in ({}, {"turns": "330"}, {"turns": "x"}, {"turns": "180", "mass": "1"}):
        answer = washed(client, unwashed, **typed)
        assert answer.status_code == 422


def test_a_stale_form_finishes_nothing(client, shelf, unwashed):
    form = shown_values(page(client, f"{unwashed}/finish"), f"{unwashed}/finish")
    with shelf.writing() as session:
        skein = load_book(session).holding[unwashed.split("/")[-1]]
        put(session, type(skein)(**{**_fields(skein), "place": "attic"}))
    answer = client.post(f"{unwashed}/finish", data=form | {"turns": "180"})
    assert answer.status_code == 409


def _fields(record) -> dict[str, object]:
    return {name: getattr(record, name) for name in record.__slots__}


def test_the_day_of_finishing_has_come(client, unwashed):
    answer = washed(client, unwashed, turns="180", day=date(2199, 1, 1).isoformat())
    assert 'id="e-day"' in answer.text


def test_what_is_no_skein_cannot_be_finished(client):
    assert client.get("/skeins/F/finish").status_code == 404
    assert client.post("/skeins/F/finish", data={}).status_code == 404
