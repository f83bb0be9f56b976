"""Fibres carried through from the fleece: 300 g of wool and 100 g of alpaca in one batch."""

import pytest

from app.book.book import Book
from app.book.event import Event, Line
from app.book.spinning import FibreShare
from app.craft.care import DROOPS, WOOL
from app.craft.care import UNKNOWN as WASHED_COOL
from app.planning.blend import (
    blend_of,
    blend_shares,
    fibres_in,
    fibres_of,
    fibres_together,
    made_of,
)
from app.planning.trace import Trace, trace
from tests.books import DAY, a_book, a_fleece, a_holding, a_skein, a_yarn


def told(*events: dict[str, float]) -> tuple[Event, ...]:
    return tuple(
        Event(seq, "prepare", DAY, tuple(Line(id, round(1000 * g)) for id, g in moved.items()))
        for seq, moved in enumerate(events, start=1)
    )


def a_batch() -> tuple[Book, Trace]:
    book = a_book(
        a_fleece("Bramble", fibre="Wool"),
        a_fleece("top", fibre="alpaca"),
        a_fleece("bag", blend=(FibreShare("wool", 60), FibreShare("silk", 30))),
        a_holding("F", fleece_id="Bramble"),
        a_holding("T", fleece_id="top"),
        a_holding("bag", fleece_id="bag"),
        a_holding("lost label", fleece_id=None),
        a_holding("mix", "fibre"),
        a_yarn("sock", fibre="", blend=(FibreShare("wool", 75), FibreShare("nylon", 25))),
        a_yarn("own", fibre="mohair"),
        a_skein("S", "own"),
        a_skein("ball", "sock"),
        a_skein("given", "own"),
        a_skein("of the flock", "own", fleece_id="Bramble"),
    )
    events = told(
        {"come in": -300, "F": 300},
        {"come in": -100, "T": 100},
        {"F": -300, "T": -100, "mix": 380, "waste": 20},
        {"mix": -100, "S": 95, "waste": 5},
        {"come in": -50, "ball": 50},
    )
    return book, trace(events)


def test_a_skein_has_the_shares_of_its_batch_whatever_its_yarn_says():
    book, traced = a_batch()
    assert fibres_of(book, traced, "S") == pytest.approx({"wool": 0.75, "alpaca": 0.25})
    assert fibres_of(book, traced, "nobody") == {}


def test_skeins_together_count_by_their_grams():
    """95 g of 3/4 wool and 50 g of 3/4 wool, 1/4 nylon."""
    book, traced = a_batch()
    found = fibres_together(book, traced, {"S": 95, "ball": 50})
    assert found == pytest.approx(
        {"wool": 0.75, "alpaca": 0.25 * 95 / 145, "nylon": 0.25 * 50 / 145}
    )
    assert fibres_together(book, traced, {}) == {}


@pytest.mark.parametrize(
    ("origin", "shares"),
    [
        ("F", {"wool": 1.0}),
        ("bag", {"wool": 0.6, "silk": 0.3, "unknown": 0.1}),
        ("lost label", {"unknown": 1.0}),
        ("nobody", {"unknown": 1.0}),
        ("ball", {"wool": 0.75, "nylon": 0.25}),
        ("given", {"mohair": 1.0}),
        ("of the flock", {"wool": 1.0}),
    ],
)
def test_what_came_in_is_what_its_record_says(origin, shares):
    book, _ = a_batch()
    assert fibres_in(book, origin) == pytest.approx(shares)


def test_what_follows_from_the_shares():
    """75 % of 17 and 25 % of 17: both hold the same water."""
    found = made_of({"wool": 3.0, "alpaca": 1.0})
    assert found is not None
    assert found.label == "75 % wool, 25 % alpaca"
    assert found.shares == {"wool": 0.75, "alpaca": 0.25}
    assert found.regain.value == pytest.approx(0.17)
    assert found.care == (WOOL, DROOPS)
    (step,) = found.working
    assert "75.0 % wool of the dry mass × 17 %" in step.how


def test_unknown_stays_unknown():
    found = made_of({"unknown": 0.5, "wool": 0.5})
    assert found is not None
    assert found.label == "50 % wool, 50 % unknown fibre"
    assert found.regain.u > 0.02
    assert "unknown of the dry mass, its water not known" in found.working[0].how
    alone = made_of({"unknown": 1.0})
    assert alone is not None
    assert alone.care == (WASHED_COOL,)
    assert made_of({}) is None


def test_a_blend_is_kept_as_percents():
    assert blend_of({"silk": 0.25, "wool": 0.75}) == (
        FibreShare("wool", 75),
        FibreShare("silk", 25),
    )
    assert blend_of({"wool": 1.0}) == ()
    assert blend_shares(()) == {}
    assert blend_shares((FibreShare("", 20), FibreShare("wool", 80))) == {
        "unknown": 0.2,
        "wool": 0.8,
    }
    assert blend_shares((FibreShare("wool", 90), FibreShare("silk", 30))) == {
        "wool": 0.75,
        "silk": 0.25,
    }
