"""The quick reckoning: a sentence to fill in, and its answer."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING

from app.book.book import Book
from app.craft.garments import KINDS
from app.craft.working import Step
from app.web.forms.filled import Filled
from app.web.forms.gauge import MEASURES
from app.web.forms.options import names_by_id, with_none
from app.web.pages.answer import Sentence
from app.web.shown import Shown

if TYPE_CHECKING:
    from app.planning.quick import QuickAnswer


@dataclass(frozen=True, slots=True)
class QuickForm:
    """The sentence with what its choices offer."""

    form: Filled
    yarns: Mapping[str, str]
    garments: Mapping[str, str]
    people: Mapping[str, str]
    measures: Mapping[str, str]


@dataclass(frozen=True, slots=True)
class QuickPage:
    """`sentence` is empty until something was asked."""

    quick: QuickForm
    sentence: Sentence | None = None
    needs: str = ""
    has: str = ""
    assumed: tuple[Step, ...] = ()
    working: tuple[Step, ...] = ()


def quick_form(book: Book, form: Filled | None = None) -> QuickForm:
    """The sentence as typed, or as it stands at first."""
    first = {"garment": "pullover", "gauge_measure": book.settings.gauge_unit}
    return QuickForm(
        form or Filled(first),
        with_none("yarn not on my shelf", names_by_id(book.yarns)),
        {kind: f"{'' if kind in ('mittens', 'socks') else 'a '}{kind}" for kind in KINDS},
        with_none("anyone", names_by_id(book.people)),
        MEASURES,
    )


def quick_page(book: Book, form: Filled, answer: "QuickAnswer | None", shown: Shown) -> QuickPage:
    """The page; without an answer, the form with its faults."""
    quick = quick_form(book, form)
    if answer is None:
        return QuickPage(quick)
    return QuickPage(
        quick,
        _sentence(answer, shown),
        shown.length_give_or_take(answer.need),
        shown.length_give_or_take(answer.supply),
        answer.assumed,
        answer.working,
    )


def _sentence(answer: "QuickAnswer", shown: Shown) -> Sentence:
    reaches = f"it reaches the end {shown.odds(answer.odds)}"
    if answer.enough:
        left = f"about {shown.length(answer.left_m)} will be left"
        if answer.left_at_least_m > 0:
            left += f", at least {shown.at_least_length(answer.left_at_least_m)}"
        return Sentence("enough", "Enough:", f" {reaches}, and {left}.")
    grams = shown.short_mass(answer.short_g)
    asked = shown.odds(answer.sureness)
    lead = f"Short by {shown.short_length(answer.short_m)}"
    return Sentence(
        "short",
        lead,
        f": about {grams} of yarn, to be as sure as you asked. As it stands {reaches}; "
        f"you asked for {asked}.",
    )
