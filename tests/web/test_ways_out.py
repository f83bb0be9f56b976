"""The ways out of a short garment: compared on its page, looked at, taken with a click, undone."""

import re
from html import unescape

import pytest
from starlette.testclient import TestClient

from app.book.settings import Settings
from app.book.shape import Counted, Metres
from app.book.woolbook import Portion, arrive
from app.planning.ways_out.judged import Looked
from app.planning.ways_out.way import Amount, AmountKind, Said
from app.store.engine import Store
from app.store.fill import fill
from app.store.records import post, put
from app.web.pages.ways_out import said_words
from app.web.shown import Shown
from tests.books import DAY, a_fleece, a_holding, a_part, a_promise, a_skein
from tests.web.garden import SWAP, book_of, page, undo_of, words
from tests.work.shelf import a_shelf

WAYS = "/garments/pullover/ways-out"
KINDS: tuple[AmountKind, ...] = ("yarn", "wool", "size", "hours", "needle", "count")


@pytest.fixture(autouse=True)
def shelf(store: Store) -> None:
    """The hat asks for no yarn of the pullover's, which is short."""
    with store.writing() as session:
        fill(session, a_shelf())


def offer(html: str, key: str) -> dict[str, str]:
    """What the form of a way out sends."""
    found = re.search(rf'name="key" value="{key}">\s*<input[^>]* name="stamp" value="(\w+)"', html)
    assert found, f"no way {key}"
    return {"key": key, "stamp": found[1]}


def test_they_come_in_after_the_page_and_are_a_link_without_scripts(client: TestClient) -> None:
    html = page(client, "/garments/pullover")
    assert f'href="{WAYS}"' in html
    assert f'hx-get="{WAYS}"' in html
    whole, swapped = page(client, WAYS), client.get(WAYS, headers=SWAP).text
    assert "<html" in whole
    assert "<html" not in swapped
    assert "Show me the plan so" in words(swapped)


def test_looked_at_nothing_is_saved(client: TestClient, store: Store) -> None:
    before = book_of(store)
    html = page(client, f"{WAYS}/shorten-sleeves")
    said = words(html)
    assert "as it would be, nothing saved" in said
    assert "The budget, before and after" in said
    assert "<svg" in html
    assert book_of(store) == before


def test_taken_with_one_click_and_undone(client: TestClient, store: Store) -> None:
    before = book_of(store)
    sent = offer(page(client, WAYS), "shorten-sleeves")
    html = client.post(f"{WAYS}/take", data=sent).text
    assert "Taken: make the sleeves" in words(html)
    assert book_of(store) != before
    client.post(undo_of(html), data={"back": "/garments/pullover"})
    after = book_of(store)
    assert (after.plan, after.part, set(after.promises)) == (
        before.plan,
        before.part,
        set(before.promises),
    )


def test_what_is_still_to_be_spun_becomes_a_line_of_the_work_list(
    client: TestClient, store: Store
) -> None:
    """The yarn has no fleece of its own, but another one of wool is there."""
    with store.writing() as session:
        put(session, a_fleece("Clover"))
        put(session, a_holding("F-2", fleece_id="Clover", state="carded"))
        clover = Portion(a_holding("F-2"), 3_000_000)
        entry = arrive([clover])
        post(session, entry.kind, DAY, entry.lines)
    html = page(client, WAYS)
    said = words(client.post(f"{WAYS}/take", data=offer(html, "spin-Clover")).text)
    assert "from Clover. It is on the work list." in said
    assert "like grey two-ply from Clover" in words(page(client, "/work-list"))
    assert [one.plan_id for one in book_of(store).errands] == ["pullover"]


def test_an_offer_that_does_not_stand_any_more_changes_nothing(
    client: TestClient, store: Store
) -> None:
    sent = offer(page(client, WAYS), "shorten-sleeves")
    client.post("/garments/pullover/fill")
    client.post("/garments/pullover/keep")
    before = book_of(store)
    answer = client.post(f"{WAYS}/take", data=sent)
    assert answer.status_code == 409
    assert "was changed meanwhile" in answer.text
    assert book_of(store) == before


def test_nothing_is_taken_without_a_stamp(client: TestClient, store: Store) -> None:
    before = book_of(store)
    assert client.post(f"{WAYS}/take", data={"key": "shorten-sleeves"}).status_code == 409
    assert book_of(store) == before


def test_what_is_left_over_links_to_what_it_would_make(client: TestClient, store: Store) -> None:
    """A hat of few rows leaves most of its skein."""
    with store.writing() as session:
        put(session, a_skein("G-9"))
        entry = arrive([Portion(a_skein("G-9"), 360_000, 800_000)])
        post(session, entry.kind, DAY, entry.lines)
        put(session, a_part("crown", "hat", shape=Counted(60, 20)))
        put(session, a_promise("G-9", 800_000, plan_id="hat", part_id="crown"))
    html = page(client, "/garments/hat/ways-out")
    assert "What is left over would also make" in words(html)
    found = re.search(r'href="(/quick[^"]*garment=mittens[^"]*)"', html)
    assert found
    assert "Enough:" in words(page(client, unescape(found[1])))
    assert "What else the left-over would make" in words(page(client, "/garments/hat"))


def test_what_leaves_a_few_metres_is_kept_for_mending(client: TestClient, store: Store) -> None:
    with store.writing() as session:
        put(session, a_part("crown", "hat", shape=Metres(10_000)))
        put(session, a_promise("W-1", 30_000, plan_id="hat", part_id="crown"))
    assert "keep it for mending" in words(page(client, "/garments/hat/ways-out"))


def test_a_way_nobody_knows_is_missing(client: TestClient) -> None:
    assert client.get(f"{WAYS}/wish").status_code == 404
    assert client.get("/garments/nobody/ways-out").status_code == 404


def test_words_carry_the_makers_units() -> None:
    said = Said(
        "{}, {}, {}, {}, {}, {}, {}", (*(Amount(12.4, one) for one in KINDS), Amount(0.3, "hours"))
    )
    told = words(said_words(said, Shown(Settings())))
    assert told == "13 m, 13 g, 1.2 cm, 12 hours, 12.4 mm, 12.4, 1 hour"
    yards = Shown(Settings(length_unit="yd", mass_unit="oz", decimal=","))
    assert words(said_words(Said("{}", (Amount(96.0, "size"),)), yards)) == "3,8 in"


def test_two_side_by_side_nothing_is_saved_and_either_is_taken(
    client: TestClient, store: Store
) -> None:
    before = book_of(store)
    html = page(client, WAYS)
    keys = re.findall(r'name="way" value="([\w-]+)"', html)[:2]
    assert "Show two side by side" in words(html)
    beside = client.get(f"{WAYS}/beside", params={"way": keys}).text
    said = words(beside)
    assert "two ways out side by side, nothing saved" in said
    for key in keys:
        alone = page(client, f"{WAYS}/{key}")
        told = re.search(r'id="answer">(.*?)</p>', alone, re.S)
        assert told
        assert words(told[1]).split(".")[0] in said
        picture = client.get(f"{WAYS}/{key}/picture.svg")
        assert picture.headers["content-type"].startswith("image/svg+xml")
        assert f"{WAYS}/{key}/picture.svg" in beside
    assert book_of(store) == before
    html = client.post(f"{WAYS}/take", data=offer(beside, keys[1])).text
    assert "Taken: " in words(html)
    assert book_of(store) != before


@pytest.mark.parametrize("ways", [[], ["shorten-sleeves"], ["shorten-sleeves"] * 2])
def test_side_by_side_wants_two(client: TestClient, ways: list[str]) -> None:
    said = words(client.get(f"{WAYS}/beside", params={"way": ways}).text)
    assert "Tick two ways out to see them side by side." in said


def test_side_by_side_with_one_that_is_gone(client: TestClient) -> None:
    ways = ["shorten-sleeves", "nothing-here"]
    assert client.get(f"{WAYS}/beside", params={"way": ways}).status_code == 404


def test_a_search_that_is_stopped_says_how_far_it_came(
    client: TestClient, monkeypatch: pytest.MonkeyPatch
) -> None:
    state = {"going": True}
    asked: list[str] = []

    def looked_for(*_: object) -> tuple[Looked, bool]:
        return Looked((), 3, 13), state["going"]

    monkeypatch.setattr("app.web.routes.ways_out.ways_looked_for", looked_for)
    monkeypatch.setattr("app.web.routes.ways_out.stop_ways", lambda *_: asked.append("stop"))
    monkeypatch.setattr("app.web.routes.ways_out.look_again", lambda *_: asked.append("look"))
    html = page(client, WAYS)
    assert "<progress" in html
    assert "3 of 13 kinds of ways out were looked for." in words(html)
    assert "No way out was found so far." in words(html)
    state["going"] = False
    html = client.post(f"{WAYS}/stop").text
    assert "<progress" not in html
    assert "Stopped." in words(html)
    assert "Look for all of them" in words(html)
    client.post(f"{WAYS}/look")
    assert asked == ["stop", "look"]
