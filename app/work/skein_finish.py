"""Finish a skein: it comes to the shelf, or is measured once washed, and goes to the garment that
asked for it."""

from dataclasses import dataclass
from math import ceil

from sqlmodel import Session

from app.book import woolbook
from app.book.event import Event
from app.book.event_note import noted
from app.book.holding import Holding
from app.book.plan import Promise
from app.book.reading import Reading
from app.book.woolbook import Portion
from app.planning.answers import PlanAnswer
from app.store.records import post, put
from app.store.skein_find import balance_of, readings_of
from app.work.promise_free import available_mm
from app.work.promise_make import promise_skein
from app.work.reckoning import current
from app.work.skein_add import NewSkein, add_skein
from app.work.skein_measure import Weighing
from app.work.skein_readings import counting, length_reading, mass_reading

NEAR_M = 1e-6


@dataclass(frozen=True, slots=True)
class Finished:
    """The skein, its event, the share of its length that finishing took (None where it was reeled
    only once), and what of it was promised."""

    skein: Holding
    event: Event
    shrink: float | None
    promised: tuple[Promise, ...]


def finish_new(session: Session, new: NewSkein, plan_id: str | None) -> Finished:
    """Put a skein that was spun, reeled, washed and reeled again on the shelf and promise it.

    Refusal for a code in use; TooLittleWool where its fleece plainly holds too little.
    """
    saved = add_skein(session, new)
    (skein,) = saved.holdings
    return _finished(session, skein, saved.event, plan_id)


def finish_old(
    session: Session, skein: Holding, weighing: Weighing, plan_id: str | None
) -> Finished:
    """Measure a skein that is on the shelf, now that it is washed and dry. What the wash took goes
    to waste; a weighing that was not taken leaves the grams as they were."""
    held = balance_of(session, skein.id)
    readings = [length_reading(skein.id, one, weighing.day) for one in weighing.lengths]
    readings += [mass_reading(skein.id, weighing.weight, weighing.day)] if weighing.weight else []
    for reading in readings:
        put(session, reading)
    made = Portion(
        skein,
        weighing.weight.mg if weighing.weight else held.mg,
        weighing.lengths[-1].mm if weighing.lengths else held.mm,
    )
    before = {skein.id: held}
    entry = woolbook.prepare(before, Portion(skein, held.mg, held.mm), made)
    note = noted("", readings)
    event = post(session, entry.kind, weighing.day, entry.lines, note, step="finish")
    return _finished(session, skein, event, plan_id)


def shrinkage(readings: list[Reading]) -> float | None:
    """The share of the length that finishing took, by the lengths that count before and after."""
    before = counting(one for one in readings if not one.finished)
    after = counting(one for one in readings if one.finished)
    if before is None or after is None or before.value <= 0:
        return None
    return 1 - after.value / before.value


def asking_for(plans: tuple[PlanAnswer, ...], yarn_id: str) -> str | None:
    """The plan that is short of a yarn and comes first; None where none is."""
    short = (one for one in plans if one.short_m > 0 and _wanting(one, yarn_id))
    return next((one.plan_id for one in short), None)


def _finished(session: Session, skein: Holding, event: Event, plan_id: str | None) -> Finished:
    readings = readings_of(session, skein.id)
    promised = _promise(session, skein, plan_id) if plan_id else ()
    return Finished(skein, event, shrinkage(readings), promised)


def _promise(session: Session, skein: Holding, plan_id: str) -> tuple[Promise, ...]:
    """Promise a skein to the parts of a plan that still need its yarn, in their order; what is
    left of it the plan's reserve may take."""
    known = current(session)
    answer = next((one for one in known.reckoning.plans if one.plan_id == plan_id), None)
    wanting = _wanting(answer, skein.yarn_id or "") if answer else ()
    made = []
    for part_id, short_m in wanting:
        line = current(session).reckoning.shelf.get(skein.id)
        room = available_mm(line, plan_id) if line else 0
        mm = min(room, ceil(short_m * 1000 - NEAR_M))
        if mm > 0:
            made.append(promise_skein(session, part_id, skein.id, mm))
    return tuple(made)


def _wanting(answer: PlanAnswer, yarn_id: str) -> tuple[tuple[str, float], ...]:
    """The parts of a plan that need more of a yarn, with the metres."""
    groups = [one for one in answer.groups if yarn_id in (one.yarn_id, *one.yarn_ids)]
    mine = {part_id for one in groups for part_id in one.part_ids}
    return tuple(
        (one.part_id, one.short_m)
        for one in answer.parts
        if one.part_id in mine and one.short_m > 0
    )
