import pytest

from app.book.event import Line
from app.book.spinning import Spinning
from app.book.woolbook import Entry
from app.planning import reckon
from app.planning.bobbins import bobbin_answer, started
from tests.books import DAY, a_book, a_holding, a_reading, a_yarn, an_event


def a_bobbin(id="bobbin 1", yarn_id="grey two-ply", **other):
    return a_holding(id, "bobbin", yarn_id=yarn_id, state="part spun", **other)


def checked(tex, instrument="scale", number=1):
    id = f"check {number}"
    return a_reading("bobbin 1", round(1000 * tex), id=id, kind="grist", instrument=instrument)


def answer(*more, held=None, **yarn):
    planned = {"target_tex": 450.0, "spinning": Spinning(wanted_mm=400_000)}
    bobbin = a_bobbin()
    book = a_book(a_yarn(**planned | yarn), bobbin, *more, held=held)
    return bobbin_answer(book, reckon(book), bobbin)


MEANT = 450 / 2 * 0.95 * 0.92 / 0.98


def test_a_bobbin_not_begun():
    found = answer()
    assert (found.g, found.checks, found.last, found.ends) == (0.0, (), None, {})
    assert found.meant_tex == found.tex == pytest.approx(MEANT)


def test_checks_are_compared_with_the_single_meant():
    found = answer(checked(250), checked(200, "gauge", 2))
    (first, heavy), (second, close) = found.checks
    assert (first.tex, second.tex) == (250.0, 200.0)
    assert heavy.word == "heavier than meant"
    assert heavy.tex.u == pytest.approx(25)
    assert close.tex.u == pytest.approx(40)
    assert found.last is close
    assert found.tex == pytest.approx(225)


def test_what_the_end_gives():
    """10 g of the single meant: so many metres, half less 5 %, a third less 5 %."""
    found = answer(held={"bobbin 1": (10, 0)})
    metres = 10_000 / MEANT
    assert found.ends["kept"] == pytest.approx(metres)
    assert found.ends["plied on itself"] == pytest.approx(metres / 2 * 0.95)
    assert found.ends["chain-plied"] == pytest.approx(metres / 3 * 0.95)


def test_the_single_meant_is_the_same_where_no_garment_waits_for_any():
    assert answer(spinning=None).meant_tex == pytest.approx(MEANT)


def test_a_yarn_without_a_plan_has_nothing_to_compare_with():
    found = answer(checked(250), spinning=None, target_tex=None)
    assert found.meant_tex is None
    assert found.checks[0][1] is None
    assert found.tex == 250.0
    assert answer(spinning=None, target_tex=None, held={"bobbin 1": (10, 0)}).ends == {}


def test_a_bobbin_of_no_yarn():
    bobbin = a_bobbin(yarn_id=None)
    book = a_book(bobbin)
    assert bobbin_answer(book, reckon(book), bobbin).yarn is None


def test_bobbins_that_are_on_the_wheel():
    gone, full, fresh = a_bobbin("b 3", put_away=DAY), a_bobbin("b 2"), a_bobbin("b 1")
    empty, other = a_bobbin("b 4"), a_bobbin("b 5", "another")
    emptied = Entry("spin", (Line("b 4", -10_000), Line("waste", 10_000)))
    records = (a_yarn(), a_yarn("another"), gone, empty, full, fresh, other)
    book = a_book(*records, an_event(9, emptied), held={"b 2": (40, 0), "b 4": (10, 0)})
    assert [one.code for one in started(book, "grey two-ply")] == ["b 1", "b 2"]
