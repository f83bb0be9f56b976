"""Wool that dries, from its weighings to what is said of it."""

from datetime import timedelta

import pytest

from app.book.book import Book
from app.book.event import Event, Line
from app.book.event_note import step_note
from app.book.reading import Reading
from app.book.words import WoolState
from app.craft.drying import Damp
from app.planning.drying import all_drying, drying, in_time
from tests.books import DAY, a_book, a_fleece, a_holding, a_reading


def damp(number: int, grams: float, days: int = 0, minute: int | None = None) -> Reading:
    return a_reading(
        "F",
        round(1000 * grams),
        id=f"{number}",
        wool="damp",
        day=DAY + timedelta(days),
        minute=minute,
    )


def washed(*readings: Reading, from_state: WoolState = "skirted", **fleece: object) -> Book:
    """1000 g of Bramble, washed on the first day."""
    kept = {"yield_pct": 60.0} | fleece
    book = a_book(
        a_fleece(**kept),
        a_holding("F", fleece_id="Bramble", state="drying"),
        *readings,
        held={"F": (1000, 0)},
    )
    wet = Event(2, "prepare", DAY, (Line("F", 0),), step_note(from_state, "drying"))
    return Book(
        fleeces=book.fleeces,
        holdings=book.holdings,
        readings=book.readings,
        events=(*book.events, wet),
    )


def of(book: Book):
    found = drying(book, book.holding["F"])
    assert found is not None
    return found


def test_before_it_is_weighed_the_wash_alone_tells():
    """1000 g skirted at a yield of 60 %, give or take 3 points, and 2 % for the wetting."""
    found = of(washed())
    assert found.expected.value == pytest.approx(600)
    assert found.expected.u == pytest.approx((30**2 + 12**2) ** 0.5, rel=0.01)
    assert (found.weighings, found.dry, found.lost_pct, found.before_g) == ((), False, None, 1000)


def test_raw_wool_was_skirted_in_the_wash():
    assert of(washed(from_state="raw")).expected.value == pytest.approx(510)


def test_carded_wool_that_was_dyed_weighs_what_it_did():
    found = of(washed(from_state="carded"))
    assert (found.expected.value, found.expected.u) == (1000, pytest.approx(20))


def test_weighings_narrow_it():
    found = of(washed(damp(1, 900), damp(2, 700, 1), damp(3, 640, 2)))
    assert found.lost_pct == pytest.approx(100 * 60 / 700)
    assert not found.dry
    assert 580 < found.expected.value < 640
    assert found.expected.u < 25


def test_dry_is_when_two_weighings_agree():
    found = of(washed(damp(1, 900), damp(2, 612, 3), damp(3, 610, 4)))
    assert found.dry
    assert found.expected.value == pytest.approx(606, abs=6)


def test_minutes_tell_weighings_of_one_day_apart():
    assert in_time([damp(2, 700, minute=600), damp(1, 650, minute=900)]) == (
        Damp(0, 700),
        Damp(5, 650),
    )
    assert not of(washed(damp(1, 612, minute=600), damp(2, 611, minute=610))).dry
    assert of(washed(damp(1, 612, minute=600), damp(2, 611, minute=700))).dry


def test_without_minutes_the_later_entry_is_an_hour_later():
    assert in_time([damp(1, 700), damp(2, 650), damp(3, 640, 1)]) == (
        Damp(0, 700),
        Damp(1, 650),
        Damp(24, 640),
    )
    assert in_time([]) == ()


def test_only_damp_weighings_since_the_wash_count():
    readings = (
        damp(1, 950, -3),
        damp(2, 800),
        a_reading("F", 700_000, id="dry"),
        a_reading("F", 9_000, id="wraps", kind="wraps", wool="damp"),
        damp(3, 0),
    )
    assert of(washed(*readings)).weighings == (Damp(0, 800),)


def test_wool_that_came_in_wet_holds_a_quarter_of_water():
    book = a_book(
        a_fleece(), a_holding("F", fleece_id="Bramble", state="drying"), held={"F": (1000, 0)}
    )
    found = of(book)
    assert (found.expected.value, found.before_g) == (750, None)
    assert found.expected.u == pytest.approx(150)


def test_wool_of_no_fleece_is_taken_to_weigh_what_it_did():
    book = a_book(a_holding("F", "fibre", state="drying"), held={"F": (200, 0)})
    wet = Event(2, "prepare", DAY, (Line("F", 0),), step_note("combed", "drying"))
    again = Book(holdings=book.holdings, events=(*book.events, wet))
    assert of(again).expected.value == 200


def test_what_does_not_dry_or_weighs_nothing_has_no_answer():
    carded = a_book(a_holding("F", state="carded"), held={"F": (200, 0)})
    empty = a_book(a_holding("F", state="drying"))
    assert drying(carded, carded.holding["F"]) is None
    assert drying(empty, empty.holding["F"]) is None
    emptied = washed()
    gone = Event(3, "put away", DAY, (Line("F", -1_000_000), Line("waste", 1_000_000)))
    again = Book(fleeces=emptied.fleeces, holdings=emptied.holdings, events=(*emptied.events, gone))
    assert drying(again, again.holding["F"]) is None


def test_all_that_dries_by_its_label():
    book = a_book(
        a_holding("B", state="drying"),
        a_holding("A", "fibre", state="drying"),
        a_holding("C", state="raw"),
        a_holding("D", state="drying", put_away=DAY),
        held={"A": (100, 0), "B": (100, 0), "C": (100, 0), "D": (1, 0)},
    )
    assert [one.holding.code for one in all_drying(book)] == ["A", "B"]
