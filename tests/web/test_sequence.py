"""Alternate or fade: asked, shown, kept, undone, knit from, printed."""

import re
from dataclasses import replace

import pytest
from starlette.testclient import TestClient

from app.book.plan import Part, RoleYarn
from app.book.shape import Counted, Metres
from app.planning import reckon
from app.planning.picture import picture
from app.store.engine import Store
from app.store.fill import fill
from app.store.records import put
from app.web.pages.sequence_rows import rows_shown
from tests.books import a_part, a_plan, a_promise, some_progress
from tests.web.forms import shown_values
from tests.web.garden import book_of, page, undo_of, words
from tests.work.shelf import a_shelf

YOKE = "/garments/pullover/parts/yoke"
TURNS = f"{YOKE}/turns"
FADE = {"kind": "fade", "yarn_1": "grey two-ply", "yarn_2": "white single"}


@pytest.fixture(autouse=True)
def shelf(store: Store) -> None:
    """A yoke of 80 rounds, 100 stitches each: 145 m; 313 m of grey and 150 m of white."""
    yoke = a_part("yoke", position=3, shape=Counted(100, 80))
    neck = a_part("neck", position=4, shape=Counted(80, 12))
    with store.writing() as session:
        fill(session, a_shelf(yoke, neck))


def part(store: Store, id: str = "yoke") -> Part:
    return book_of(store).part[id]


def asked(client: TestClient, **typed: str) -> str:
    answer = client.get(TURNS, params=FADE | typed)
    assert answer.status_code == 200, words(answer.text)
    return answer.text


def kept(client: TestClient, **typed: str) -> str:
    """What is said after a fade was looked at and kept with the form as it was shown."""
    shown = shown_values(asked(client, **typed), TURNS)
    answer = client.post(TURNS, data=shown)
    assert answer.status_code == 200
    return answer.text


def test_a_part_offers_it_and_the_form_begins_with_its_yarn(client: TestClient) -> None:
    assert TURNS in page(client, "/garments/pullover")
    html = page(client, TURNS)
    values = shown_values(html, TURNS)
    assert (values["kind"], values["yarn_1"]) == ("fade", "grey two-ply")
    assert "Which yarns take turns?" in words(html)


def test_a_fade_is_shown_before_it_is_kept(client: TestClient, store: Store) -> None:
    html = asked(client, from_row="21", to_row="60")
    said = words(html)
    assert "Begin the fade at round 21: grey two-ply ends with round 60." in said
    assert "Rounds 1 to 2" in said
    assert "yoke, to knit from" in said
    assert part(store).sequence is None


def test_it_is_kept_with_its_yarns_and_undone(client: TestClient, store: Store) -> None:
    before = book_of(store)
    html = kept(client, from_row="21", to_row="60")
    assert "yoke: Begin the fade at round 21" in words(html)
    sequence = part(store).sequence
    assert sequence is not None
    assert (sequence.kind, sequence.from_row, sequence.to_row) == ("fade", 21, 60)
    assert part(store).yarns == (RoleYarn("second yarn", "white single"),)
    assert f"{TURNS}/rows" in html
    client.post(undo_of(html))
    assert book_of(store) == before


def test_opened_again_the_form_holds_what_was_kept(client: TestClient) -> None:
    kept(client, from_row="21", to_row="60")
    values = shown_values(page(client, TURNS), TURNS)
    assert (values["yarn_2"], values["from_row"], values["to_row"]) == ("white single", "21", "60")
    assert values["share_1"] == "100"


def test_the_text_matches_the_picture_row_for_row(client: TestClient, store: Store) -> None:
    kept(client, from_row="21", to_row="60")
    book = book_of(store)
    seen = picture(book, reckon(book), "pullover")
    rows = rows_shown(seen, "yoke")
    assert len(rows) == 80
    for row in (1, 25, 40, 61, 80):
        html = page(client, f"{TURNS}/rows?at={row}")
        assert f"Round {row} of 80: {rows[row - 1].yarn}" in words(html)
    assert {one.yarn for one in rows[:20]} == {"grey two-ply"}
    assert {one.yarn for one in rows[60:]} == {"white single"}


def test_turns_all_along_are_shared_by_what_there_is(client: TestClient) -> None:
    said = words(asked(client, kind="alternate"))
    assert "Turn and turn about:" in said
    assert "times in all" in said


def test_turns_in_a_spiral_are_told_how(client: TestClient) -> None:
    said = words(asked(client, kind="alternate", spiral="1"))
    assert "40 rounds of grey two-ply and 40 rounds of white single." in said
    assert "Each yarn works a round of its own" in said


def test_stripes(client: TestClient, store: Store) -> None:
    html = kept(client, kind="stripes", rows_1="3", rows_2="1")
    assert "Stripes: 60 rounds of grey two-ply and 20 rounds of white single." in words(html)
    sequence = part(store).sequence
    assert sequence is not None
    assert [(one.role, one.rows) for one in sequence.bands] == [("main", 3), ("second yarn", 1)]
    values = shown_values(page(client, TURNS), TURNS)
    assert (values["kind"], values["rows_1"], values["yarn_2"]) == ("stripes", "3", "white single")


def test_shares_of_her_own(client: TestClient, store: Store) -> None:
    kept(client, share_1="80 %", share_2="20", share_to_1="20", share_to_2="80")
    sequence = part(store).sequence
    assert sequence is not None
    assert [(one.share, one.share_to) for one in sequence.yarns] == [(0.8, 0.2), (0.2, 0.8)]


def test_one_fade_over_two_parts(client: TestClient, store: Store) -> None:
    html = kept(client, from_row="61", to_row="90", over_neck="1")
    assert "Begin the fade at round 61" in words(html)
    assert part(store).sequence is not None
    neck = part(store, "neck").sequence
    assert neck is not None
    assert (neck.from_row, neck.to_row) == (1, 10)


@pytest.mark.parametrize(
    ("typed", "message"),
    [
        ({"yarn_2": ""}, "Choose a second yarn."),
        ({"yarn_3": "grey two-ply"}, "Name each yarn once."),
        ({"from_row": "30", "to_row": "20"}, "It ends before it begins."),
        ({"kind": "stripes", "rows_1": "2"}, "Say how many rows of it follow each other."),
        ({"share_1": "0", "share_2": "0"}, "Give at least one yarn a share."),
        ({"share_1": "100", "share_to_1": "0"}, "Give at least one yarn a share."),
        ({"share_1": "lots"}, "Please look at this field"),
        ({"kind": "weave"}, "Choose one of these."),
        ({"from_row": "0"}, "This must be 1 or more."),
        ({}, "grey two-ply reaches round 80 without a fade."),
        ({"to_row": "1"}, "There are too few rounds for a fade between these."),
        (
            {"yarn_1": "white single", "yarn_2": "grey two-ply", "share_1": "100", "share_2": "0"},
            "white single lacks",
        ),
    ],
)
def test_what_cannot_be_is_said_beside_the_field(
    client: TestClient, store: Store, typed: dict[str, str], message: str
) -> None:
    for answer in (
        client.get(TURNS, params=FADE | typed),
        client.post(TURNS, data=FADE | typed | {"stamp": stamp_now(client)}),
    ):
        assert answer.status_code == 422
        assert message in words(answer.text)
    assert part(store).sequence is None


def stamp_now(client: TestClient) -> str:
    return shown_values(page(client, TURNS), TURNS)["stamp"]


def test_a_part_changed_meanwhile_is_not_overwritten(client: TestClient, store: Store) -> None:
    answer = client.post(TURNS, data=FADE | {"from_row": "21", "to_row": "60", "stamp": "old"})
    assert answer.status_code == 409
    assert client.post(f"{TURNS}/end", data={"stamp": "old"}).status_code == 409
    assert part(store).sequence is None


def test_what_lacks_may_be_made(client: TestClient) -> None:
    """The body wants 497 m; there are 313 m of grey and 150 m of white."""
    body = "/garments/pullover/parts/body/turns"
    typed = FADE | {"from_row": "21", "to_row": "60"}
    refused = client.get(body, params=typed)
    assert refused.status_code == 422
    assert "white single lacks" in words(refused.text)
    answer = client.get(body, params=typed | {"spin_rest": "1"})
    assert answer.status_code == 200
    assert "of white single still to be made" in words(answer.text)
    assert "short by" in words(answer.text)


def test_all_of_it_together_may_be_too_little(client: TestClient) -> None:
    body = "/garments/pullover/parts/body/turns"
    answer = client.get(body, params=FADE | {"kind": "alternate"})
    assert answer.status_code == 422
    assert "All of them together lack" in words(answer.text)


def test_in_one_yarn_again(client: TestClient, store: Store) -> None:
    kept(client, from_row="21", to_row="60")
    promised = a_promise("W-1", 40_000, part_id="yoke", role="second yarn")
    with store.writing() as session:
        put(session, promised)
    stamp = shown_values(page(client, TURNS), f"{TURNS}/end")["stamp"]
    html = client.post(f"{TURNS}/end", data={"stamp": stamp}).text
    assert "yoke is in one yarn again. What was promised of the others is free again." in words(
        html
    )
    assert part(store).sequence is None
    assert [one.part_id for one in book_of(store).promises] == ["body"]


def test_the_strip_leads_from_row_to_row(client: TestClient) -> None:
    kept(client, from_row="21", to_row="60")
    html = page(client, f"{TURNS}/rows?at=20")
    assert f'href="{TURNS}/rows?at=21"' in html
    assert f'href="{TURNS}/rows?at=19"' in html
    assert 'data-row="20"' in html
    assert "of grey two-ply, then white single." in words(html)
    last = words(page(client, f"{TURNS}/rows?at=80"))
    assert "white single to the end, round 80." in last
    assert "All 80 rounds are knit." in words(page(client, f"{TURNS}/rows?at=999"))
    assert "Round 1 of 80" in words(page(client, f"{TURNS}/rows?at=none"))


def test_a_part_without_rows_has_nothing_to_knit_from(client: TestClient, store: Store) -> None:
    with store.writing() as session:
        put(session, a_part("yoke", position=3, shape=Metres(9_000)))
    assert "No rounds to knit from yet" in words(page(client, f"{TURNS}/rows"))
    answer = client.get(TURNS, params=FADE)
    assert answer.status_code == 422
    assert "This part has no rows yet in its main yarn" in words(answer.text)


def test_the_sheet_to_print(client: TestClient) -> None:
    kept(client, kind="alternate", spiral="1")
    html = page(client, f"{TURNS}/print")
    assert "1 round grey two-ply, 1 round white single; 40 times in all" in words(html)
    assert html.count('aria-label="to do"') == 40


def test_what_is_not_there_or_done_takes_no_turns(client: TestClient, store: Store) -> None:
    assert client.get("/garments/none/parts/yoke/turns").status_code == 404
    assert client.get("/garments/pullover/parts/none/turns").status_code == 404
    with store.writing() as session:
        put(session, a_plan(state="finished"))
    assert client.get(TURNS).status_code == 409


def test_a_fade_that_begins_in_the_second_part_is_counted_through(client: TestClient) -> None:
    said = words(asked(client, from_row="85", to_row="90", over_neck="1"))
    assert "Begin the fade at round 85" in said
    assert "Rounds 1 to 80 : grey two-ply" in said


def test_rounds_that_are_knit_already_are_not_told_otherwise(
    client: TestClient, store: Store
) -> None:
    with store.writing() as session:
        plan = book_of(store).plan["pullover"]
        put(session, replace(plan, state="being knit"))
        put(session, some_progress("yoke", 10))
    alternate = FADE | {"kind": "alternate"}
    answer = client.get(TURNS, params=alternate)
    assert answer.status_code == 422
    said = words(answer.text)
    assert "knit already" in said
    assert re.search(r"Begin at \w+ 11 or later", said)
    assert client.get(TURNS, params=alternate | {"from_row": "11"}).status_code == 200
