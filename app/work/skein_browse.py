"""Look through the skeins: one page of the list, and what goes with it.

The page itself is asked of the database each time. The totals and the choices of the filters stay
true as long as the data is not changed, so they are kept by its version.
"""

from dataclasses import dataclass, field, replace
from threading import Lock

from sqlmodel import Session

from app.store.skein_list import (
    PAGE,
    SkeinFilter,
    SkeinLine,
    SkeinTotal,
    fibres,
    skein_page,
    skein_total,
)
from app.store.version import data_version
from app.store.yarn_totals import yarn_names

MOST_KEPT = 200
"""How many totals of different filters are kept."""


@dataclass(frozen=True, slots=True)
class Browsed:
    """A page of skeins; `more` where a later page exists; `yarns` are names by id."""

    lines: list[SkeinLine]
    more: bool
    total: SkeinTotal
    fibres: list[str]
    yarns: dict[str, str]


@dataclass(slots=True)
class _Kept:
    version: int
    fibres: list[str]
    yarns: dict[str, str]
    totals: dict[SkeinFilter, SkeinTotal] = field(default_factory=dict)


_kept: dict[str, _Kept] = {}
_one_at_a_time = Lock()


def browse(session: Session, wanted: SkeinFilter) -> Browsed:
    """The skeins asked for, with the totals of all pages."""
    lines = skein_page(session, wanted)
    with _one_at_a_time:
        kept = _kept_now(session)
        total = _total(session, kept, replace(wanted, sort="grist", page=1))
    return Browsed(lines[:PAGE], len(lines) > PAGE, total, kept.fibres, kept.yarns)


def _kept_now(session: Session) -> _Kept:
    place, version = str(session.connection().engine.url), data_version(session)
    kept = _kept.get(place)
    if kept is None or kept.version != version:
        kept = _kept[place] = _Kept(version, fibres(session), yarn_names(session))
    return kept


def _total(session: Session, kept: _Kept, wanted: SkeinFilter) -> SkeinTotal:
    if wanted not in kept.totals:
        if len(kept.totals) >= MOST_KEPT:
            kept.totals.clear()
        kept.totals[wanted] = skein_total(session, wanted)
    return kept.totals[wanted]
