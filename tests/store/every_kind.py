"""A small sound book with a record of every kind, and most fields filled in."""

from datetime import date
from pathlib import Path

from app.book import woolbook
from app.book.book import Book
from app.book.design import Choice, Design
from app.book.exchange import in_order
from app.book.gauge import Gauge
from app.book.holding import ColourAt
from app.book.knitting import CastOn, Settled, Took
from app.book.pattern import Share
from app.book.person import Measure
from app.book.plan import Extra, Losses, RoleYarn, Worked
from app.book.sequence import Band, Sequence, SequenceYarn
from app.book.settings import Prices, Settings
from app.book.shape import Rectangle, Run, Runs, Strand
from app.book.spinning import FibreShare, Spinning
from app.book.swatch import Count
from app.book.woolbook import Portion
from app.store.balance import wrong_balances
from app.store.engine import open_store
from app.store.fill import fill
from app.store.records import load_book
from tests.books import (
    a_book,
    a_fleece,
    a_holding,
    a_mark,
    a_part,
    a_pattern,
    a_person,
    a_photo,
    a_plan,
    a_promise,
    a_reading,
    a_skein,
    a_stint,
    a_swatch,
    a_weighing,
    a_wheel,
    a_yarn,
    an_errand,
    an_event,
    some_progress,
)

FLEECE = a_holding("F-1", fleece_id="Bramble", state="raw", day=date(2026, 3, 1))
SKEIN = a_skein(
    "G-1",
    day=date(2026, 4, 2),
    colour="#8a7f72",
    price="£4",
    place="basket",
    colours=(ColourAt(0, "#8a7f72"), ColourAt(60_000, "#b0a695")),
    look_again=date(2026, 6, 1),
    apart=True,
)
ARRIVED = woolbook.arrive([Portion(FLEECE, 2_000_000), Portion(SKEIN, 96_000, 213_000)])
UNDONE = woolbook.arrive([Portion(SKEIN, 5_000, 10_000)])

EVERY_KIND = a_book(
    a_person(notes="likes it loose"),
    a_fleece(yield_pct=60.0, micron=27.5, staple_mm=90, colour="#efe9dd"),
    a_yarn(fleece_id="Bramble", twist="S", target_tex=450.0),
    a_yarn("alpaca, shop", bought=True, ball_mg=50_000, ball_mm=125_000, fibre="alpaca"),
    a_fleece("bag of batts", blend=(FibreShare("wool", 70.0), FibreShare("silk", 30.0))),
    a_yarn(
        "like the grey",
        blend=(FibreShare("wool", 100.0),),
        spinning=Spinning("socks", "upright wheel", 14.0, 25, chained=True, wanted_mm=400_000),
    ),
    a_swatch(weight_mg=10_000, whole_stitches=1228.0, unravelled=40.0, thread_mm=724),
    a_swatch(
        "loose try",
        pattern="garter stitch",
        finished=None,
        worked=Count(18.5, 101, 34.0, 100),
        put_away=date(2026, 4, 12),
    ),
    a_pattern(source="a booklet of 1987", shares=(Share("Body", 55.0),)),
    a_pattern("old one", sizes=(), put_away=date(2026, 4, 20)),
    FLEECE,
    SKEIN,
    a_skein("A-1", "alpaca, shop", dye_lot="7", put_away=date(2026, 5, 1)),
    a_reading(minute=615),
    a_reading(id="by reel", kind="length", value=213_000, girth_mm=1500, turns=142.0),
    an_event(1, ARRIVED, note="as it was when the book began"),
    an_event(2, UNDONE, step="card", passes=2),
    an_event(3, woolbook.undo(an_event(2, UNDONE), [an_event(2, UNDONE)]), undoes=2),
    a_plan(person_id="Ines", wanted_by=date(2026, 12, 1), losses=Losses(), sureness_pct=95.0),
    a_plan(
        "hat",
        priority=2,
        yarns=(),
        design=Design(
            "hat", (Measure("head", 560),), (Measure("head", -40),), (Choice("crown", "round"),)
        ),
    ),
    a_plan(
        "loan",
        pattern_id="plain pullover",
        size="2",
        follows="stitches",
        yarns=(),
        cast_on=CastOn(date(2026, 4, 5), (Settled("hand", 1.02, 0.03),)),
        finished_on=date(2026, 4, 29),
        took=(Took("body", mg=211_000, mm=480_000, minutes=1900),),
        measured=(Measure("chest", 1050),),
    ),
    a_part(gauge=Gauge(20.0, 28.0, washed=False, needle_mm=3.75, swatch_id="loose try")),
    a_part("cuff", copies=2, position=2, shape=Runs((Run(12, 40, 44, "2×2 rib"),))),
    a_part(
        "yoke", position=3, shape=Rectangle(500, 200), yarns=(RoleYarn("main", "alpaca, shop"),)
    ),
    a_part(
        "band",
        position=4,
        shape=Runs((Run(4, 90, 90, strands=(Strand(ends=2),)),)),
        sequence=Sequence("stripes", bands=(Band("main", 2), Band("second", 2)), block_rows=2),
        yarns=(RoleYarn("second", "alpaca, shop"),),
    ),
    a_part(
        "brim",
        "hat",
        place="band",
        yarns=(RoleYarn("second", "alpaca, shop"),),
        in_round=True,
        edges="cast on, stretchy cast-off",
        extras=(Extra("a cable panel", 6.0, 2.0),),
        worked=Worked(115.0, 110.0),
        sequence=Sequence(
            "fade", (SequenceYarn("main", 1.0, 0.25), SequenceYarn("second", 0.0, 0.75))
        ),
    ),
    a_promise(position=2, from_inside=True),
    an_errand(plan_id="pullover", done=date(2026, 5, 2)),
    a_wheel(bobbin_mg=110_000),
    a_stint(holding_id="G-1", yarn_id="grey two-ply", plan_id="pullover", mm=40_000),
    a_mark(why="the scale stood askew"),
    some_progress(),
    a_weighing(minute=1210),
    a_photo(fleece_id="Bramble", holding_id="G-1", plan_id="pullover", day=date(2026, 4, 3)),
    settings=Settings(
        length_unit="yd", decimal=",", losses=Losses(tail_mm=150), prices=Prices(cut=3.0)
    ),
)


def make_data(folder: Path, book: Book = EVERY_KIND) -> Path:
    """Data in `folder` that holds `book`; answers the folder."""
    store = open_store(folder)
    with store.writing() as session:
        fill(session, book)
    store.close()
    return folder


def book_in(folder: Path) -> Book:
    """The book in a folder, whose balances are right."""
    store = open_store(folder)
    with store.reading() as session:
        book = load_book(session)
        assert wrong_balances(session) == []
    store.close()
    return in_order(book)


def is_whole(folder: Path, book: Book = EVERY_KIND) -> bool:
    """Whether the data in a folder is this book, to the last field."""
    return book_in(folder) == in_order(book)
