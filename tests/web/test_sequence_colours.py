"""The colours of a garment's skeins on its page, and two that take turns around their join."""

import pytest
from starlette.testclient import TestClient

from app.book.shape import Counted
from app.store.engine import Store
from app.store.fill import fill
from app.store.records import put
from tests.books import a_book, a_part, a_plan, a_promise, a_skein, a_yarn
from tests.web.forms import shown_values
from tests.web.garden import SWAP, book_of, page, undo_of, words

COLOURS = "/garments/pullover/colours"
GREY, NEAR, DARK = "#8a8a86", "#8b8b87", "#6f6f6b"


def shelve(store: Store, *colours: str) -> None:
    """A body of 100 rounds in skeins of 100 m, 50 m of each promised to it, and of two 100."""
    skeins = [a_skein(f"G-{at}", colour=colour) for at, colour in enumerate(colours, 1)]
    mm = 100_000 if len(colours) < 3 else 50_000
    book = a_book(
        a_yarn(),
        *skeins,
        a_plan(),
        a_part(shape=Counted(100, 100)),
        *(a_promise(one.id, mm) for one in skeins),
        held={one.id: (45, 100) for one in skeins},
    )
    with store.writing() as session:
        fill(session, book)


def test_a_join_that_shows_is_said_first(client: TestClient, store: Store) -> None:
    shelve(store, GREY, DARK)
    said = words(page(client, COLOURS))
    assert "Alternate G-1 and G-2: they differ by 10.5, and meet at round 56 of body." in said
    assert "Round 56 of body: G-1 to G-2 differ by 10.5, plainly different" in said
    assert "From light to dark: G-1 , G-2 ." in said


def test_the_garment_brings_it_in(client: TestClient, store: Store) -> None:
    shelve(store, GREY, DARK)
    assert f'hx-get="{COLOURS}"' in page(client, "/garments/pullover")
    part = client.get(COLOURS, headers=SWAP).text
    assert "<html" not in part
    assert "Its colours" in words(part)


def test_one_skein_has_nothing_to_compare(client: TestClient, store: Store) -> None:
    shelve(store, GREY)
    assert COLOURS not in page(client, "/garments/pullover")
    assert "No change of skein shows: all read as one colour." in words(page(client, COLOURS))


def test_skeins_that_read_as_one(client: TestClient, store: Store) -> None:
    shelve(store, GREY, NEAR, "")
    said = words(page(client, COLOURS))
    assert "G-2 and G-1 read as one colour: seen apart on close look at most." in said
    assert "No colour noted of G-3." in said


def test_without_colours_there_is_nothing_to_say(client: TestClient, store: Store) -> None:
    shelve(store, "", "")
    assert "No colours yet: no skein of it has a colour noted." in words(page(client, COLOURS))


def test_families_that_do_not_meet(client: TestClient, store: Store) -> None:
    shelve(store, GREY, DARK)
    with store.writing() as session:
        put(session, a_part(shape=Counted(100, 40)))
    said = words(page(client, COLOURS))
    assert "No change of skein shows: they read as 2 colours." in said


def test_they_take_turns_around_the_join_and_it_is_undone(client: TestClient, store: Store) -> None:
    shelve(store, GREY, DARK)
    before = book_of(store)
    typed = shown_values(page(client, COLOURS), COLOURS)
    assert typed["row"] == "56"
    html = client.post(COLOURS, data=typed).text
    assert "body: the two skeins take turns around the join." in words(html)
    part = book_of(store).part["body"]
    assert part.sequence is not None
    assert (part.sequence.from_row, part.sequence.to_row) == (50, 61)
    assert 'action="/garments/pullover/colours"' not in page(client, COLOURS)
    client.post(undo_of(html))
    assert book_of(store) == before


@pytest.mark.parametrize("wrong", [{"row": "1"}, {"row": ""}, {"next_id": "G-9"}])
def test_where_there_is_no_join_nothing_is_done(
    client: TestClient, store: Store, wrong: dict[str, str]
) -> None:
    shelve(store, GREY, DARK)
    typed = shown_values(page(client, COLOURS), COLOURS)
    answer = client.post(COLOURS, data=typed | wrong)
    assert answer.status_code == 409
    assert "These two cannot take turns there." in words(answer.text)


def test_a_part_changed_meanwhile_is_left_alone(client: TestClient, store: Store) -> None:
    shelve(store, GREY, DARK)
    typed = shown_values(page(client, COLOURS), COLOURS)
    assert client.post(COLOURS, data=typed | {"stamp": "old"}).status_code == 409
    assert book_of(store).part["body"].sequence is None
