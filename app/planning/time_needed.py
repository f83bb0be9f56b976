"""The hours of the work list: what each garment's wool still takes, evening by evening."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, timedelta
from math import ceil, floor, inf

from app.book.book import Book
from app.book.plan import Plan
from app.book.yarn import Yarn
from app.craft.figure import Figure, total
from app.craft.fleece import plied_length, single_length
from app.planning.answers import Reckoning, WorkLine
from app.planning.learning.in_force import lost_in
from app.planning.learning.observed import Names
from app.planning.time_order import DUST, Work, soonest
from app.planning.time_pace import hours_of

UNWASHED = ("raw", "skirted")
UNCARDED = (*UNWASHED, "drying", "scoured")


@dataclass(frozen=True, slots=True)
class Task:
    """One kind of work at one yarn, and its hours."""

    work: str
    yarn_id: str
    hours: Figure


@dataclass(frozen=True, slots=True)
class Job:
    """All the work on the wool of one garment, in its order. `knit` are the hours at the needles
    after it."""

    plan: Plan
    tasks: tuple[Task, ...]
    knit: Figure

    @property
    def hours(self) -> Figure:
        """Hours until the garment has its wool."""
        return total((one.hours for one in self.tasks), "h")


@dataclass(frozen=True, slots=True)
class Turn:
    """A job in its turn: the days it begins and has its wool, when the garment could be knit, and
    how many days that is late (0 if in time, or wanted by no day)."""

    job: Job
    begins: date
    ready: date
    knit_by: date
    late_days: int


@dataclass(frozen=True, slots=True)
class TimeNeeded:
    """The hours of the whole list, how many evenings they take, and every job in its turn."""

    hours: Figure
    evenings: Figure
    turns: tuple[Turn, ...]


def time_needed(book: Book, reckoning: Reckoning, today: date) -> TimeNeeded:
    """The work list as time, from today on, an evening each day."""
    evening_h = book.settings.evening_minutes / 60
    found = {job.plan.id: job for job in jobs(book, reckoning)}
    works = [
        Work(one.plan.id, one.hours.value, _due(one, today, evening_h)) for one in found.values()
    ]
    ordered = [found[one.name] for one in soonest(works)]
    hours = total((one.hours for one in ordered), "h")
    evenings = hours.scaled(1 / evening_h, "evenings")
    return TimeNeeded(hours, evenings, tuple(_turns(ordered, today, evening_h)))


def jobs(book: Book, reckoning: Reckoning) -> list[Job]:
    """The work each garment waits for, garments in the order of the reckoning."""
    found = []
    for answer in reckoning.plans:
        lines = [one for one in reckoning.work if one.plan_id == answer.plan_id]
        tasks = tuple(task for one in lines for task in _tasks(book, reckoning, one))
        if tasks:
            left_m = max(0.0, answer.need.value - answer.used_m)
            knit = hours_of(reckoning.learnt, "knit", left_m)
            found.append(Job(book.plan[answer.plan_id], tasks, knit))
    return found


def _tasks(book: Book, reckoning: Reckoning, line: WorkLine) -> Iterator[Task]:
    yarn = book.yarn.get(line.yarn_id or "")
    if line.kind != "spin" or yarn is None or not line.m:
        return
    for work, amount in _amounts(book, reckoning, yarn, line):
        yield Task(work, yarn.id, hours_of(reckoning.learnt, work, amount, yarn.id))


def _amounts(
    book: Book, reckoning: Reckoning, yarn: Yarn, line: WorkLine
) -> Iterator[tuple[str, float]]:
    """Grams or metres that go through each step, from the wool as it is now."""
    fleece_g, prepared_g = float(line.fleece_g or 0), float(line.prepared_g or 0)
    combed = yarn.spinning is not None and yarn.spinning.preparation == "combed"
    if line.state == "raw":
        yield "skirt", fleece_g
    if line.state in UNWASHED:
        yield "scour", fleece_g
    if line.state in UNCARDED:
        yield "comb" if combed else "card", prepared_g
    lost = lost_in("shrink", book.settings, reckoning.learnt, Names(yarn=yarn.id)).lost
    plies, plied = yarn.plies or 1, plied_length(float(line.m or 1), lost)
    take_up = book.settings.steps.take_up / 100 if plies > 1 else 0.0
    yield "spin", plies * single_length(plied, take_up)
    if plies > 1:
        yield "ply", plied
    yield "finish", float(line.g or 0)


def _due(job: Job, today: date, evening_h: float) -> float:
    """Hours from now by which a garment must have its wool, to be knit in time."""
    if job.plan.wanted_by is None:
        return inf
    evenings = (job.plan.wanted_by - today).days + 1
    return evenings * evening_h - job.knit.value


def _turns(ordered: list[Job], today: date, evening_h: float) -> Iterator[Turn]:
    done = 0.0
    for job in ordered:
        begins = today + timedelta(floor(done / evening_h + DUST))
        done += job.hours.value
        ready = _last_day(today, done, evening_h)
        knit_by = _last_day(today, done + job.knit.value, evening_h)
        late = (knit_by - job.plan.wanted_by).days if job.plan.wanted_by else 0
        yield Turn(job, begins, max(begins, ready), knit_by, max(0, late))


def _last_day(today: date, hours: float, evening_h: float) -> date:
    """The day of the evening in which so many hours are done."""
    return today + timedelta(max(0, ceil(hours / evening_h - DUST) - 1))
