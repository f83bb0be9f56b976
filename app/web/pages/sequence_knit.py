"""The rows of a part to knit from: on a phone with the yarn in hand, and on paper."""

from dataclasses import dataclass
from datetime import date

from app.book.plan import Part, Plan
from app.planning.picture import picture
from app.web.pages.picture import drawing
from app.web.pages.picture_ink import Drawing
from app.web.pages.sequence import noun_of
from app.web.pages.sequence_rows import RowShown, Stretch, rows_shown, stretches
from app.web.shown import Shown
from app.work.reckoning import Known

AHEAD = 12
"""Rows that are seen ahead of the one on the needles."""


@dataclass(frozen=True, slots=True)
class KnitPage:
    """`now` is the row on the needles, None once all are knit; `ahead` those that follow it."""

    plan: Plan
    part: Part
    noun: str
    now: RowShown | None
    ahead: tuple[RowShown, ...]
    rows: int
    at: int
    then: str
    stretches: tuple[Stretch, ...]


def knit_page(known: Known, part: Part, at: int) -> KnitPage:
    """The rows of a part from row `at` on."""
    rows = _rows(known, part)
    at = min(max(at, 1), len(rows) + 1)
    coming = rows[at - 1 : at + AHEAD]
    noun = noun_of(part)
    return KnitPage(
        plan=known.book.plan[part.plan_id],
        part=part,
        noun=noun,
        now=coming[0] if coming else None,
        ahead=coming[1:],
        rows=len(rows),
        at=at,
        then=_then(rows, at, noun),
        stretches=stretches(rows, noun),
    )


@dataclass(frozen=True, slots=True)
class KnitSheet:
    """The sheet of a part on paper: its rows in words with boxes to tick, and the picture."""

    plan: Plan
    part: Part
    noun: str
    stretches: tuple[Stretch, ...]
    drawn: Drawing
    today: date


def knit_sheet(known: Known, part: Part, shown: Shown, today: date) -> KnitSheet:
    """The sheet of a part in which yarns take turns."""
    noun = noun_of(part)
    seen = picture(known.book, known.reckoning, part.plan_id)
    told = stretches(rows_shown(seen, part.id), noun)
    return KnitSheet(known.book.plan[part.plan_id], part, noun, told, drawing(seen, shown), today)


def _rows(known: Known, part: Part) -> tuple[RowShown, ...]:
    return rows_shown(picture(known.book, known.reckoning, part.plan_id), part.id)


def _then(rows: tuple[RowShown, ...], at: int, noun: str) -> str:
    """How long the yarn on the needles goes on, and what comes after it."""
    if at > len(rows):
        return ""
    yarn = rows[at - 1].yarn
    after = next((one for one in rows[at:] if one.yarn != yarn), None)
    if after is None:
        return f"{yarn} to the end, {noun} {len(rows)}"
    more = after.number - at
    return f"{more} {noun}{'s' if more > 1 else ''} of {yarn}, then {after.yarn}"
