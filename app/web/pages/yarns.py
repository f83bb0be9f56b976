"""The pages of the yarns: all of them with their totals, and one with its skeins."""

from dataclasses import dataclass

from app.book.book import Book
from app.book.stamp import stamp
from app.book.swatch import Swatch
from app.book.yarn import Yarn
from app.planning.answers import Reckoning
from app.store.skein_list import SkeinLine
from app.web.forms.filled import Filled
from app.web.forms.options import names_by_id, with_none
from app.web.forms.yarn import MAKINGS, TWISTS
from app.web.pages.answer import Sentence
from app.web.pages.plan_line import PlanLine, plan_line
from app.web.pages.skein_forms import known_fibres
from app.web.shown import Shown
from app.work.reckoning import Known
from app.work.yarn_known import KnownYarn, YarnSum
from app.work.yarn_remove import is_bare


@dataclass(frozen=True, slots=True)
class YarnsPage:
    answer: Sentence
    yarns: list[YarnSum]


@dataclass(frozen=True, slots=True)
class YarnPage:
    """`bare` where nothing belongs to the yarn, so that it can be taken out."""

    answer: Sentence
    known: KnownYarn
    lines: list[SkeinLine]
    plans: tuple[PlanLine, ...]
    swatches: dict[str, str]
    bare: bool
    stamp: str
    stray: str
    earlier_url: str
    later_url: str


@dataclass(frozen=True, slots=True)
class YarnFormPage:
    """`yarn` is None for a new one."""

    form: Filled
    yarn: Yarn | None
    action: str
    back: str
    fleeces: dict[str, str]
    fibres: list[str]
    twists: dict[str, str]
    makings: dict[str, str]


def yarns_page(yarns: list[YarnSum], shown: Shown) -> YarnsPage:
    return YarnsPage(_all_said(yarns, shown), yarns)


def yarn_page(known: Known, one: KnownYarn, page: int, shown: Shown) -> YarnPage:
    url = f"/yarns/{one.yarn.id}"
    return YarnPage(
        answer=yarn_said(one, shown),
        known=one,
        lines=one.skeins.lines,
        plans=_plan_lines(one, known.book, known.reckoning, shown),
        swatches=names_by_id(_swatches(known.book, one.yarn)),
        bare=is_bare(known.book, one.yarn),
        stamp=stamp(one.yarn),
        stray=_stray(one.sum, shown),
        earlier_url=f"{url}?page={page - 1}" if page > 1 else "",
        later_url=f"{url}?page={page + 1}" if one.skeins.more else "",
    )


def yarn_form_page(book: Book, form: Filled, yarn: Yarn | None) -> YarnFormPage:
    marked = Filled(form.values, form.errors, form.stamp or (stamp(yarn) if yarn else ""))
    return YarnFormPage(
        form=marked,
        yarn=yarn,
        action=f"/yarns/{yarn.id}/change" if yarn else "/yarns/new",
        back=f"/yarns/{yarn.id}" if yarn else "/yarns",
        fleeces=with_none("none, or not known", names_by_id(book.fleeces)),
        fibres=known_fibres(book),
        twists=TWISTS,
        makings=MAKINGS,
    )


def yarn_said(one: KnownYarn, shown: Shown) -> Sentence:
    """ "Holds 852 m, 384 g in 4 skeins; 63 m free." or what it could become."""
    total = one.sum.total
    if total.skeins:
        held = f"{shown.length(total.mm / 1000)}, {shown.mass(total.mg / 1000)}"
        skeins = "one skein" if total.skeins == 1 else f"{total.skeins} skeins"
        free = shown.at_least_length(one.free_m)
        return Sentence("idle", f"Holds {held}", f" in {skeins}; {free} free.")
    if one.yarn.bought:
        return Sentence("idle", "Still to be bought", _ball_said(one.yarn, shown))
    if one.could_be and one.fleece:
        metres = shown.length_range(one.could_be)
        return Sentence("idle", "Still to be spun:", f" {one.fleece.name} could become {metres}.")
    return Sentence(
        "idle", "Still to be spun.", " Choose its fleece and a grist to see how far it goes."
    )


def _ball_said(yarn: Yarn, shown: Shown) -> str:
    if not (yarn.ball_mg and yarn.ball_mm):
        return "."
    length, mass = shown.length(yarn.ball_mm / 1000), shown.mass(yarn.ball_mg / 1000)
    return f", in balls of {mass}, {length}."


def _all_said(yarns: list[YarnSum], shown: Shown) -> Sentence:
    if not yarns:
        return Sentence("idle", "No yarn yet.")
    mm, mg = (sum(getattr(one.total, field) for one in yarns) for field in ("mm", "mg"))
    count = "One yarn holds" if len(yarns) == 1 else f"{len(yarns)} yarns hold"
    return Sentence("idle", f"{count} {shown.length(mm / 1000)}", f", {shown.mass(mg / 1000)}.")


def _stray(one: YarnSum, shown: Shown) -> str:
    """How alike the skeins are, in percent of their grist."""
    if one.spread is None or not one.tex:
        return ""
    return f"its skeins stray by {shown.percent(100 * one.spread / one.tex, 1)} from one another"


def _swatches(book: Book, yarn: Yarn) -> list[Swatch]:
    """The swatches of a yarn that are at hand."""
    return [one for one in book.swatches if one.yarn_id == yarn.id and one.put_away is None]


def _plan_lines(
    one: KnownYarn, book: Book, reckoning: Reckoning, shown: Shown
) -> tuple[PlanLine, ...]:
    answers = {answer.plan_id: answer for answer in reckoning.plans}
    return tuple(
        plan_line(plan, answers[plan.id], book, shown) for plan in one.plans if plan.id in answers
    )
