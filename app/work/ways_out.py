"""The ways out of a garment's shortfall: look for them, look at one, take one."""

from dataclasses import dataclass
from threading import Lock

from sqlmodel import Session

from app.book.book import Book
from app.book.errand import Errand
from app.book.plan import Part, Plan, Promise
from app.book.stamp import stamp
from app.planning import reckon
from app.planning.answers import Reckoning
from app.planning.ways_out import ways
from app.planning.ways_out.judged import Judged, Looked, search_ways, way_out, ways_out
from app.planning.what_if import Changed, WhatIf
from app.store.records import put, remove
from app.store.version import data_version
from app.work.beside import ask_beside, forget_beside, stop_beside
from app.work.reckoning import Known, current

ORDER: tuple[type[Changed], ...] = (Plan, Part, Promise, Errand)
"""Every record after those it points to."""


AT_ONCE = 250
"""Up to so many skeins, fleeces and parts the ways out are looked for while she waits."""


class NoSuchWay(Exception):
    """Met when a way out is asked for that is not there any more, or promises something else."""


@dataclass(frozen=True, slots=True)
class Offer:
    """What was offered, and of what: its digest tells whether it still stands."""

    key: str
    plan: Plan
    parts: tuple[Part, ...]
    promises: tuple[Promise, ...]
    odds: float
    short_m: float


@dataclass(frozen=True, slots=True)
class Seen:
    """A way out with the books before and after it, both reckoned."""

    judged: Judged
    before: tuple[Book, Reckoning]
    after: tuple[Book, Reckoning]


_kept: dict[str, tuple[int, dict[str, tuple[Judged, ...]]]] = {}
_one_at_a_time = Lock()


def ways_now(session: Session, plan_id: str) -> tuple[Judged, ...]:
    """The ways out of a plan, the best first: looked for once for each version of the data.
    KeyError for a plan that is gone."""
    known, version = current(session), data_version(session)
    place = str(session.connection().engine.url)
    with _one_at_a_time:
        if version < 0 or place not in _kept or _kept[place][0] != version:
            _kept[place] = version, {}
        found = _kept[place][1]
        if plan_id not in found:
            found[plan_id] = ways_out(known.book, known.reckoning, plan_id)
        return found[plan_id]


def ways_looked_for(session: Session, plan_id: str) -> tuple[Looked, bool]:
    """The ways out as far as they were looked for, and whether that still goes on: at once on a
    small shelf, beside the program on a large one. KeyError for a plan that is gone."""
    known = current(session)
    if len(known.book.holdings) + len(known.book.parts) <= AT_ONCE or not _short(known, plan_id):
        return Looked(ways_now(session, plan_id), len(ways()), len(ways())), False
    heard = ask_beside(session, _question(plan_id), search_ways, known.book, plan_id)
    return heard.told or Looked((), 0, len(ways())), heard.going_on


def stop_ways(session: Session, plan_id: str) -> None:
    """Look no further for ways out; those found stay."""
    stop_beside(session, _question(plan_id))


def look_again(session: Session, plan_id: str) -> None:
    """Look for ways out anew, where that was stopped."""
    forget_beside(session, _question(plan_id))


def _question(plan_id: str) -> tuple[str, str]:
    return "ways out", plan_id


def _short(known: Known, plan_id: str) -> bool:
    return known.reckoning.plan(plan_id).short_m > 0


def look_at(session: Session, plan_id: str, key: str) -> Seen:
    """One way out as it would be, nothing saved; NoSuchWay where it is not there any more."""
    known = current(session)
    judged = way_out(known.book, known.reckoning, plan_id, key)
    if judged is None:
        raise NoSuchWay(key)
    book = judged.proposal.seen.in_book(known.book)
    return Seen(judged, (known.book, known.reckoning), (book, reckon(book)))


def offer_stamp(book: Book, judged: Judged) -> str:
    """A digest that changes with anything of the plan, or with what the way out promises."""
    plan_id = judged.before.plan_id
    return stamp(
        Offer(
            judged.proposal.key,
            book.plan[plan_id],
            tuple(book.parts_of.get(plan_id, ())),
            tuple(book.promises_of.get(plan_id, ())),
            round(judged.after.odds, 6),
            round(judged.after.short_m, 3),
        )
    )


def take_way(session: Session, plan_id: str, key: str, typed_stamp: str) -> Judged:
    """Change the plan as a way out says; NoSuchWay where what was offered does not stand."""
    known = current(session)
    judged = way_out(known.book, known.reckoning, plan_id, key)
    if judged is None or offer_stamp(known.book, judged) != typed_stamp:
        raise NoSuchWay(key)
    save_what_if(session, judged.proposal.change)
    return judged


def save_what_if(session: Session, change: WhatIf) -> None:
    """Save what was only looked at."""
    for one in sorted(change.gone, key=_place, reverse=True):
        remove(session, one)
    for one in sorted(change.put, key=_place):
        put(session, one)


def _place(record: Changed) -> int:
    return ORDER.index(type(record))
