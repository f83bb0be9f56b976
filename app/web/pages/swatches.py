"""The list of swatches, and the form in which one is written down."""

from dataclasses import dataclass
from datetime import date

from app.book.book import Book
from app.book.stamp import stamp
from app.book.swatch import Swatch
from app.craft.cloth import Fullness
from app.craft.figure import Figure
from app.craft.patterns import patterns
from app.web.forms.filled import Filled
from app.web.forms.options import names_by_id, with_none
from app.web.forms.swatch import swatch_values
from app.web.pages.answer import Sentence, number_word
from app.web.pages.gauge_said import gauge_said
from app.web.pages.swatch_said import loop_length, share_said
from app.web.shown import Shown
from app.work.swatch_known import SwatchTold


@dataclass(frozen=True, slots=True)
class SwatchLine:
    """What the list says of a swatch."""

    id: str
    name: str
    yarn: str
    colour: str
    needle: str
    gauge: str
    loop: str
    fabric: str
    day: date | None


@dataclass(frozen=True, slots=True)
class SwatchesPage:
    """The swatches at hand and those put away."""

    answer: Sentence
    lines: tuple[SwatchLine, ...]
    put_away: tuple[SwatchLine, ...]


@dataclass(frozen=True, slots=True)
class SwatchFormPage:
    """`swatch` is None for a new one; `patterns` are offered, any other may be typed."""

    form: Filled
    swatch: Swatch | None
    action: str
    back: str
    yarns: dict[str, str]
    patterns: list[str]


def swatches_page(told: tuple[SwatchTold, ...], shown: Shown) -> SwatchesPage:
    """All swatches, each with what it tells."""
    lines = tuple(_line(one, shown) for one in told if one.swatch.put_away is None)
    away = tuple(_line(one, shown) for one in told if one.swatch.put_away)
    return SwatchesPage(_said(lines), lines, away)


def swatch_form_page(
    book: Book, swatch: Swatch | None, form: Filled | None = None
) -> SwatchFormPage:
    """The form of a swatch, as it stands or as it was typed."""
    opened = Filled(swatch_values(swatch, book.settings), {}, stamp(swatch) if swatch else "")
    return SwatchFormPage(
        form=form or opened,
        swatch=swatch,
        action=f"/swatches/{swatch.id}/change" if swatch else "/swatches/new",
        back=f"/swatches/{swatch.id}" if swatch else "/swatches",
        yarns=with_none("not noted", names_by_id(book.yarns)),
        patterns=[one.name for one in patterns()],
    )


def new_swatch_page(book: Book, yarn_id: str) -> SwatchFormPage:
    """The form of a new swatch, of a yarn where one led here."""
    values = swatch_values(None, book.settings)
    chosen = yarn_id if yarn_id in book.yarn else ""
    return swatch_form_page(book, None, Filled({**values, "yarn_id": chosen}))


def _line(told: SwatchTold, shown: Shown) -> SwatchLine:
    swatch, answer = told.swatch, told.answer
    needle = f"{shown.field_number(swatch.needle_mm)}\u202fmm" if swatch.needle_mm else ""
    return SwatchLine(
        id=swatch.id,
        name=swatch.name,
        yarn=told.yarn.name if told.yarn else "",
        colour=told.yarn.colour if told.yarn else "",
        needle=needle,
        gauge=gauge_said(answer.gauge, shown) if answer.gauge else "not counted yet",
        loop=_loop(answer.found.loop, shown) if answer.found else "",
        fabric=_fabric(answer.fullness, shown) if answer.fullness else "",
        day=swatch.day,
    )


def _loop(loop: Figure, shown: Shown) -> str:
    return f"{loop_length(loop, shown)} ± {share_said(loop, shown)}"


def _fabric(full: Fullness, shown: Shown) -> str:
    return f"{full.word}, {shown.number(full.by_weight, 1)}"


def _said(lines: tuple[SwatchLine, ...]) -> Sentence:
    if not lines:
        return Sentence("idle", "No swatch yet.")
    waiting = sum(1 for one in lines if not one.loop)
    swatches = "One swatch" if len(lines) == 1 else f"{number_word(len(lines))} swatches"
    rest = f"; {number_word(waiting)} still to be measured" if waiting else ""
    return Sentence("idle", f"{swatches[:1].upper()}{swatches[1:]}", f"{rest}.")
