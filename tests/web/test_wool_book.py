"""The wool book on screen: entries, corrections with reasons, balances, the way of the wool."""

import re

import pytest
from starlette.testclient import TestClient

from app.book.event import Line
from app.book.words import HoldingKind
from app.store.engine import Store
from app.store.fill import fill
from app.store.records import load_book, post, put
from app.web.shown import MINUS
from tests.books import DAY, a_book, a_fleece, a_holding, a_part, a_plan, a_promise, a_skein, a_yarn
from tests.web.forms import shown_values
from tests.web.garden import page, words


def plain(client: TestClient, url: str) -> str:
    return words(page(client, url)).replace("\u2009", " ").replace("\u00a0", " ").replace(" ;", ";")


def a_story(store: Store) -> None:
    """300 g of Bramble and 100 g of alpaca: mixed, spun, knit, put right, taken back."""
    with store.writing() as session:
        fill(
            session,
            a_book(
                a_fleece(breed="Cheviot", source="our own flock"),
                a_fleece("top", name="Bought top", fibre="alpaca"),
                a_yarn(),
                a_plan(),
                a_holding("F", code="F-1", fleece_id="Bramble", day=DAY),
                a_holding("T", code="F-2", fleece_id="top"),
                a_holding("mix", "fibre"),
                a_skein("S-1"),
                a_holding("G", "garment", code="Pullover", plan_id="pullover"),
            ),
        )
        told = [
            ("arrive", {"come in": -300, "F": 300}, ""),
            ("arrive", {"come in": -100, "T": 100}, ""),
            ("prepare", {"F": -300, "T": -100, "mix": 360, "waste": 40}, ""),
            ("spin", {"mix": -180, "S-1": 171, "waste": 9}, ""),
            ("use", {"S-1": -100, "G": 95, "waste": 5}, ""),
            ("correct", {"mix": -6, "weighing and moisture": 6}, "dry weather"),
        ]
        for kind, moved, note in told:
            lines = [Line(id, round(1000 * g), 380_000 if id == "S-1" and g > 0 else 0)
                     for id, g in moved.items()]  # fmt: skip
            step = "blend" if kind == "prepare" else ""
            post(session, kind, DAY, lines, note, step=step, passes=2 if step else 0)  # type: ignore[arg-type]


def test_an_empty_book_says_how_it_begins(client):
    said = plain(client, "/wool-book")
    assert "Nothing has come in yet." in said
    assert "It begins when the first fleece or skein comes in." in said
    assert "Nothing was ever put right." in plain(client, "/wool-book?corrections=1")
    assert "Nothing stands here yet." in plain(client, "/wool-book/balances?of=yarn")


def test_every_entry_stands_with_what_it_moved(client, store):
    a_story(store)
    said = plain(client, "/wool-book")
    assert "400 g came in: 340 g is held, 54 g went to waste, 6 g less by weighing again." in said
    assert f"blended, 2 passes F-1 {MINUS}300 g; F-2 {MINUS}100 g; mix +360 g; waste +40 g" in said
    assert f"spun mix {MINUS}180 g; S-1 +171 g, +380 m; waste +9 g" in said
    assert "Correction: put right: dry weather" in said


def test_only_corrections_are_shown_when_asked_for(client, store):
    a_story(store)
    said = plain(client, "/wool-book?corrections=1")
    assert "dry weather" in said
    assert "blended" not in said


def test_an_entry_is_taken_back_with_a_reason(client, store):
    a_story(store)
    address = "/wool-book/event/6"
    html = page(client, address)
    assert "Number 6 of 30 April 2026: put right: dry weather." in words(html)
    form = shown_values(html, address)
    assert form == {"reason": "entered by mistake"}
    refused = client.post(address, data={"reason": " "})
    assert refused.status_code == 422
    assert 'id="e-reason"' in refused.text
    done = words(client.post(address, data={"reason": "the wrong bag"}).text)
    assert "Number 6 is taken back: the wrong bag." in done
    assert "Correction: taken back: number 6: the wrong bag" in done
    assert "Correction: put right (taken back): dry weather" in done
    assert "It was taken back already." in plain(client, address)
    assert "It took something back itself, and stands." in plain(client, "/wool-book/event/7")
    with store.reading() as session:
        assert load_book(session).balances["mix"].mg == 180_000


def test_what_has_gone_on_cannot_be_taken_back(client, store):
    a_story(store)
    answer = client.post("/wool-book/event/3", data={"reason": "a slip"})
    assert answer.status_code == 409
    assert "Undo the later event first." in answer.text


@pytest.mark.parametrize("path", ["event/0", "event/99", "nobody"])
def test_what_is_not_there_is_said(client, path):
    assert client.get(f"/wool-book/{path}").status_code == 404


def test_an_event_that_is_not_there_cannot_be_taken_back(client):
    assert client.post("/wool-book/event/99", data={"reason": "a slip"}).status_code == 404


def test_balances_stand_by_their_weight(client, store):
    a_story(store)
    rows = re.findall(
        r'<th scope="row">(?:<a href="([^"]*)">)?([^<]*)', page(client, "/wool-book/balances")
    )
    assert [name for _, name in rows] == [
        "mix", "Pullover", "waste", "weighing and moisture", "given away", "F-2", "F-1", "come in",
    ]  # fmt: skip
    assert {name: url for url, name in rows}["Pullover"] == "/garments/pullover"
    assert f"come in come in {MINUS}400 g" in plain(client, "/wool-book/balances")
    yarn = plain(client, "/wool-book/balances?of=yarn")
    assert "S-1 skein 71 g 380 m" in yarn
    assert "Pullover" not in yarn


def test_long_lists_have_pages(client, store):
    a_story(store)
    with store.writing() as session:
        for number in range(70):
            kind: HoldingKind = "skein"
            put(session, a_holding(f"more {number}", kind, code=f"M-{number}"))
            lines = [Line(f"more {number}", 1000 + number), Line("come in", -1000 - number)]
            post(session, "arrive", DAY, lines)
    first = page(client, "/wool-book/balances?of=yarn")
    assert 'href="/wool-book/balances?of=yarn&amp;page=2"' in first
    second = page(client, "/wool-book/balances?of=yarn&page=2")
    assert 'href="/wool-book/balances?of=yarn&amp;page=1"' in second
    assert "M-0" in second
    events = page(client, "/wool-book")
    earlier = re.search(r'href="(/wool-book\?before=\d+)"', events)
    assert earlier
    assert "blended" in page(client, earlier[1])
    assert "blended" not in events


@pytest.mark.parametrize("query", ["before=x", "before=-1", f"before={'9' * 30}", "before="])
def test_an_odd_address_is_read_as_the_first_page(client, store, query):
    a_story(store)
    assert "blended" in page(client, f"/wool-book?{query}")


@pytest.mark.parametrize("query", ["page=x", "page=0", "page=999999999999"])
def test_an_odd_page_of_balances_is_a_page(client, query):
    assert client.get(f"/wool-book/balances?{query}").status_code == 200


def test_a_garment_leads_back_to_the_sheep(client, store):
    a_story(store)
    said = plain(client, "/wool-book/G")
    assert "It came from 75 % Bramble and 25 % Bought top." in said
    assert "Bramble → mix: 71 g Bought top → mix: 24 g mix → S-1: 95 g S-1 → Pullover: 95 g" in said
    assert "75 % Bramble Cheviot, our own flock, came in on 30 April 2026" in said
    assert "On a label 75 % wool, 25 % alpaca" in said
    assert "Agreed water 17 % of its dry weight" in said
    html = page(client, "/wool-book/G")
    assert html.count("<rect x=") >= 5
    assert 'aria-label="The way of the wool to Pullover.' in html


def test_a_fleece_leads_forward_to_all_it_became(client, store):
    a_story(store)
    said = plain(client, "/wool-book/F")
    assert "125 g of it is yarn or knit , 131 g is still to be spun." in said
    assert "mix fibre 131 g Pullover garment 71 g S-1 skein 53 g waste 41 g" in said
    assert "weighing and moisture 4.5 g" in said
    assert "Where it came from" not in said


def test_a_blend_leads_both_ways(client, store):
    a_story(store)
    said = plain(client, "/wool-book/mix")
    assert "It came from 75 % Bramble and 25 % Bought top." in said
    assert "mix → S-1: 171 g" in said


def test_wool_that_was_never_weighed_has_no_way(client, store):
    with store.writing() as session:
        put(session, a_holding("F"))
    said = plain(client, "/wool-book/F")
    assert "0 g of it is yarn or knit" in said
    assert "What it became" not in said


def test_unknown_fibre_stays_unknown_and_is_wide(client, store):
    with store.writing() as session:
        put(session, a_fleece(fibre="unknown"))
        put(session, a_holding("F", fleece_id="Bramble"))
        post(session, "arrive", DAY, [Line("F", 1000), Line("come in", -1000)])
    said = plain(client, "/wool-book/F")
    assert "On a label 100 % unknown fibre" in said
    assert "± 4.8" in said


# In a few words, where the wool is


def test_a_skein_a_fleece_and_a_garment_say_what_they_are_made_of(client, store):
    a_story(store)
    skein = plain(client, "/skeins/S-1")
    assert "Made of 75 % wool, 25 % alpaca; agreed water 17 % of its dry weight" in skein
    assert "Its wool 75 % Bramble and 25 % Bought top" in skein
    assert 'href="/wool-book/S-1"' in page(client, "/skeins/S-1")
    garment = plain(client, "/garments/pullover")
    assert "Made of 75 % wool, 25 % alpaca" in garment
    assert "Care Wash by hand in lukewarm water" in garment
    assert 'href="/wool-book/G"' in page(client, "/garments/pullover")
    fleece = plain(client, "/fleeces/Bramble")
    assert "Made of 100 % wool" in fleece
    assert 'href="/wool-book/F"' in page(client, "/fleeces/Bramble")


def test_a_garment_not_begun_is_of_what_is_promised_to_it(client, store):
    a_story(store)
    with store.writing() as session:
        put(session, a_plan("hat"))
        put(session, a_part("crown", "hat"))
        put(session, a_promise("S-1", 100_000, plan_id="hat", part_id="crown"))
    said = plain(client, "/garments/hat")
    assert "Its wool 75 % Bramble and 25 % Bought top" in said
    assert "Its way" not in said


def test_a_garment_without_wool_says_nothing_of_it(client, store):
    with store.writing() as session:
        put(session, a_yarn())
        put(session, a_plan())
    assert "Made of" not in plain(client, "/garments/pullover")


def test_a_skein_put_right_says_why(client, store):
    a_story(store)
    form = shown_values(page(client, "/skeins/S-1/weigh"), "/skeins/S-1/weigh")
    assert form["reason"] == "weighed again"
    client.post("/skeins/S-1/weigh", data=form | {"mass": "69", "reason": "the scale was off"})
    assert "Correction: put right: the scale was off" in plain(client, "/wool-book")
    assert "weighed or measured again: the scale was off" in plain(client, "/skeins/S-1")
