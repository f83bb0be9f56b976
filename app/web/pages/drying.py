"""Wool that dries: the sentence that says how far it is, and the page on which it is weighed."""

from collections.abc import Sequence
from dataclasses import dataclass
from math import inf
from urllib.parse import quote

from app.book.reading import Reading
from app.craft.drying import steady
from app.craft.moisture import DRY_ENOUGH
from app.planning.drying import Drying
from app.web.forms.filled import Filled
from app.web.pages.answer import Sentence
from app.web.shown import Shown, as_typed


@dataclass(frozen=True, slots=True)
class DryingPage:
    """`dry` offers to enter the last weighing, `last`, as dry; `doubted` where that is asked about
    first. `readings` are day and time, and what was typed."""

    id: str
    name: str
    wool: str
    sentence: Sentence
    expected: str
    form: Filled
    dry: bool
    last: str
    becomes: str
    doubted: bool
    readings: tuple[tuple[str, str], ...]


def dry_url(fleece_id: str, holding_id: str) -> str:
    """Where a holding that dries is weighed."""
    return f"/fleeces/{fleece_id}/dry?wool={quote(holding_id)}"


def drying_page(
    fleece_id: str,
    name: str,
    one: Drying,
    becomes: str,
    readings: Sequence[Reading],
    form: Filled,
    shown: Shown,
) -> DryingPage:
    """`readings` are its damp weighings, oldest first; `becomes` the state it comes to."""
    return DryingPage(
        id=fleece_id,
        name=name,
        wool=one.holding.id,
        sentence=_sentence(one, shown),
        expected=expected_told(one, shown),
        form=form,
        dry=one.dry,
        last=shown.mass(one.weighings[-1].g) if one.weighings else "",
        becomes=becomes,
        doubted="sure" in form.errors,
        readings=tuple(_reading(each, shown) for each in reversed(readings)),
    )


def drying_told(one: Drying, shown: Shown) -> str:
    """How far it has dried, and what it will weigh."""
    sentence = _sentence(one, shown)
    return f"{sentence.lead}{sentence.rest} {expected_told(one, shown)}".rstrip()


def expected_told(one: Drying, shown: Shown) -> str:
    """ "Dry, it will weigh about 580 to 640 g."; never more than it weighed last, and nothing of
    wool that is dry."""
    if one.dry:
        return ""
    last_g = one.weighings[-1].g if one.weighings else inf
    return f"Dry, it will weigh about {shown.mass_range(one.expected, last_g)}."


def _sentence(one: Drying, shown: Shown) -> Sentence:
    agree = shown.percent(100 * DRY_ENOUGH, 1)
    if one.lost_pct is None:
        rest = f" It is dry when two weighings, an hour or more apart, agree within {agree}."
        return Sentence("idle", "Weigh it again tomorrow.", rest)
    if one.dry:
        return Sentence("enough", "It is dry:", " the last two weighings agree.")
    if not steady(one.weighings[-2:]):
        lead = f"It gained {shown.percent(-one.lost_pct, 1)} between the last two weighings."
        return Sentence("idle", lead, " Was more put to it, or is the air damp?")
    lead = f"It lost {shown.percent(one.lost_pct, 1)} between the last two weighings: still drying."
    return Sentence("idle", lead)


def _reading(one: Reading, shown: Shown) -> tuple[str, str]:
    clock = "" if one.minute is None else f", {one.minute // 60}:{one.minute % 60:02}"
    return f"{shown.day(one.day)}{clock}", as_typed(one.typed, one.unit)
