"""Look through the skeins: one page of the list, and what goes with it.

The page itself is asked of the database each time. The totals and the choices of the filters stay
true as long as the data is not changed, so they are kept by its version.
"""

import re
from dataclasses import dataclass, field, replace
from itertools import groupby
from operator import attrgetter
from threading import Lock

from sqlmodel import Session

from app.store.plan_find import any_plan
from app.store.skein_list import (
    PAGE,
    SkeinFilter,
    SkeinLine,
    SkeinSort,
    SkeinTotal,
    fibres,
    skein_ids,
    skein_page,
    skein_total,
)
from app.store.version import data_version
from app.store.yarn_totals import yarn_names
from app.work.reckoning import current

ALIKE: dict[SkeinSort, str] = {"grist": "tex", "metres": "mm", "grams": "mg", "day": "day"}
"""The field of a line that an order goes by, and in which many may be alike."""

MOST_KEPT = 200
"""How many totals of different filters are kept."""


@dataclass(frozen=True, slots=True)
class Browsed:
    """A page of skeins; `more` where a later page exists; `yarns` are names by id.

    `free_mm` of a line is what no plan was promised nor has in reserve; of the `total` it is what
    was not promised, `reserved_mm` of it in reserve.
    """

    lines: list[SkeinLine]
    more: bool
    total: SkeinTotal
    reserved_mm: int
    fibres: list[str]
    yarns: dict[str, str]


@dataclass(slots=True)
class _Kept:
    version: int
    fibres: list[str]
    yarns: dict[str, str]
    reserved: dict[str, int]
    totals: dict[SkeinFilter, tuple[SkeinTotal, int]] = field(default_factory=dict)


_kept: dict[str, _Kept] = {}
_one_at_a_time = Lock()


def browse(session: Session, wanted: SkeinFilter) -> Browsed:
    """The skeins asked for, with the totals of all pages."""
    lines = skein_page(session, wanted)
    with _one_at_a_time:
        kept = _kept_now(session)
        total, reserved = _total(session, kept, replace(wanted, sort="grist", page=1))
    page = alike_by_code(lines[:PAGE], wanted.sort)
    shown = [_less_reserve(one, kept.reserved.get(one.id, 0)) for one in page]
    return Browsed(shown, len(lines) > PAGE, total, reserved, kept.fibres, kept.yarns)


def alike_by_code(lines: list[SkeinLine], sort: SkeinSort) -> list[SkeinLine]:
    """Lines of a page, those that are alike in what they are sorted by in the order of their codes:
    S-2 before S-10. The database's indexes know nothing of codes."""
    if sort not in ALIKE:
        return lines
    groups = (list(group) for _, group in groupby(lines, key=attrgetter(ALIKE[sort])))
    return [
        one
        for group in groups
        for one in (sorted(group, key=_natural) if len(group) > 1 else group)
    ]


def _natural(line: SkeinLine) -> list[tuple[int, str]]:
    parts = re.split(r"(\d+)", line.code)
    return [(int(part), "") if part.isdecimal() else (0, part) for part in parts]


def _less_reserve(line: SkeinLine, reserved_mm: int) -> SkeinLine:
    return line._replace(free_mm=line.free_mm - reserved_mm) if reserved_mm else line


def _kept_now(session: Session) -> _Kept:
    place, version = str(session.connection().engine.url), data_version(session)
    kept = _kept.get(place)
    if kept is None or kept.version != version:
        kept = _Kept(version, fibres(session), yarn_names(session), _reserved(session))
        _kept[place] = kept
    return kept


def _reserved(session: Session) -> dict[str, int]:
    """What the reckoning has in reserve of each skein, in mm; without a plan nothing is reckoned
    for the list's sake."""
    if not any_plan(session):
        return {}
    shelf = current(session).reckoning.shelf
    return {id: round(1000 * line.reserved_m) for id, line in shelf.items() if line.reserved_m > 0}


def _total(session: Session, kept: _Kept, wanted: SkeinFilter) -> tuple[SkeinTotal, int]:
    if wanted not in kept.totals:
        if len(kept.totals) >= MOST_KEPT:
            kept.totals.clear()
        kept.totals[wanted] = skein_total(session, wanted), _reserved_of(session, kept, wanted)
    return kept.totals[wanted]


def _reserved_of(session: Session, kept: _Kept, wanted: SkeinFilter) -> int:
    if not kept.reserved:
        return 0
    return sum(kept.reserved.get(id, 0) for id in skein_ids(session, wanted))
