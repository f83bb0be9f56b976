"""The small sums of a plan in words."""

from collections.abc import Mapping
from dataclasses import dataclass

from app.book.book import Book
from app.book.plan import Plan
from app.planning.small_sums import Asked, Buttons, Fits, PickUp, SmallSums, borders, small_sums
from app.web.forms.filled import Filled
from app.web.forms.options import with_none
from app.web.forms.reader import Reader
from app.web.forms.small_sums import read_asked
from app.web.pages.answer import counted
from app.web.shown import Shown


@dataclass(frozen=True, slots=True)
class SumsSaid:
    """Each sum as a line of words, and the form they were asked by."""

    form: Filled
    buttons: tuple[str, ...]
    picked_up: tuple[str, ...]
    fits: tuple[str, ...]
    shaped: str
    borders: Mapping[str, str]
    parts: Mapping[str, str]


@dataclass(frozen=True, slots=True)
class SumsPage:
    """The small sums on a page of their own."""

    plan: Plan
    sums: SumsSaid | None


def sums_said(book: Book, plan: Plan, sums: SmallSums, shown: Shown, form: Filled) -> SumsSaid:
    """Every sum in words, with what was refused beside its field."""
    parts = {one.id: one.name for one in book.parts_of.get(plan.id, [])}
    errors = {**sums.refused, **form.errors}
    return SumsSaid(
        form=Filled(with_usual(sums, form, shown), errors),
        buttons=tuple(_buttons(one, sums.asked.hole, shown) for one in sums.buttons),
        picked_up=tuple(_picked_up(one) for one in sums.picked_up),
        fits=tuple(_fits(one) for one in sums.fits),
        shaped=sums.shaped,
        borders={one: one for one in borders()},
        parts=with_none("none", parts),
    )


def sums_asked(book: Book, plan: Plan, reader: Reader, shown: Shown) -> SumsSaid | None:
    """The small sums as they were asked; None for a plan without numbers to work from."""
    asked = read_asked(reader, [one.id for one in book.parts_of.get(plan.id, [])])
    sums = small_sums(book, plan, asked if reader.ok else Asked())
    return sums_said(book, plan, sums, shown, reader.filled()) if sums.any else None


def with_usual(sums: SmallSums, form: Filled, shown: Shown) -> dict[str, str]:
    """What was typed, and in the fields left out what was taken."""
    asked = sums.asked
    count = asked.buttons or max((len(one.holes) for one in sums.buttons), default=0)
    usual = {
        "buttons": shown.field_number(count) if count else "",
        "hole": shown.field_number(asked.hole),
        "end": shown.field_number(asked.end),
        "border": asked.border,
        "part": asked.part_id,
        "to": "",
    }
    return {**usual, **form.values}


def _buttons(one: Buttons, hole: int, shown: Shown) -> str:
    """ "Front bands: 7 buttonholes of 3 stitches on 110; …"."""
    holes = f"{counted(len(one.holes), 'buttonhole')} of {hole} on {one.count} {one.unit}"
    first = f"the first after {one.holes[0]} {one.unit}"
    if not one.between:
        return f"{one.part.capitalize()}: {holes}, {first}."
    few, many = min(one.between), max(one.between)
    between = f"{few}" if few == many else f"{few} or {many}"
    starts = ", ".join(str(start) for start in one.holes)
    return (
        f"{one.part.capitalize()}: {holes}, {first}, then {between} {one.unit} "
        f"({shown.size(one.gap_mm)}) from one to the next. They begin after {one.unit} {starts}."
    )


def _picked_up(one: PickUp) -> str:
    turn = ", then ".join(f"{few} in {many}" for few, many in one.turn) or "one in every row"
    over = f"{turn} rows, over and over" if one.turn else f"{turn}, and increase after"
    return f"{one.part.capitalize()}, {one.rows} rows: {one.stitches} stitches; {over}."


def _fits(one: Fits) -> str:
    name = f"{one.part.capitalize()}, {one.stitches} stitches"
    if one.below == one.above:
        return f"{name}: fits as it is."
    return f"{name}: {one.below} or {one.above} fit."
