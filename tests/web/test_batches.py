"""Lots of wool are blended, a skein is dyed, as a maker does it on a page."""

import re
from dataclasses import replace

import pytest
from starlette.testclient import TestClient

from app.book.book import Book
from app.book.checks import check
from app.book.event import Line
from app.book.holding import Holding
from app.book.spinning import FibreShare
from app.book.yarn import Yarn
from app.store.engine import Store
from app.store.fill import fill
from app.store.records import get, load_book, post, put
from tests.books import DAY, a_book, a_fleece, a_holding, a_skein, a_yarn
from tests.web.forms import shown_values
from tests.web.garden import page, words


@pytest.fixture
def lots(store: Store) -> Store:
    """300 g of Bramble, carded; 200 g of a bought alpaca top; an empty bag; a skein."""
    book = a_book(
        a_fleece(breed="Cheviot", colour="#c8b79a"),
        a_fleece("top", name="Bought top", fibre="alpaca"),
        a_fleece("bag", name="Empty bag"),
        a_holding("F", fleece_id="Bramble", state="carded", code="F-1", place="loft"),
        a_holding("T", fleece_id="top", state="combed", code="F-2"),
        a_holding("E", fleece_id="bag", state="raw"),
        a_yarn(),
        a_skein("S-1"),
    )
    with store.writing() as session:
        fill(session, book)
        for id, g, mm in (("F", 300, 0), ("T", 200, 0), ("S-1", 96, 213_000)):
            lines = [Line(id, 1000 * g, mm), Line("come in", -1000 * g)]
            post(session, "arrive", DAY, lines)
    return store


def book_now(store: Store) -> Book:
    with store.reading() as session:
        return load_book(session)


def blended(client: TestClient, **typed: str):
    form = shown_values(page(client, "/fleeces/blend?wool=T"), "/fleeces/blend")
    same = {"taken_F": "150", "taken_T": "50", "weight": "195", "name": "Heather", "passes": "2"}
    return client.post("/fleeces/blend", data=form | same | typed)


@pytest.mark.usefixtures("lots")
def test_the_form_has_a_field_for_each_lot_that_holds_something(client):
    html = page(client, "/fleeces/blend?wool=T")
    assert html.index('name="taken_T"') < html.index('name="taken_F"')
    assert "taken_E" not in html
    assert "the book has 300 g, in loft" in words(html)


def test_a_blend_is_a_lot_of_its_own_with_the_shares_of_what_went_in(client, lots):
    said = words(blended(client).text)
    assert "Heather is on the shelf: 195 g, 75 % wool, 25 % alpaca. 5 g went on the way." in said
    now = book_now(lots)
    fleece = next(one for one in now.fleeces if one.name == "Heather")
    assert fleece.blend == (FibreShare("wool", 75), FibreShare("alpaca", 25))
    assert (fleece.fibre, fleece.breed) == ("wool and alpaca", "")
    event = now.events[-1]
    assert (event.kind, event.step, event.passes) == ("prepare", "blend", 2)
    moved = {line.holding_id: line.mg for line in event.lines}
    holding = next(one for one in now.holdings if one.code == "Heather")
    assert moved == {"F": -150_000, "T": -50_000, holding.id: 195_000, "waste": 5_000}
    assert check(now) == []
    assert "75 % Bramble and 25 % Bought top" in words(page(client, f"/wool-book/{holding.id}"))


def test_a_blend_lies_apart_as_what_went_in_and_nothing_wet_is_offered(client, lots):
    with lots.writing() as session:
        top = get(session, Holding, "T")
        assert top
        put(session, replace(top, apart=True, look_again=DAY))
        put(session, a_holding("wet", "fibre", fleece_id="Bramble", state="drying"))
        post(session, "arrive", DAY, [Line("wet", 90_000), Line("come in", -90_000)])
    assert "taken_wet" not in page(client, "/fleeces/blend")
    blended(client)
    (holding,) = (one for one in book_now(lots).holdings if one.code == "Heather")
    assert (holding.apart, holding.look_again) == (True, DAY)


def test_a_blend_can_be_taken_back(client, lots):
    blended(client)
    seq = book_now(lots).events[-1].seq
    client.post(f"/undo/{seq}", data={"back": "/fleeces"})
    now = book_now(lots)
    assert now.balances["F"].mg == 300_000
    assert next(one for one in now.holdings if one.code == "Heather").put_away


@pytest.mark.usefixtures("lots")
def test_a_blend_that_took_up_water_is_said(client):
    said = words(blended(client, weight="203").text)
    assert "It weighs 3 g more than went in." in said


def test_a_blend_of_a_blend_carries_its_shares_on(client, lots):
    form = {"taken_F": "100", "taken_T": "100", "name": "Half", "weight": "200"}
    assert blended(client, **form).status_code == 200
    again = shown_values(page(client, "/fleeces/blend"), "/fleeces/blend")
    (heather,) = (one.id for one in book_now(lots).holdings if one.code == "Half")
    two = {"taken_F": "100", f"taken_{heather}": "100", "name": "Quarter", "weight": "200"}
    client.post("/fleeces/blend", data=again | two)
    fleece = next(one for one in book_now(lots).fleeces if one.name == "Quarter")
    assert fleece.blend == (FibreShare("wool", 75), FibreShare("alpaca", 25))


@pytest.mark.parametrize(
    ("typed", "field", "said"),
    [
        ({"taken_T": ""}, "taken_", "Fill in two lots or more."),
        ({"taken_T": "0"}, "taken_", "Fill in two lots or more."),
        ({"taken_F": "301"}, "taken_F", "The book has 300"),
        ({"weight": ""}, "weight", "needed"),
        ({"weight": "250"}, "sure", "250 g came of 200 g."),
        ({"name": ""}, "name", "needed"),
        ({"name": "F-1"}, "name", "Something else is called F-1 already."),
        ({"passes": "100"}, "passes", "or less"),
        ({"state": "felted"}, "state", "Choose one"),
    ],
)
def test_what_is_wrong_stands_beside_its_field(client, lots, typed, field, said):
    answer = blended(client, **typed)
    assert answer.status_code == 422
    found = re.search(rf'id="e-{field}[^"]*">([^<]*)<', answer.text)
    assert found
    assert said in words(found[1])
    assert len(book_now(lots).fleeces) == 3


@pytest.mark.usefixtures("lots")
def test_what_was_asked_about_is_kept_once_it_is_ticked(client):
    assert blended(client, weight="250", sure="1").status_code == 200


def test_one_lot_is_not_enough(client):
    assert "It takes two lots of wool" in words(page(client, "/fleeces/blend"))
    answer = client.post("/fleeces/blend", data={"name": "x", "weight": "1", "state": "raw"})
    assert answer.status_code == 422


# Dyeing


def dyed(client: TestClient, **typed: str):
    form = shown_values(page(client, "/skeins/S-1/dye"), "/skeins/S-1/dye")
    return client.post("/skeins/S-1/dye", data=form | {"colour_name": "madder red"} | typed)


def test_a_dyed_skein_has_another_colour_and_its_weight_goes_to_the_book(client, lots):
    answer = dyed(client, mass="94", colour="#a03020", colour_known="1", dye_lot="pot 2")
    assert "S-1 is dyed madder red." in words(answer.text)
    now = book_now(lots)
    skein, event = now.holding["S-1"], now.events[-1]
    assert (skein.colour, skein.colour_name, skein.dye_lot) == ("#a03020", "madder red", "pot 2")
    assert (event.kind, event.step) == ("prepare", "dye")
    assert (now.balances["S-1"].mg, now.balances["S-1"].mm) == (94_000, 213_000)
    assert now.balances["waste"].mg == 2_000
    assert "dyed" in words(page(client, "/wool-book"))


def test_a_skein_dyed_without_a_weight_stands_in_the_book_as_well(client, lots):
    dyed(client, colour_name="", colour="#a03020", colour_known="1")
    now = book_now(lots)
    assert (now.events[-1].step, now.balances["S-1"].mg) == ("dye", 96_000)
    assert check(now) == []
    seq = now.events[-1].seq
    assert client.post(f"/undo/{seq}", data={"back": "/"}).status_code == 200


@pytest.mark.usefixtures("lots")
@pytest.mark.parametrize(
    ("typed", "field"),
    [({"colour_name": ""}, "colour_name"), ({"mass": "0"}, "mass"), ({"day": "soon"}, "day")],
)
def test_a_dyeing_with_a_fault_is_kept_as_typed(client, typed, field):
    answer = dyed(client, **typed)
    assert answer.status_code == 422
    assert f'id="e-{field}"' in answer.text


def test_a_stale_dyeing_is_refused(client, lots):
    form = shown_values(page(client, "/skeins/S-1/dye"), "/skeins/S-1/dye")
    dyed(client)
    answer = client.post("/skeins/S-1/dye", data=form | {"colour_name": "blue"})
    assert answer.status_code == 409
    assert client.get("/skeins/F/dye").status_code == 404
    assert isinstance(book_now(lots).yarns[0], Yarn)
