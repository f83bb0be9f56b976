"""A garment comes off the needles: its form; and what was planned against what it took."""

from collections.abc import Mapping
from dataclasses import dataclass

from app.book.book import Book
from app.book.plan import Plan
from app.planning.knitting.compared import Compared, PartCompared
from app.web.forms.filled import Filled
from app.web.forms.finishing import MEASURED, REST, balls_of, measure_field
from app.web.pages.answer import yarn_name
from app.web.shown import Shown

SAME = 0.005
"""Within this share it took what was planned."""


@dataclass(frozen=True, slots=True)
class BallField:
    """The field of what is left of a ball, and what the wool book has."""

    name: str
    code: str
    hint: str


@dataclass(frozen=True, slots=True)
class FinishPage:
    plan: Plan
    form: Filled
    balls: tuple[BallField, ...]
    mending: Mapping[str, str]
    sizes: Mapping[str, str]
    rest: Mapping[str, str]


@dataclass(frozen=True, slots=True)
class TakenRow:
    """A part, or all of them: planned, taken, and the one against the other."""

    name: str
    yarn: str
    planned: str
    took: str
    weight: str
    against: str


@dataclass(frozen=True, slots=True)
class PlannedTaken:
    """`whole` sums it up in a sentence; `sizes` are those after washing."""

    whole: str
    rows: tuple[TakenRow, ...]
    hours: str
    sizes: tuple[tuple[str, str], ...]


def finish_page(book: Book, plan: Plan, form: Filled, shown: Shown) -> FinishPage:
    """The form of a plan that is being knit."""
    balls = balls_of(book, plan.id)
    fields = tuple(
        BallField(one.field, one.holding.code, f"The book has {shown.mass(one.mg / 1000)}.")
        for one in balls
    )
    codes = {one.holding.id: one.holding.code for one in balls}
    return FinishPage(
        plan=plan,
        form=form,
        balls=fields,
        mending={"": "none is kept", **codes},
        sizes={measure_field(one): one for one in MEASURED},
        rest=REST,
    )


def taken(told: Compared | None, plan: Plan, book: Book, shown: Shown) -> PlannedTaken | None:
    """What was planned against what it took; None where nothing was kept of it."""
    if told is None:
        return None
    return PlannedTaken(
        whole=_whole(told, shown),
        rows=tuple(_row(one, book, shown) for one in told.parts),
        hours=_hours(told, shown),
        sizes=tuple((one.name, shown.size(one.mm)) for one in plan.measured),
    )


def against(times: float | None, shown: Shown) -> str:
    """ "6 % more than planned" """
    if times is None:
        return ""
    if abs(times - 1) < SAME:
        return "as planned"
    more = "more" if times > 1 else "less"
    return f"{shown.percent(100 * abs(times - 1))} {more} than planned"


def _whole(told: Compared, shown: Shown) -> str:
    times = told.took_m / told.planned_m if told.planned_m > 0 and told.took_m > 0 else None
    took = f"It took {shown.length(told.took_m)}, {shown.mass(told.took_g)}"
    return f"{took}: {against(times, shown)}." if times else f"{took}."


def _row(one: PartCompared, book: Book, shown: Shown) -> TakenRow:
    name = one.part if one.role == "main" else f"{one.part}, {one.role}"
    return TakenRow(
        name=name,
        yarn=yarn_name(one.yarn_id, book),
        planned=shown.length(one.planned_m),
        took=shown.length(one.took_m),
        weight=shown.mass(one.took_g),
        against=against(one.times, shown),
    )


def _hours(told: Compared, shown: Shown) -> str:
    planned = f"{shown.number(told.planned_h)} hours at a usual pace"
    if told.took_h is None:
        return f"It was planned with {planned}."
    return f"It was knit in {shown.number(told.took_h)} hours; it was planned with {planned}."
