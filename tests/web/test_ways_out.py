"""The ways out of a short garment: compared on its page, looked at, taken with a click, undone."""

import re
from html import unescape

import pytest
from starlette.testclient import TestClient

from app.book.settings import Settings
from app.book.shape import Counted, Metres
from app.book.woolbook import Portion, arrive
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
