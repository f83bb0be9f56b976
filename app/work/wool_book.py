"""Read in the wool book: a page of events, a page of balances."""

from dataclasses import dataclass, replace
from datetime import date, timedelta

from sqlmodel import Session

from app.book.event import Event
from app.book.holding import Holding
from app.planning.look_again import LOOK_EVERY_DAYS, lies_with
from app.store.records import get, load_book, put
from app.store.wool_list import (
    EVENTS,
    PAGE,
    BalanceLine,
    Shelf,
    balance_page,
    event_page,
    sums,
    tags,
    undone_among,
)


@dataclass(frozen=True, slots=True)
class Events:
    """A page of events, the latest first; `more` where there are earlier ones; the `tags` of their
    holdings, those `undone`, and the `sums` of the sinks in mg."""

    events: list[Event]
    more: bool
    tags: dict[str, BalanceLine]
    undone: frozenset[int]
    sums: dict[str, int]


@dataclass(frozen=True, slots=True)
class Balances:
    """A page of balances; `more` where there is a next page."""

    lines: list[BalanceLine]
    more: bool
    sums: dict[str, int]


def read_events(session: Session, before: int | None, only_corrections: bool) -> Events:
    """The events of a page."""
    found = event_page(session, before, only_corrections)
    events = found[:EVENTS]
    ids = {line.holding_id for one in events for line in one.lines}
    return Events(
        events=events,
        more=len(found) > EVENTS,
        tags=tags(session, ids),
        undone=undone_among(session, (one.seq for one in events)),
        sums=sums(session),
    )


def read_balances(session: Session, shelf: Shelf, page: int) -> Balances:
    """The balances of a page."""
    found = balance_page(session, shelf, page)
    return Balances(found[:PAGE], len(found) > PAGE, sums(session))


def looked_at(session: Session, holding_id: str, day: date) -> Holding | None:
    """Note that a holding was looked at and is clean, with all the wool of its fleece: it need not
    lie apart, and is looked at again in a season. None where there is none."""
    holding = get(session, Holding, holding_id)
    if holding is None:
        return None
    again = day + timedelta(days=LOOK_EVERY_DAYS)
    for one in load_book(session).holdings:
        if lies_with(one) == lies_with(holding) and one.put_away is None:
            put(session, replace(one, apart=False, look_again=again))
    return replace(holding, apart=False, look_again=again)
