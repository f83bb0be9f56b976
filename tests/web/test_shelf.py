"""What the shelf covers: alone, in two orders side by side, the best set; an order kept, undone."""

import re
from html import unescape

import pytest
from starlette.testclient import TestClient

from app.book.settings import Settings
from app.planning.shelf_covers import STANDINGS, Covered
from app.planning.shelf_covers_best import VALUES, Best
from app.store.engine import Store
from app.store.fill import fill
from app.web.forms.shelf import read_shelf
from app.web.pages.shelf import TONES, VALUE_WORDS, stands_said
from app.web.pages.shelf import _how_good as how_good
from app.web.shown import Shown
from app.work.shelf_covers import AskedOfShelf, SoFar
from tests.books import a_book, a_part, a_person, a_plan, a_skein, a_yarn
from tests.web.garden import SWAP, book_of, page, undo_of, value_of, words

SHOWN = Shown(Settings())
OTHER = {"place_pullover": "2", "place_hat": "1"}


@pytest.fixture
def shelf(store: Store) -> None:
    """1000 m, and two garments of 520 m and more each."""
    parts = [a_part(), a_part("crown", "hat")]
    plans = [a_plan(), a_plan("hat", priority=2, sureness_pct=60.0), a_plan("idea", priority=3)]
    skeins = [a_yarn(), a_skein("G-1"), a_skein("G-2")]
    held = {"G-1": (225.0, 500.0), "G-2": (225.0, 500.0)}
    with store.writing() as session:
        fill(session, a_book(a_person(), *skeins, *plans, *parts, held=held))


@pytest.mark.usefixtures("shelf")
def test_each_alone_and_in_the_order_there_is(client: TestClient) -> None:
    assert 'href="/shelf"' in page(client, "/garments")
    said = words(page(client, "/shelf"))
    assert "One of three garments is covered." in said
    assert "add its parts, gauge or yarn" in said
    assert "No other set does better." in said


@pytest.mark.usefixtures("shelf")
def test_another_order_is_looked_at_and_touches_nothing(client: TestClient, store: Store) -> None:
    before = book_of(store)
    said = words(client.get("/shelf", params=OTHER).text)
    assert "in the other order" in said
    assert book_of(store) == before
    swapped = client.get("/shelf", params=OTHER, headers=SWAP).text
    assert "<html" not in swapped
    assert "Keep the other order" in words(swapped)


@pytest.mark.usefixtures("shelf")
def test_the_other_order_is_kept_and_undone(client: TestClient, store: Store) -> None:
    before = book_of(store)
    stamp = value_of(client.get("/shelf", params=OTHER).text, "stamp")
    html = client.post("/shelf/keep", data=OTHER | {"stamp": stamp}).text
    assert "The garments are served in this order now." in words(html)
    after = book_of(store)
    assert after.plan["hat"].priority == 1
    assert any(one.plan_id == "hat" for one in after.promises)
    client.post(undo_of(html), data={"back": "/shelf"})
    undone = book_of(store)
    assert (undone.plan, set(undone.promises)) == (before.plan, set(before.promises))


@pytest.mark.usefixtures("shelf")
def test_an_order_of_plans_that_changed_is_not_kept(client: TestClient, store: Store) -> None:
    stamp = value_of(client.get("/shelf", params=OTHER).text, "stamp")
    client.post("/garments/pullover/fill")
    before = book_of(store)
    answer = client.post("/shelf/keep", data=OTHER | {"stamp": stamp})
    assert answer.status_code == 409
    assert book_of(store) == before


@pytest.mark.usefixtures("shelf")
def test_plain_garments_for_somebody(client: TestClient) -> None:
    html = client.get("/shelf", params={"person": "Ines"}).text
    assert "grey two-ply" in words(html)
    found = re.search(
        r'href="(/quick\?yarn=grey\+two-ply&amp;garment=hat&amp;person=Ines[^"]*)"', html
    )
    assert found
    assert "Enough:" in words(page(client, unescape(found[1])))


def test_an_empty_book_has_a_page(client: TestClient) -> None:
    said = words(page(client, "/shelf"))
    assert "No garment is planned that has not been begun." in said
    assert client.get("/shelf?person=nobody&value=luck&place_x=1&anew=maybe").status_code == 200


def a_stand(standing: str, **other: float) -> Covered:
    figures = {"odds": 0.95, "need_m": 500.0, "short_m": 0.0, "spin_m": 0.0, "buy_m": 0.0}
    return Covered("hat", "hat", standing, **figures | {"left_m": 30.0, "used_g": 20.0} | other)


@pytest.mark.parametrize(
    ("one", "said"),
    [
        (a_stand("fits"), "19 times in 20, about 30 m left"),
        (a_stand("fits after spinning", spin_m=210.0), "210 m to spin"),
        (a_stand("short", buy_m=90.0), "90 m to buy"),
        (a_stand("short", buy_m=90.0, spin_m=12.0), "12 m to spin, 90 m to buy"),
        (a_stand("wasteful", left_m=700.0), "about 700 m left, and it takes 500 m"),
        (a_stand("not known"), "add its parts, gauge or yarn"),
    ],
)
def test_how_a_garment_stands(one: Covered, said: str) -> None:
    assert words(stands_said(one, SHOWN).figures) == said
    assert set(TONES) < set(STANDINGS)


def test_how_far_the_best_is_known() -> None:
    proven = Best("garments", (), 3, True, 3, 1)
    assert how_good(proven, SHOWN) == " No other set does better."
    most = Best("garments", (), 3, False, 4, 60)
    assert "No set comes to more than four garments" in how_good(most, SHOWN)
    assert "1.2" not in how_good(Best("wool", (), 900, False, 1200, 60), SHOWN)


@pytest.mark.parametrize("order", ["abc", "acb", "bac", "bca", "cab", "cba"])
def test_every_order_can_be_asked_for(order: str) -> None:
    book = a_book(*(a_plan(one, priority=place) for place, one in enumerate("abc", 1)))
    sent = {f"place_{one}": str(place) for place, one in enumerate(order, 1)}
    assert read_shelf(sent, book).order == tuple(order)


def test_one_garment_moved_goes_where_it_was_put() -> None:
    book = a_book(*(a_plan(one, priority=place) for place, one in enumerate("abcd", 1)))
    as_it_is = {f"place_{one}": str(place) for place, one in enumerate("abcd", 1)}
    assert read_shelf(as_it_is | {"place_d": "2"}, book).order == tuple("adbc")
    assert read_shelf(as_it_is | {"place_a": "3"}, book).order == tuple("bcad")
    assert read_shelf(as_it_is | {"place_a": "far"}, book).order == tuple("abcd")


def test_every_value_has_its_words() -> None:
    assert set(VALUE_WORDS) == set(VALUES)


@pytest.mark.usefixtures("shelf")
def test_a_look_that_takes_long_says_how_far_it_is_and_can_be_stopped(
    client: TestClient, monkeypatch: pytest.MonkeyPatch
) -> None:
    state = {"going": True}
    asked: list[tuple[str, AskedOfShelf]] = []
    room = "app.web.routes.shelf"
    monkeypatch.setattr(f"{room}.covers_so_far", lambda *_: (SoFar(2, 5), state["going"]))
    monkeypatch.setattr(f"{room}.stop_covers", lambda _, one: asked.append(("stop", one)))
    monkeypatch.setattr(f"{room}.ask_again", lambda _, one: asked.append(("again", one)))
    html = client.get("/shelf", params=OTHER | {"value": "wool"}).text
    assert '<progress max="5" value="2"' in html
    query = unescape(re.findall(r'action="/shelf/stop\?([^"]*)"', html)[0])
    state["going"] = False
    stopped = client.post(f"/shelf/stop?{query}").text
    assert "<progress" not in stopped
    assert "it was stopped" in words(stopped)
    client.post(f"/shelf/look?{query}")
    same = AskedOfShelf("wool", order=("hat", "pullover", "idea"))
    assert asked == [("stop", same), ("again", same)]
