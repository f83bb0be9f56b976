"""After a change the page says what it did: in words of its own, and on the garment's page."""

import re

import pytest
from starlette.testclient import TestClient

from app.book.book import Book
from app.book.settings import Settings
from app.book.shape import Counted, Shape
from app.planning.changes import change_effects
from app.store.engine import Store
from app.store.fill import fill
from app.web.pages.effect import effect_sentence
from app.web.shown import Shown
from tests.books import a_book, a_part, a_plan, a_promise, a_skein, a_yarn
from tests.web.garden import BLANK_PART, BLANK_PLAN, book_of, stamp_of, words
from tests.work.shelf import a_shelf

SHOWN = Shown(Settings())
BODY = "/garments/pullover/parts/body"


def a_tube(rows: int = 120, promised: int = 0, held: float = 1000.0, **plan: object) -> Book:
    parts: list[object] = [a_part(shape=Counted(229, rows))] if rows else []
    promises = [a_promise("G-1", promised * 1000)] if promised else []
    made = a_plan(**plan)
    return a_book(a_yarn(), a_skein(), made, *parts, *promises, held={"G-1": (held * 0.45, held)})


@pytest.mark.parametrize(
    ("before", "after", "said"),
    [
        (
            a_tube(held=300.0),
            a_tube(130, held=300.0),
            "This takes 42 m more (19 g): short by 308 m now.",
        ),
        (
            a_tube(130),
            a_tube(),
            "This takes 42 m less (19 g): not promised yet: 563 m, and the shelf has it free.",
        ),
        (
            a_tube(0),
            a_tube(held=300.0),
            "This takes 518 m in all: short by 263 m now.",
        ),
        (
            a_tube(40, promised=1000),
            a_tube(60, promised=1000),
            "This takes 84 m more (38 g): enough still, practically every time.",
        ),
        (
            a_tube(240, promised=1000),
            a_tube(60, promised=1000),
            "This takes 753 m less (339 g): enough, practically every time.",
        ),
        (a_tube(), a_tube(), ""),
        (a_tube(), a_tube(130, state="finished"), ""),
        (a_tube(), a_tube(0), ""),
    ],
)
def test_what_is_said_of_a_change(before: Book, after: Book, said: str) -> None:
    found = effect_sentence(change_effects(before, after, "pullover"), SHOWN)
    assert words(found) == said


def test_the_odds_alone_may_change() -> None:
    unsure = a_part(shape_u_pct=20.0)
    before = a_tube(promised=560, held=560.0)
    after = a_book(
        a_yarn(),
        a_skein(),
        a_plan(),
        unsure,
        a_promise("G-1", 560_000),
        held={"G-1": (252.0, 560.0)},
    )
    found = words(effect_sentence(change_effects(before, after, "pullover"), SHOWN))
    assert found.startswith("This takes as much yarn as before, but less surely, 517 ± ")
    back = words(effect_sentence(change_effects(after, before, "pullover"), SHOWN))
    assert back.startswith("This takes as much yarn as before, but more surely, 517 ± ")
    promised = change_effects(a_tube(held=560.0), before, "pullover")
    said = words(effect_sentence(promised, SHOWN))
    assert re.match(r"This takes as much yarn as before: (short|enough)", said)


def test_nothing_is_said_of_a_plan_nobody_reckons_with() -> None:
    assert effect_sentence(None, SHOWN) == ""


@pytest.fixture
def shelf(store: Store) -> None:
    with store.writing() as session:
        fill(session, a_shelf())


SLEEVE: dict[str, str] = {"counted_stitches": "60", "counted_rows": "10"}


@pytest.mark.usefixtures("shelf")
def test_an_added_part_says_how_much_it_takes(client: TestClient) -> None:
    said = words(client.post("/garments/pullover/parts/new", data=BLANK_PART | SLEEVE).text)
    assert "Collar is added to pullover. This takes 11 m more (4.9 g): short by" in said


@pytest.mark.usefixtures("shelf")
def test_a_changed_part_says_what_it_does(client: TestClient, store: Store) -> None:
    told = {"name": "body", "counted_stitches": "229", "counted_rows": "110"}
    stamp = stamp_of(store, "part", "body")
    said = words(client.post(f"{BODY}/change", data=BLANK_PART | told | {"stamp": stamp}).text)
    assert "body is changed. This takes 42 m less (19 g): short by" in said


@pytest.mark.usefixtures("shelf")
def test_a_part_taken_out_says_what_it_frees(client: TestClient, store: Store) -> None:
    """497.1 m, 1 % unusable, and the tails of three skeins fewer: 503.2 m, at 450 tex 226.6 g."""
    said = words(
        client.post(f"{BODY}/remove", data={"stamp": stamp_of(store, "part", "body")}).text
    )
    assert "What was promised to it is free again. This takes 503 m less (227 g): " in said


@pytest.mark.usefixtures("shelf")
def test_another_gauge_of_the_plan_says_what_it_does(client: TestClient, store: Store) -> None:
    told = {
        "name": "pullover",
        "gauge_stitches": "20",
        "gauge_rows": "28",
        "yarn_id": "grey two-ply",
        "stamp": stamp_of(store, "plan", "pullover"),
    }
    said = words(client.post("/garments/pullover/change", data=BLANK_PLAN | told).text)
    assert "pullover is changed. This takes 1" in said
    assert "m more" in said


def the_shape(store: Store) -> Shape:
    return book_of(store).part["body"].shape


@pytest.mark.usefixtures("shelf")
def test_a_change_that_is_refused_says_nothing_and_saves_nothing(
    client: TestClient, store: Store
) -> None:
    told = {"name": "body", "counted_stitches": "", "stamp": stamp_of(store, "part", "body")}
    answer = client.post(f"{BODY}/change", data=BLANK_PART | told)
    assert answer.status_code == 422
    assert "This takes" not in answer.text
    assert the_shape(store) == Counted(229, 120)
