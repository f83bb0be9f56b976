"""Swatches written down, put away, and their numbers handed on to garments."""

from datetime import date

import pytest
from sqlmodel import Session

from app.book.gauge import Gauge
from app.book.swatch import Count, Swatch, gauge_of
from app.store.records import get, load_book, put
from app.work.refusal import Refusal
from app.work.swatch_known import all_swatches, known_swatch
from app.work.swatch_save import put_swatch_away, save_swatch, take_swatch_out
from app.work.swatch_take import knit_to, take_gauge
from tests.books import a_part, a_plan, a_swatch, a_yarn

DAY = date(2026, 5, 1)
ANEW = Count(24.0, 100, 33.0, 100)


@pytest.fixture
def grey(writing: Session) -> Session:
    put(writing, a_yarn())
    return writing


def test_two_swatches_do_not_share_a_name(grey: Session) -> None:
    save_swatch(grey, a_swatch())
    save_swatch(grey, a_swatch(notes="counted again"))
    with pytest.raises(Refusal) as refused:
        save_swatch(grey, a_swatch("another", name="First Try"))
    assert refused.value.field == "name"
    assert get(grey, Swatch, "another") is None


def test_put_away_and_taken_out_it_is_as_it_was(grey: Session) -> None:
    swatch = save_swatch(grey, a_swatch())
    put_swatch_away(grey, swatch, DAY)
    away = get(grey, Swatch, swatch.id)
    assert away == a_swatch(put_away=DAY)
    take_swatch_out(grey, away)
    assert get(grey, Swatch, swatch.id) == swatch


def test_garments_in_their_order_with_the_parts_that_took_it(grey: Session) -> None:
    swatch = save_swatch(grey, a_swatch())
    gauge = gauge_of(swatch)
    put(grey, a_plan("second", priority=6, gauge=gauge))
    put(grey, a_plan("first", priority=5, gauge=None))
    put(grey, a_plan("neither", priority=7))
    put(grey, a_part("sleeve", "first", gauge=gauge))
    put(grey, a_part("body", "first", gauge=Gauge(20.0, 28.0)))
    first, second = knit_to(load_book(grey), swatch)
    assert [one.name for one in first.records] == ["sleeve"]
    assert [one.name for one in second.records] == ["second"]
    assert not first.moved_on
    assert not first.may_take
    assert not take_gauge(grey, swatch, "first")


def test_only_what_took_it_earlier_takes_the_new_numbers(grey: Session) -> None:
    gauge = gauge_of(save_swatch(grey, a_swatch()))
    put(grey, a_plan("vest", gauge=gauge))
    put(grey, a_part("back", "vest", gauge=gauge))
    put(grey, a_part("band", "vest", gauge=Gauge(24.0, 34.0)))
    anew = save_swatch(grey, a_swatch(finished=ANEW))
    assert take_gauge(grey, anew, "vest")
    book = load_book(grey)
    assert book.plan["vest"].gauge == book.part["back"].gauge == gauge_of(anew)
    assert book.part["band"].gauge == Gauge(24.0, 34.0)
    assert not take_gauge(grey, anew, "vest")
    assert not take_gauge(grey, anew, "no such garment")


@pytest.mark.parametrize("state", ["being knit", "finished", "put away"])
def test_what_was_cast_on_takes_none(grey: Session, state: str) -> None:
    gauge = gauge_of(save_swatch(grey, a_swatch()))
    put(grey, a_plan("vest", gauge=gauge, state=state))
    anew = save_swatch(grey, a_swatch(finished=ANEW))
    (vest,) = knit_to(load_book(grey), anew)
    assert vest.moved_on
    assert not take_gauge(grey, anew, "vest")


def test_what_is_known_of_swatches(grey: Session) -> None:
    save_swatch(grey, a_swatch("Second", needle_mm=4.5, finished=Count(20.0, 100, 28.0, 100)))
    save_swatch(grey, a_swatch("first", put_away=DAY))
    book = load_book(grey)
    assert [one.swatch.name for one in all_swatches(book)] == ["first", "Second"]
    known = known_swatch(book, book.swatch["first"])
    assert (known.asked, known.garments) == (None, ())
    assert known.line.line is not None
    asked = known_swatch(book, book.swatch["first"], 21.0).asked
    assert asked is not None
    assert asked.needle is not None
    assert asked.needle.value == pytest.approx(4.25)
    low, high = asked.between
    assert low < 4.25 < high
