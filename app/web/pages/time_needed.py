"""Hours and evenings: what the work list takes, in the order that gives garments their wool."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date

from app.book.book import Book
from app.craft.figure import Figure
from app.craft.working import Step
from app.planning.answers import Reckoning
from app.planning.time_needed import TimeNeeded, Turn, time_needed
from app.planning.time_pace import pace_step
from app.web.forms.filled import Filled
from app.web.forms.options import names_by_id, with_none
from app.web.forms.stint import WORKS, blank_stint
from app.web.pages.answer import Sentence, listed
from app.web.shown import THIN, Shown, nearest, up

LATEST = 30


@dataclass(frozen=True, slots=True)
class TurnRow:
    """A garment's wool in its turn, in words."""

    name: str
    url: str
    tasks: str
    hours: str
    days: str
    wanted: str
    late: str


@dataclass(frozen=True, slots=True)
class StintLine:
    """A note of time spent, and where to take it out."""

    words: str
    remove_url: str


@dataclass(frozen=True, slots=True)
class TimePage:
    answer: Sentence
    rows: tuple[TurnRow, ...]
    stints: tuple[StintLine, ...]
    works: Mapping[str, str]
    yarns: Mapping[str, str]
    steps: tuple[Step, ...]
    evening: int
    form: Filled


def time_page(
    book: Book, reckoning: Reckoning, shown: Shown, today: date, form: Filled | None = None
) -> TimePage:
    """The hours of the list, and the form for time spent as it was typed."""
    needed = time_needed(book, reckoning, today)
    spun = [one for one in book.yarns if not one.bought]
    return TimePage(
        answer=_answer(needed, book, shown),
        rows=tuple(_row(one, book, shown) for one in needed.turns),
        stints=_stints(book, shown),
        works={str(work): words for work, words in WORKS.items()},
        yarns=with_none("none in particular", names_by_id(spun)),
        steps=_steps(needed, reckoning),
        evening=book.settings.evening_minutes,
        form=form or Filled(blank_stint()),
    )


def _answer(needed: TimeNeeded, book: Book, shown: Shown) -> Sentence:
    if not needed.turns:
        return Sentence("idle", "No garment waits for wool to be spun.")
    evenings = up(needed.evenings.value)
    lead = "One evening:" if evenings == 1 else f"About {shown.number(evenings)} evenings:"
    minutes = shown.number(book.settings.evening_minutes)
    rest = f" {_hours(needed.hours, shown)} of work on the list, {minutes}{THIN}min an evening."
    return Sentence("waiting", lead, rest + _in_time(needed.turns))


def _in_time(turns: tuple[Turn, ...]) -> str:
    wanted = [one for one in turns if one.job.plan.wanted_by]
    late = [one.job.plan.name for one in wanted if one.late_days]
    if late:
        least = "no other order makes the latest less late"
        return f" In this order {listed(late)} will be late; {least}."
    return " In this order every garment is ready by its day." if wanted else ""


def _row(turn: Turn, book: Book, shown: Shown) -> TurnRow:
    plan = turn.job.plan
    told = [
        f"{WORKS_TOLD[one.work]} {book.yarn[one.yarn_id].name}, {_hours(one.hours, shown)}"
        for one in turn.job.tasks
    ]
    days = [shown.day(one) for one in dict.fromkeys((turn.begins, turn.ready))]
    late = f"late by {turn.late_days} days" if turn.late_days > 1 else "late by a day"
    knit = f"could be knit by {shown.day(turn.knit_by)}"
    return TurnRow(
        name=plan.name,
        url=f"/garments/{plan.id}",
        tasks="; ".join(told),
        hours=_hours(turn.job.hours, shown),
        days=" to ".join(days),
        wanted=f"{shown.day(plan.wanted_by)}; {knit}" if plan.wanted_by else knit,
        late=late if turn.late_days else "",
    )


WORKS_TOLD: dict[str, str] = {str(work): words for work, words in WORKS.items()}


def _hours(hours: Figure, shown: Shown) -> str:
    value, u = hours.value, hours.u
    if value < 1:
        return f"{shown.number(max(5, 5 * nearest(value * 12)))}{THIN}min"
    places = 0 if value >= 10 else 1
    return f"{shown.number(value, places)} ± {shown.number(u, places)}{THIN}h"


def _steps(needed: TimeNeeded, reckoning: Reckoning) -> tuple[Step, ...]:
    """The paces that were reckoned with, each once."""
    used = [(one.work, one.yarn_id) for turn in needed.turns for one in turn.job.tasks]
    steps = [pace_step(reckoning.learnt, work, yarn_id) for work, yarn_id in dict.fromkeys(used)]
    knit = [pace_step(reckoning.learnt, "knit")] if needed.turns else []
    return tuple(dict.fromkeys([*steps, *knit]))


def _stints(book: Book, shown: Shown) -> tuple[StintLine, ...]:
    latest = sorted(book.stints, key=lambda one: (one.day, one.id), reverse=True)[:LATEST]
    found = []
    for one in latest:
        yarn = book.yarn.get(one.yarn_id or "")
        did = [shown.mass(one.mg / 1000)] if one.mg else []
        did += [shown.length(one.mm / 1000)] if one.mm else []
        words = [
            f"{shown.day(one.day)}: {one.minutes}{THIN}min {WORKS_TOLD.get(one.work, one.work)}"
        ]
        words += did + ([yarn.name] if yarn else []) + ([one.note] if one.note else [])
        found.append(StintLine(", ".join(words), f"/work-list/time/{one.id}/remove"))
    return tuple(found)
