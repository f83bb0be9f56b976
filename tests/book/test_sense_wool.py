"""Each field of wheels, time, photos, blends and turns that makes no sense is named."""

import pytest

from app.book.book import Book
from app.book.checks import check
from app.book.holding import ColourAt
from app.book.knitting import CastOn, Settled, Took
from app.book.person import Measure
from app.book.sequence import Band, Sequence, SequenceYarn
from app.book.settings import Prices, Settings
from app.book.spinning import FibreShare, Spinning
from app.book.wheel import Ratio
from tests.books import (
    DAY,
    a_book,
    a_fleece,
    a_part,
    a_photo,
    a_plan,
    a_promise,
    a_reading,
    a_skein,
    a_stint,
    a_weighing,
    a_wheel,
    a_yarn,
    some_progress,
)
from tests.store.every_kind import EVERY_KIND

ABOVE = "must be more than zero."
NOT_BELOW = "must not be below zero."
A_SHARE = "must lie between 0 and 1."
NO_COLOUR = "must be written like #c8b79a, or be empty."
TOO_MUCH = "has shares of more than 100 percent together."


def in_turn(**other):
    return a_part(sequence=Sequence(**{"kind": "fade"} | other))


@pytest.mark.parametrize(
    ("record", "field", "text"),
    [
        (a_fleece(blend=(FibreShare("silk", 0.0),)), "blend, silk", ABOVE),
        (a_yarn("other", blend=(FibreShare("a", 60.0), FibreShare("b", 50.0))), "blend", TOO_MUCH),
        (a_yarn("other", spinning=Spinning(ratio=0.0)), "spinning.ratio", ABOVE),
        (a_yarn("other", spinning=Spinning(wanted_mm=-1)), "spinning.wanted_mm", ABOVE),
        (a_skein("G-2", colours=(ColourAt(-1, "#8a7f72"),)), "colours", NOT_BELOW),
        (a_skein("G-2", colours=(ColourAt(0, ""),)), "colours", NO_COLOUR),
        (a_reading(minute=1440), "minute", "must lie between 0 and 1,439."),
        (a_wheel(bobbin_mg=0), "bobbin_mg", ABOVE),
        (a_wheel(ratios=(Ratio(0.0),)), "ratios", ABOVE),
        (a_stint(minutes=0), "minutes", ABOVE),
        (a_stint(mg=-1), "mg", ABOVE),
        (a_photo(width=0), "width", ABOVE),
        (a_photo(sha256="../passwd"), "sha256", "must be 64 hexadecimal digits."),
        (in_turn(from_row=0), "sequence.from_row", ABOVE),
        (in_turn(to_row=0), "sequence.to_row", ABOVE),
        (in_turn(block_rows=0), "sequence.block_rows", ABOVE),
        (in_turn(bands=(Band("main", 0),)), "sequence, main, rows", ABOVE),
        (in_turn(yarns=(SequenceYarn("main", 1.1, 0.0),)), "sequence, main, share", A_SHARE),
        (in_turn(yarns=(SequenceYarn("main", 1.0, -0.1),)), "sequence, main, share_to", A_SHARE),
        (some_progress(rows=-1), "rows", NOT_BELOW),
        (some_progress(piece=0), "piece", ABOVE),
        (a_weighing(piece=0), "piece", ABOVE),
        (a_weighing(scale_mg=0), "scale_mg", ABOVE),
        (a_weighing(mg=-1), "mg", NOT_BELOW),
        (a_weighing(minute=-1), "minute", "must lie between 0 and 1,439."),
        (a_plan("other", took=(Took("body", mg=-1),)), "took, mg", NOT_BELOW),
        (a_plan("other", measured=(Measure("chest", 0),)), "measured, chest", ABOVE),
        (
            a_plan("other", cast_on=CastOn(DAY, (Settled("hand", 0.0, 0.1),))),
            "cast_on, hand",
            ABOVE,
        ),
        (
            a_plan("other", cast_on=CastOn(DAY, (Settled("x", 1.0, -1.0),))),
            "cast_on, x, u",
            NOT_BELOW,
        ),
        (a_promise(position=-1), "position", NOT_BELOW),
    ],
)
def test_a_field_that_makes_no_sense(record, field, text):
    others = [a_yarn(), a_skein(), a_plan()]
    others += [] if isinstance(record, type(a_part())) else [a_part()]
    (finding,) = check(a_book(*others, record, held={"G-1": (96, 213)}))
    assert (finding.field, finding.text) == (field, text)


@pytest.mark.parametrize(
    ("settings", "field"),
    [
        (Settings(prices=Prices(cut=-1.0)), "prices.cut"),
        (Settings(evening_minutes=0), "evening_minutes"),
    ],
)
def test_settings_that_make_no_sense(settings, field):
    (finding,) = check(a_book(settings=settings))
    assert (finding.record, finding.field) == ("settings", field)


def test_rounded_shares_may_come_to_a_little_more_than_all():
    thirds = tuple(FibreShare(name, 33.4) for name in ("wool", "silk", "alpaca"))
    assert check(a_book(a_fleece(blend=thirds))) == []


@pytest.mark.parametrize(
    ("record", "named"),
    [
        (a_stint(yarn_id="gone"), "120 minutes of spin on 2026-04-30"),
        (a_photo(plan_id="gone", caption="on the line"), "photo on the line"),
        (some_progress(plan_id="gone"), "40 rows of gone"),
        (a_weighing(holding_id="gone"), "weighing of gone on 2026-04-30"),
        (a_photo(fleece_id="gone"), "photo 0f0f0f0f0f0f"),
        (a_yarn(spinning=Spinning(wheel_id="gone")), "yarn grey two-ply"),
        (a_yarn(spinning=Spinning(like_yarn_id="gone")), "yarn grey two-ply"),
    ],
)
def test_a_record_that_names_what_is_not_there(record, named):
    part = a_book(a_yarn("meant"), a_plan(yarns=()), a_part(), record)
    (finding,) = check(part)
    assert finding.record == named
    assert finding.text == "names gone, which is not in the book."


def test_a_book_with_a_record_of_every_kind_is_whole():
    assert all(getattr(EVERY_KIND, name) for name in Book.__dataclass_fields__)
    assert check(EVERY_KIND) == []
