"""Books and histories that hypothesis draws: anything a type allows, or only what can happen."""

from collections.abc import Callable, Mapping
from contextlib import suppress
from dataclasses import fields, is_dataclass, replace
from datetime import date
from types import NoneType, UnionType
from typing import Any, Literal, Union, get_args, get_origin, get_type_hints

from hypothesis import strategies as st

from app.book import woolbook
from app.book.book import Book
from app.book.codec import LARGEST
from app.book.errors import WoolBookError
from app.book.event import Balance, Event, balances
from app.book.holding import Holding
from app.book.settings import Settings
from app.book.shape import Counted
from app.book.woolbook import Entry, Portion
from app.book.words import FOLLOWS
from tests.books import (
    a_book,
    a_fleece,
    a_holding,
    a_part,
    a_pattern,
    a_person,
    a_plan,
    a_promise,
    a_reading,
    a_skein,
    a_swatch,
    a_yarn,
    an_event,
)


def anything(hint: Any) -> st.SearchStrategy[Any]:
    """Any value of the type, sensible or not: what the codec must carry."""
    if is_dataclass(hint):
        hints = get_type_hints(hint)
        return st.builds(hint, **{one.name: anything(hints[one.name]) for one in fields(hint)})
    if get_origin(hint) is Literal:
        return st.sampled_from(get_args(hint))
    if get_origin(hint) is tuple:
        return st.lists(anything(get_args(hint)[0]), max_size=3).map(tuple)
    if get_origin(hint) in (Union, UnionType):
        return st.one_of(*(anything(one) for one in get_args(hint)))
    return _PLAIN[hint]


_PLAIN: dict[Any, st.SearchStrategy[Any]] = {
    str: st.text(max_size=20),
    bool: st.booleans(),
    int: st.integers(-LARGEST, LARGEST),
    float: st.floats(allow_nan=False, allow_infinity=False),
    date: st.dates(),
    NoneType: st.none(),
}

ROOMS: tuple[Holding, ...] = (
    a_holding("F-1", fleece_id="Bramble", state="raw"),
    a_holding("B-1", "fibre", fleece_id="Bramble", state="carded"),
    a_holding("bobbin 1", "bobbin"),
    a_holding("bobbin 2", "bobbin"),
    a_skein("G-1"),
    a_skein("G-2"),
    a_holding("ball 1", "ball", yarn_id="grey two-ply"),
    a_holding("end 1", "left-over", yarn_id="grey two-ply"),
    a_holding("worn", "garment", plan_id="pullover"),
)
"""The holdings that random histories move wool between."""

FLEECE, FIBRE, BOBBINS, YARN, GARMENT = ROOMS[0], ROOMS[1], ROOMS[2:4], ROOMS[4:8], ROOMS[8]
Draw = Callable[[st.SearchStrategy[Any]], Any]
Held = Mapping[str, Balance]


@st.composite
def histories(draw: Draw) -> tuple[Event, ...]:
    """A history that the wool book allows, among the holdings of ROOMS."""
    events: list[Event] = []
    for step in draw(st.lists(st.sampled_from((*STEPS, None)), max_size=15)):
        undone = draw(st.sampled_from(events)) if step is None and events else None
        with suppress(WoolBookError):
            if undone:
                entry, undoes = woolbook.undo(undone, events), undone.seq
            else:
                entry, undoes = (step or _arrive)(draw, balances(events)), None
            events.append(an_event(len(events) + 1, entry, undoes=undoes))
    return tuple(events)


@st.composite
def books(draw: Draw) -> Book:
    """A sound book: a random history, two plans with parts, and promises the skeins can keep."""
    events = draw(histories())
    parts = [a_part(), a_part("scarf", "loan", shape=Counted(60, 400), copies=2)]
    records = [a_person(), a_fleece(), a_yarn(), a_swatch(), a_pattern(), *ROOMS, *events, *parts]
    follows = draw(st.sampled_from(FOLLOWS))
    drawn = {"pattern_id": "plain pullover", "size": "2", "follows": follows}
    records += [a_plan(person_id="Ines"), a_plan("loan", priority=2, yarns=(), **drawn)]
    book = a_book(*records, settings=replace(Settings(), decimal=draw(st.sampled_from(".,"))))
    promises = []
    for skein in YARN:
        mm = book.balances.get(skein.id, Balance()).mm
        if mm and draw(st.booleans()):
            part = draw(st.sampled_from(parts))
            one = {"part_id": part.id, "plan_id": part.plan_id}
            promises.append(a_promise(skein.id, draw(st.integers(1, mm)), **one))
    return replace(book, promises=tuple(promises))


def _some(draw: Draw, held: Held, holding: Holding) -> Portion:
    now = held.get(holding.id, Balance())
    mm = draw(st.integers(0, max(now.mm, 0)))
    return Portion(holding, draw(st.integers(0, max(now.mg, 0))), mm)


def _made(draw: Draw, holding: Holding) -> Portion:
    mm = draw(st.integers(0, 300_000)) if holding in YARN else 0
    return Portion(holding, draw(st.integers(0, 2_000_000)), mm)


def _arrive(draw: Draw, _held: Held) -> Entry:
    return woolbook.arrive([_made(draw, draw(st.sampled_from(ROOMS)))])


def _prepare(draw: Draw, held: Held) -> Entry:
    into = draw(st.sampled_from([FLEECE, FIBRE]))
    return woolbook.prepare(held, _some(draw, held, FLEECE), _made(draw, into))


def _spin(draw: Draw, held: Held) -> Entry:
    taken = [_some(draw, held, one) for one in draw(st.sampled_from([[FIBRE], [*BOBBINS]]))]
    return woolbook.spin(held, taken, [_made(draw, draw(st.sampled_from([*BOBBINS, *YARN])))])


def _wind(draw: Draw, held: Held) -> Entry:
    taken = _some(draw, held, YARN[0])
    half = Portion(YARN[2], taken.mg // 2, taken.mm // 2)
    return woolbook.wind(held, taken, [half, replace(half, holding=YARN[1])])


def _use(draw: Draw, held: Held) -> Entry:
    taken = [_some(draw, held, one) for one in YARN[:3]]
    left = Portion(YARN[3], sum(one.mg for one in taken) // 4, sum(one.mm for one in taken) // 4)
    return woolbook.use(held, taken, GARMENT, [left], waste_mg=draw(st.integers(0, 500)))


def _rip(draw: Draw, held: Held) -> Entry:
    out = _some(draw, held, GARMENT)
    return woolbook.rip(held, out, [Portion(YARN[3], out.mg, draw(st.integers(0, 100_000)))])


def _correct(draw: Draw, held: Held) -> Entry:
    holding = draw(st.sampled_from(ROOMS))
    reading = a_reading(holding.id, draw(st.integers(0, 2_000_000)))
    found = woolbook.correct(held, holding, reading)
    return found or Entry("correct", ())


def _put_away(draw: Draw, held: Held) -> Entry:
    return woolbook.put_away(held, draw(st.sampled_from(ROOMS)))


STEPS = (_arrive, _prepare, _spin, _wind, _use, _rip, _correct, _put_away)
