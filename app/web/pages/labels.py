"""The page of labels: how many on how many sheets, and the sheets as they will be printed."""

from collections.abc import Iterable
from dataclasses import dataclass

from app.craft.label_sheets import SHEETS, LabelSheet
from app.web.forms.filled import Filled
from app.web.forms.labels import LabelsAsked
from app.web.forms.reader import Reader
from app.web.pages.answer import Sentence
from app.web.pages.label_qr import QrPath, qr_path
from app.web.shown import Shown
from app.work.label_make import Label


@dataclass(frozen=True, slots=True)
class LabelShown:
    """A label's lines as they are printed; `amount` is weight and length, `about` grist and
    class."""

    code: str
    name: str
    fibres: str
    amount: str
    about: str
    day: str
    qr: QrPath


@dataclass(frozen=True, slots=True)
class LabelsPage:
    """`pages` are sheets, each a row of labels with None for one that is used already; `choices`
    are ids and codes of all that can be ticked, `left_out` how many more there are; `origin` is
    where the codes lead."""

    answer: Sentence
    form: Filled
    sheet: LabelSheet
    sheets: dict[str, str]
    pages: tuple[tuple[LabelShown | None, ...], ...]
    choices: tuple[tuple[str, str], ...]
    left_out: int
    origin: str
    back: str


def labels_page(
    reader: Reader,
    asked: LabelsAsked,
    labels: tuple[Label, ...],
    left_out: int,
    origin: str,
    shown: Shown,
) -> LabelsPage:
    """`origin` is this program's own address, which the codes lead to; `left_out` are more than
    fit on one page."""
    drawn = [label_shown(one, origin, shown) for one in labels]
    pages = laid_out(drawn, asked.sheet, asked.start)
    of_wool = asked.wool or any(one.page.startswith("/fleeces/") for one in labels)
    return LabelsPage(
        answer=_said(len(drawn), len(pages), asked, shown),
        form=reader.filled(),
        sheet=asked.sheet,
        sheets={one.key: one.name for one in SHEETS},
        pages=pages,
        choices=tuple((one.holding_id, one.code) for one in labels),
        left_out=left_out,
        origin=origin,
        back="/fleeces" if of_wool else "/skeins",
    )


def laid_out(
    labels: Iterable[LabelShown], sheet: LabelSheet, start: int
) -> tuple[tuple[LabelShown | None, ...], ...]:
    """Labels in the places of sheets, the first at place `start` of the first sheet."""
    places = [*[None] * (start - 1), *labels]
    if len(places) < start:
        return ()
    return tuple(tuple(places[at : at + sheet.count]) for at in range(0, len(places), sheet.count))


def label_shown(label: Label, origin: str, shown: Shown) -> LabelShown:
    amount = (shown.mass(label.g), shown.length(label.m) if label.m else "", label.state)
    about = (shown.grist(label.tex) if label.tex else "", label.yarn_class)
    return LabelShown(
        code=label.code,
        name=" · ".join(one for one in (label.name, label.colour_name) if one),
        fibres=label.fibres,
        amount=" · ".join(one for one in amount if one),
        about=" · ".join(one for one in about if one),
        day=shown.day(label.day) if label.day else "",
        qr=qr_path(origin + label.page),
    )


def _said(count: int, pages: int, asked: LabelsAsked, shown: Shown) -> Sentence:
    if not count:
        return Sentence(
            "idle", "No label to print.", " Choose skeins or wool that are on the shelf."
        )
    labels = f"{shown.number(count)} label{'s' if count > 1 else ''}"
    sheets = f"{shown.number(pages)} sheet{'s' if pages > 1 else ''} of {asked.sheet.paper}"
    begins = f", beginning at label {asked.start}" if asked.start > 1 else ""
    return Sentence("idle", f"{labels} on {sheets}", f"{begins}.")
