"""The answer to "is it enough?" as a sentence: one home for the words, wherever a plan appears."""

from dataclasses import dataclass
from typing import Literal

from app.book.book import Book
from app.book.plan import Plan
from app.book.shape import Metres, Stated
from app.planning.answers import GroupAnswer, PartAnswer, PlanAnswer
from app.web.shown import Shown

Tone = Literal["short", "waiting", "enough", "idle"]

COUNT_WORDS = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten")


@dataclass(frozen=True, slots=True)
class Sentence:
    """A sentence: its `lead` is the answer, its `rest` the figures that go with it."""

    tone: Tone
    lead: str
    rest: str = ""


def answer_sentence(answer: PlanAnswer, book: Book, shown: Shown) -> Sentence:
    """The answer for a plan that is reckoned with, in full."""
    if not answer.begun:
        return Sentence("idle", "Nothing to reckon yet:", f" {what_is_missing(answer, book)}")
    if answer.enough:
        return Sentence(
            "enough", "Enough:", f" {_reaches(answer, shown)}, and {_left(answer, shown)}."
        )
    if answer.waiting:
        return Sentence("waiting", "Not promised yet:", _waiting(answer, book, shown))
    lead = f"Short by {shown.short_length(answer.to_make_m)}"
    rest = f"{_short_of(answer, book, shown)}{_besides(answer, shown)}"
    return Sentence("short", lead, f"{rest} {_as_it_stands(answer, shown)}")


def answer_in_short(answer: PlanAnswer, book: Book, shown: Shown) -> Sentence:
    """The answer for a plan in a list of plans; a short plan still says what is missing."""
    full = answer_sentence(answer, book, shown)
    if answer.begun and full.tone == "short":
        return Sentence(full.tone, full.lead, _short_of(answer, book, shown))
    if answer.begun and full.tone == "enough":
        return Sentence(full.tone, full.lead, f" {_reaches(answer, shown)}.")
    return full


def done_sentence(plan: Plan, book: Book, shown: Shown) -> Sentence:
    """What there is to say of a plan that is finished or put away: it wants no more yarn."""
    mine = [one for one in book.holdings if one.plan_id == plan.id and one.kind == "garment"]
    mg = sum(book.balances[one.id].mg for one in mine if one.id in book.balances)
    rest = f" {shown.mass(mg / 1000)} of yarn went into it." if mg > 0 else ""
    return Sentence("idle", f"{plan.state.capitalize()}.", rest)


def what_is_missing(answer: PlanAnswer, book: Book) -> str:
    """What has to be said before a plan can be reckoned."""
    if not answer.parts:
        return "add the first part of it."
    unknown = listed([one.name for one in answer.parts if _without_gauge(one, book)])
    return f"say what gauge {unknown} will be knit to, or choose the yarn."


def yarn_name(yarn_id: str | None, book: Book) -> str:
    """A yarn's name as it stands in a sentence."""
    return book.yarn[yarn_id].name if yarn_id else "a yarn still to be chosen"


def listed(words: list[str]) -> str:
    """Words as a list in a sentence: "body", "body and sleeves", "body, sleeves and yoke"."""
    return " and ".join(filter(None, (", ".join(words[:-1]), *words[-1:])))


def number_word(count: int) -> str:
    """A count in words up to ten: "no", "one", "ten", "14"."""
    return COUNT_WORDS[count] if count < len(COUNT_WORDS) else str(count)


def counted(count: int, thing: str) -> str:
    """A count of things: "one skein", "two skeins", "14 skeins"."""
    return f"{number_word(count)} {thing}" if count == 1 else f"{number_word(count)} {thing}s"


def _without_gauge(part: PartAnswer, book: Book) -> bool:
    """True for a knitted part whose stitches are not known for want of a gauge."""
    return part.stitches is None and not isinstance(book.part[part.part_id].shape, Stated | Metres)


def _reaches(answer: PlanAnswer, shown: Shown) -> str:
    times = shown.odds(answer.odds)
    before = times == "hardly ever"
    return f"it {times} reaches the end" if before else f"it reaches the end {times}"


def _left(answer: PlanAnswer, shown: Shown) -> str:
    expected = f"about {shown.length(answer.left_m)} will be left"
    if answer.left_at_least_m <= 0:
        return expected
    return f"{expected}, at least {shown.at_least_length(answer.left_at_least_m)}"


def _waiting(answer: PlanAnswer, book: Book, shown: Shown) -> str:
    wanted = [_free_yarn(one, book, shown) for one in answer.groups if one.short_m > 0]
    return f" {listed(wanted)} would make it sure enough, and the shelf has it free."


def _free_yarn(group: GroupAnswer, book: Book, shown: Shown) -> str:
    """Metres that are wanted, of those yarns of the group that are free."""
    names = " or ".join(yarn_name(one, book) for one in group.free_yarn_ids)
    amounts = _amounts(group.short_g, group.short_skeins, shown)
    return f"{shown.short_length(group.short_m)} of {names}" + (f" ({amounts})" if amounts else "")


def _besides(answer: PlanAnswer, shown: Shown) -> str:
    """Yarn that is free and was not promised yet, beside what must be made."""
    if answer.free_to_promise_m < 1:
        return ""
    free = shown.at_least_length(answer.free_to_promise_m)
    return f" Another {free} is free and can still be promised."


def _of_yarn(group: GroupAnswer, book: Book, shown: Shown) -> str:
    return f"{shown.short_length(group.to_make_m)} of {yarn_name(group.yarn_id, book)}"


def _short_of(answer: PlanAnswer, book: Book, shown: Shown) -> str:
    lacking = [one for one in answer.groups if one.to_make_m > 0]
    if len(lacking) != 1:
        return f": {listed([_with_weight(one, book, shown) for one in lacking])}."
    amounts = _to_make(lacking[0], shown)
    named = f" of {yarn_name(lacking[0].yarn_id, book)}"
    return f"{named}: {amounts}." if amounts else f"{named}."


def _with_weight(group: GroupAnswer, book: Book, shown: Shown) -> str:
    amounts = _to_make(group, shown)
    return _of_yarn(group, book, shown) + (f" ({amounts})" if amounts else "")


def _amounts(grams: float | None, skeins: int | None, shown: Shown) -> str:
    weight = [] if grams is None else [f"about {shown.short_mass(grams)} of yarn"]
    return ", ".join(weight + ([counted(skeins, "skein")] if skeins else []))


def _to_make(group: GroupAnswer, shown: Shown) -> str:
    return _amounts(group.to_make_g, group.to_make_skeins, shown)


def _as_it_stands(answer: PlanAnswer, shown: Shown) -> str:
    asked = shown.odds(answer.sureness)
    return f"As it stands {_reaches(answer, shown)}; you asked for {asked}."
