"""What the shelf covers: every garment alone and in order, the best set, garments for somebody."""

from collections.abc import Mapping
from dataclasses import dataclass
from urllib.parse import urlencode

from app.book.book import Book
from app.planning.shelf_covers import Covered
from app.planning.shelf_covers_best import Best, Value
from app.planning.shelf_covers_person import Standard
from app.web.forms.options import names_by_id, with_none
from app.web.pages.answer import counted, listed, number_word
from app.web.shown import Shown
from app.work.shelf_covers import AskedOfShelf, Covers, Order, SoFar

VALUE_WORDS: dict[Value, str] = {
    "garments": "as many garments as can be",
    "wool": "as much of the wool as can be used",
    "spinning": "as many as need no more spinning",
    "priorities": "those that come first in your order",
}

TONES = {
    "fits": "enough",
    "fits after spinning": "waiting",
    "short": "short",
    "wasteful": "waiting",
}


@dataclass(frozen=True, slots=True)
class StandsSaid:
    """How a plan stands: the word, its tone, and the figures that go with it."""

    word: str
    tone: str
    figures: str


@dataclass(frozen=True, slots=True)
class CoverRow:
    """A garment alone, in the order there is, and in the other; `place` is where it is asked to
    stand in that."""

    plan_id: str
    name: str
    place: int
    alone: StandsSaid
    now: StandsSaid
    other: StandsSaid | None


@dataclass(frozen=True, slots=True)
class StandardRow:
    """A garment that could be planned; `url` asks the quick reckoning for it."""

    kind: str
    yarn: str
    stands: StandsSaid
    url: str


@dataclass(frozen=True, slots=True)
class ShelfPage:
    """`compared` tells that another order is shown, which can be kept."""

    sentence: str
    rows: tuple[CoverRow, ...]
    compared: bool
    other_sentence: str
    anew: bool
    order: tuple[str, ...]
    stamp: str
    value: Value
    values: Mapping[Value, str]
    best: str
    best_names: tuple[tuple[str, str, StandsSaid], ...]
    person: str
    people: Mapping[str, str]
    standards: tuple[StandardRow, ...]


@dataclass(frozen=True, slots=True)
class LookingPage:
    """The shelf while it is looked at: steps done of so many, or stopped; `query` is what was
    asked."""

    done: int
    of: int
    going_on: bool
    query: str


def looking_page(so_far: SoFar, going_on: bool, query: str) -> LookingPage:
    return LookingPage(so_far.done, so_far.of, going_on, query)


def shelf_page(book: Book, covers: Covers, asked: AskedOfShelf, shown: Shown) -> ShelfPage:
    other = covers.other
    order = other.ids if other else covers.now.ids
    return ShelfPage(
        sentence=_sentence(covers.now),
        rows=tuple(_row(one, covers, order, shown) for one in covers.alone),
        compared=other is not None,
        other_sentence=_sentence(other) if other else "",
        anew=asked.anew,
        order=order,
        stamp=covers.stamp,
        value=asked.value,
        values=VALUE_WORDS,
        best=_best_said(covers.best, len(covers.alone), shown),
        best_names=tuple(
            (one.name, f"/garments/{one.plan_id}", stands_said(one, shown))
            for one in covers.best.plans
        ),
        person=asked.person_id,
        people=with_none("nobody", names_by_id(book.people)),
        standards=tuple(_standard(one, asked.person_id, shown) for one in covers.standards),
    )


def stands_said(one: Covered, shown: Shown) -> StandsSaid:
    """How a plan stands, in words."""
    return StandsSaid(one.standing, TONES.get(one.standing, "idle"), _figures(one, shown))


def _figures(one: Covered, shown: Shown) -> str:
    match one.standing:
        case "fits":
            return f"{shown.odds(one.odds)}, about {shown.length(one.left_m)} left"
        case "wasteful":
            return f"about {shown.length(one.left_m)} left, and it takes {shown.length(one.need_m)}"
        case "fits after spinning":
            return f"{shown.short_length(one.spin_m)} to spin"
        case "short":
            spin = f"{shown.short_length(one.spin_m)} to spin, " if one.spin_m else ""
            return f"{spin}{shown.short_length(one.buy_m)} to buy"
        case "not known":
            return "add its parts, gauge or yarn"


def _row(one: Covered, covers: Covers, order: tuple[str, ...], shown: Shown) -> CoverRow:
    other = covers.other
    return CoverRow(
        plan_id=one.plan_id,
        name=one.name,
        place=order.index(one.plan_id) + 1,
        alone=stands_said(one, shown),
        now=stands_said(covers.now.covered[one.plan_id], shown),
        other=stands_said(other.covered[one.plan_id], shown) if other else None,
    )


def _sentence(order: Order) -> str:
    stands = [one.standing for one in order.covered.values()]
    if not stands:
        return "No garment is planned that has not been begun."
    fits = sum(one in ("fits", "wasteful") for one in stands)
    later = sum(one == "fits after spinning" for one in stands)
    said = f"{number_word(fits).capitalize()} of {counted(len(stands), 'garment')}"
    said += " is covered" if fits == 1 else " are covered"
    return f"{said}, {number_word(later)} more after spinning." if later else f"{said}."


def _best_said(best: Best, planned: int, shown: Shown) -> str:
    if not best.plans:
        return "No garment is covered, even alone."
    names = listed([one.name for one in best.plans])
    known = "" if planned == len(best.plans) else _how_good(best, shown)
    return f"{names}.{known}"


def _how_good(best: Best, shown: Shown) -> str:
    if best.proven:
        return " No other set does better."
    most = shown.mass(best.bound) if best.value == "wool" else counted(int(best.bound), "garment")
    return f" No set comes to more than {most}; whether one comes closer was not tried."


def _standard(one: Standard, person_id: str, shown: Shown) -> StandardRow:
    answer = one.answer
    if answer.enough:
        wasteful = answer.left_m > answer.need.value
        left = f"{shown.odds(answer.odds)}, about {shown.length(answer.left_m)} left"
        word = "wasteful" if wasteful else "fits"
        stands = StandsSaid(word, TONES[word], left)
    else:
        stands = StandsSaid("short", "short", f"{shown.short_length(answer.short_m)} more")
    gauge = {"gauge_measure": shown.settings.gauge_unit, "gauge_washed": "yes"}
    asked = {"yarn": one.yarn_id, "garment": one.kind, "person": person_id}
    query = urlencode(asked | gauge)
    return StandardRow(one.kind, one.yarn, stands, f"/quick?{query}")
