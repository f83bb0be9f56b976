"""A reckoning told outside the browser: for other programs, and on a terminal."""

import json
from collections.abc import Iterable, Iterator
from typing import Any

from app.book.book import Book
from app.book.words import OPEN_STATES
from app.planning import reckon
from app.planning.answers import PartAnswer, PlanAnswer, Uncovered, WorkLine
from app.web.shown import Shown

WORK_FIELDS = ("kind", "yarn", "m", "g", "prepared_g", "raw_g", "fleece", "plan")


def as_json(book: Book) -> str:
    """The reckoning of a book as JSON: plans with their parts, and the work list."""
    reckoning = reckon(book)
    told = {
        "plans": [_plan(plan) for plan in reckoning.plans],
        "work_list": [_work(line) for line in reckoning.work],
    }
    return json.dumps(told, indent=1, allow_nan=False)


def as_text(book: Book) -> str:
    """The reckoning of a book in lines to read, in the units of its settings."""
    reckoning, shown = reckon(book), Shown(book.settings)
    lines = [
        *(line for plan in reckoning.plans for line in _plan_lines(plan, shown)),
        *_headed("To do", (_work_line(line, shown) for line in reckoning.work if not line.done)),
        *_headed("No longer covered", _uncovered_lines(reckoning.uncovered, shown)),
    ]
    # The narrow spaces of the pages are not in every terminal's font.
    return "\n".join(lines).replace("\u202f", " ").replace("\u00a0", " ")


def _plan(plan: PlanAnswer) -> dict[str, Any]:
    return {
        "name": plan.name,
        "need_m": plan.need.value,
        "need_u_m": plan.need.u,
        "promised_m": plan.promised_m,
        "odds": plan.odds,
        "short_m": plan.short_m,
        "left_m": plan.left_m,
        "left_at_least_m": plan.left_at_least_m,
        "losses_m": sum(one.m for one in plan.allowances),
        "parts": [_part(part) for part in plan.parts],
    }


def _part(part: PartAnswer) -> dict[str, Any]:
    return {
        "name": part.name,
        "copies": part.copies,
        "stitches": part.stitches,
        "rows": part.rows,
        "need_m": part.need.value,
        "need_u_m": part.need.u,
        "skeins": [taken.code for taken in part.skeins],
    }


def _work(line: WorkLine) -> dict[str, Any]:
    return {name: getattr(line, name) for name in WORK_FIELDS}


def _plan_lines(plan: PlanAnswer, shown: Shown) -> Iterator[str]:
    yield f"{plan.name} ({plan.state})"
    if plan.state not in OPEN_STATES:
        return
    if not plan.begun:
        yield "  Nothing to reckon yet: it has no parts, or no gauge."
        return
    yield f"  {_answer(plan, shown)}"
    yield (
        f"  Needs {shown.length_give_or_take(plan.need)}, "
        f"{shown.at_least_length(plan.promised_m)} promised."
    )
    for part in plan.parts:
        yield f"  - {_part_line(part, shown)}"


def _answer(plan: PlanAnswer, shown: Shown) -> str:
    reaches = f"it reaches the end {shown.odds(plan.odds)}"
    if plan.enough:
        left = shown.at_least_length(max(0.0, plan.left_m))
        return f"Enough: {reaches}, and about {left} will be left."
    return f"Short by {shown.short_length(plan.short_m)}: as it stands {reaches}."


def _part_line(part: PartAnswer, shown: Shown) -> str:
    copies = f"{part.copies} × " if part.copies > 1 else ""
    skeins = ", ".join(taken.code for taken in part.skeins) or "no skein yet"
    return f"{copies}{part.name}: {shown.length_give_or_take(part.need)}, {skeins}"


def _work_line(line: WorkLine, shown: Shown) -> str:
    amounts = [
        shown.short_length(line.m) if line.m else "",
        shown.short_mass(line.g) if line.g else "",
        f"{line.balls} balls" if line.balls else "",
        f"{shown.short_mass(line.prepared_g)} prepared" if line.prepared_g else "",
        f"{shown.short_mass(line.raw_g)} raw" if line.raw_g else "",
    ]
    told = ", ".join(filter(None, amounts))
    return f"{line.text}: {told}" if told else line.text


def _uncovered_lines(uncovered: Iterable[Uncovered], shown: Shown) -> Iterator[str]:
    for one in uncovered:
        yield f"{shown.short_length(one.m)} of {one.code} for {one.plan}, {one.part}"


def _headed(heading: str, lines: Iterable[str]) -> list[str]:
    found = [f"  - {line}" for line in lines]
    return [heading, *found] if found else []
