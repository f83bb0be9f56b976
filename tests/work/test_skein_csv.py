"""Skeins out to a table and in from one: all of it or none, one event a day."""

from collections.abc import Iterator
from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest
from sqlmodel import Session

from app.book.event import Balance
from app.book.yarn import Yarn
from app.store.engine import open_store
from app.store.records import load_book
from app.work.event_undo import undo_event
from app.work.refusal import Refusal
from app.work.skein_add import NewSkein
from app.work.skein_csv import ListedSkein, bring_in, export_skeins, skein_cells
from app.work.skein_readings import Length, Weight, Wraps, by_reel
from tests.books import a_book, a_fleece, a_reading, a_skein, a_yarn

DAY = date(2026, 3, 1)
GREY = Yarn(id="grey", name="Grey", plies=2)
GREEN = Yarn(id="green", name="Green")
SHOP = Yarn(id="shop", name="Shop", bought=True)
LATER = date(2026, 3, 9)


@pytest.fixture
def session(tmp_path: Path) -> Iterator[Session]:
    store = open_store(tmp_path)
    with store.writing() as session:
        yield session
    store.close()


def listed(code: str = "", yarn: Yarn = GREY, **other: object) -> ListedSkein:
    skein = NewSkein(
        yarn, Weight(96_000, "96", "g"), (Length(213_000, "213", "m"),), DAY, code=code
    )
    return ListedSkein(2, replace(skein, **other))


def test_skeins_come_to_the_shelf_with_their_yarn(session: Session) -> None:
    brought = bring_in(
        session, [listed("G-1"), replace(listed("G-2"), dye_lot="7", price="4 a ball")]
    )
    book = load_book(session)
    assert [one.name for one in book.yarns] == ["Grey"]
    assert [one.code for one in brought.skeins] == ["G-1", "G-2"]
    assert all(book.balances[one.id] == Balance(96_000, 213_000) for one in brought.skeins)
    assert (brought.skeins[1].dye_lot, brought.skeins[1].price) == ("7", "4 a ball")


def test_one_event_a_day_oldest_first(session: Session) -> None:
    brought = bring_in(session, [listed(day=LATER), listed(), listed(day=LATER)])
    assert [(one.day, len(one.lines)) for one in brought.events] == [(DAY, 2), (LATER, 3)]
    assert all(sum(line.mg for line in one.lines) == 0 for one in brought.events)


def test_a_day_can_be_undone_at_once(session: Session) -> None:
    (event,) = bring_in(session, [listed(), listed()]).events
    undo_event(session, event.seq, LATER)
    assert list(skein_cells(load_book(session))) == []


def test_codes_left_empty_are_the_next_free_ones(session: Session) -> None:
    rows = [listed(), listed("G-002"), listed(), listed(yarn=GREEN), listed("GR-1", GREEN)]
    brought = bring_in(session, rows)
    codes = sorted(one.code for one in brought.skeins)
    assert codes == ["G-002", "G-003", "G-004", "GR-1", "GR-2"]


def test_a_code_in_use_is_refused(session: Session) -> None:
    bring_in(session, [listed("G-1")])
    with pytest.raises(Refusal, match="G-1 is already in use"):
        bring_in(session, [listed("G-2"), listed("G-1")])


def test_what_a_bought_ball_says_is_its_label(session: Session) -> None:
    reeled = by_reel(1500, 80, "80")
    brought = bring_in(session, [listed("A", SHOP), listed("B", SHOP, lengths=(reeled,))])
    readings = load_book(session).readings_of
    assert [one.kind for one in brought.skeins] == ["ball", "ball"]
    assert {one.instrument for one in readings[brought.skeins[0].id]} == {"label"}
    assert {one.instrument for one in readings[brought.skeins[1].id]} == {"label", "reel"}


def test_wraps_and_where_it_is_from(session: Session) -> None:
    (skein,) = bring_in(session, [listed(wraps=Wraps(9_500, "9.5"), place="chest")]).skeins
    found = load_book(session).readings_of[skein.id]
    assert [one.value for one in found if one.kind == "wraps"] == [9_500]
    assert skein.place == "chest"


def test_every_column_of_a_skein() -> None:
    skein = a_skein("G-1", dye_lot="7", price="a fleece", place="chest", day=DAY, notes="soft")
    skein = replace(skein, colour_name="silver")
    yarn = a_yarn(twist="S", fleece_id="Bramble", colour="#8a8580", colour_name="grey")
    length = a_reading(id="l", kind="length", value=213_000, girth_mm=1500, turns=142.0)
    wraps = a_reading(id="w", kind="wraps", value=9_125)
    book = a_book(a_fleece(), yarn, skein, length, wraps, held={"G-1": (96.5, 213)})
    assert list(skein_cells(book)) == [
        {
            "code": "G-1",
            "yarn": "grey two-ply",
            "fibre": "wool",
            "plies": "2",
            "twist": "S",
            "weight": "96.5 g",
            "girth": "1.5 m",
            "turns": "142",
            "finished": "yes",
            "wraps": "9.1250",
            "fleece": "Bramble",
            "bought": "no",
            "dye lot": "7",
            "price": "a fleece",
            "colour": "#8a8580",
            "colour name": "silver",
            "place": "chest",
            "day": "2026-03-01",
            "notes": "soft",
        }
    ]


def test_a_skein_that_was_used_of_has_a_length_and_no_turns_any_more() -> None:
    length = a_reading(id="l", kind="length", value=213_000, girth_mm=1500, turns=142.0)
    book = a_book(a_yarn(), a_skein("G-1"), length, held={"G-1": (50.123, 111.1)})
    (cells,) = skein_cells(book)
    assert (cells["weight"], cells["length"]) == ("50.1230 g", "111.1 m")
    assert "turns" not in cells


def test_a_skein_not_finished_says_so() -> None:
    length = a_reading(id="l", kind="length", value=213_000, finished=False)
    book = a_book(a_yarn(), a_skein("G-1"), length, held={"G-1": (96, 213)})
    assert [one["finished"] for one in skein_cells(book)] == ["no"]


def test_only_what_is_on_the_shelf_is_saved_by_code() -> None:
    skeins = [a_skein("G-3"), a_skein("G-1", None), a_skein("G-2", put_away=DAY), a_skein("G-4")]
    book = a_book(a_yarn(), *skeins, held={"G-3": (9, 0), "G-1": (9, 9), "G-2": (9, 9)})
    cells = list(skein_cells(book))
    assert [one["code"] for one in cells] == ["G-1", "G-3"]
    assert cells[0]["yarn"] == ""
    assert "length" not in cells[1]


def test_an_empty_shelf_is_the_names_of_the_columns(session: Session) -> None:
    assert export_skeins(session).startswith("\ufeffcode,yarn,fibre,")
    assert export_skeins(session).count("\r\n") == 1
