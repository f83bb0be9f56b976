"""The page of a bobbin: is the single as meant, and what to change."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date

from app.book.holding import Holding
from app.book.yarn import Yarn
from app.craft.spinning import Check
from app.planning.bobbins import BobbinAnswer
from app.web.forms.bobbin import WAY_WORDS
from app.web.forms.filled import Filled
from app.web.pages.answer import Sentence
from app.web.shown import Shown, as_typed


@dataclass(frozen=True, slots=True)
class CheckLine:
    """A check in words, and where to take it out."""

    words: str
    remove_url: str


@dataclass(frozen=True, slots=True)
class BobbinPage:
    """`ends` are metres that its end gives, by what is done with it, in words."""

    bobbin: Holding
    yarn: Yarn | None
    answer: Sentence
    advice: str
    spread: str
    checks: tuple[CheckLine, ...]
    wool: Mapping[str, str]
    ends: Mapping[str, str]
    ways: Mapping[str, str]
    form: Filled
    today: date


@dataclass(frozen=True, slots=True)
class NewBobbinPage:
    form: Filled
    yarns: Mapping[str, str]


def bobbin_page(
    answer: BobbinAnswer, wool: Mapping[str, str], shown: Shown, form: Filled | None = None
) -> BobbinPage:
    """A bobbin, with the form as it was typed where a field was at fault."""
    last = answer.last
    return BobbinPage(
        bobbin=answer.bobbin,
        yarn=answer.yarn,
        answer=_said(answer, shown),
        advice=_advice(last, shown) if last else "",
        spread=f"Along a bobbin your singles stray by {shown.percent(100 * answer.spread)}.",
        checks=tuple(
            CheckLine(
                f"{shown.day(one.day)}: {shown.grist(one.tex)} ({as_typed(one.typed, 'wraps')}"
                f"{', ' + check.word if check else ''})",
                f"/bobbins/{answer.bobbin.id}/checks/{one.reading_id}/remove",
            )
            for one, check in reversed(answer.checks)
        ),
        wool=wool,
        ends={way: shown.at_least_length(m) for way, m in answer.ends.items()},
        ways=WAY_WORDS,
        form=form or Filled({"day": date.today().isoformat(), "way": "plied on itself"}),
        today=date.today(),
    )


def _said(answer: BobbinAnswer, shown: Shown) -> Sentence:
    held = f" {shown.mass(answer.g)} on it." if answer.g > 0 else " Nothing is weighed on it yet."
    last, meant = answer.last, answer.meant_tex
    if meant is None:
        return Sentence("idle", "No single is meant for it yet.", held)
    aim = f"{shown.grist(meant)} is meant"
    if last is None:
        return Sentence("idle", f"{aim}.", f"{held} Not checked yet.")
    found = shown.grist(last.tex.value)
    if last.close:
        return Sentence("enough", "As meant:", f" {found}, and {aim}.{held}")
    off = shown.percent(100 * abs(last.heavier))
    word = "Too heavy" if last.heavier > 0 else "Too fine"
    return Sentence("short", f"{word} by {off}:", f" {found}, and {aim}.{held}")


def _advice(check: Check, shown: Shown) -> str:
    """What to change at the wheel: the same fibre over so much more or less length."""
    unsure = shown.percent(100 * check.tex.u / check.tex.value)
    if check.close:
        return f"Go on as you do. The check itself is sure to {unsure}."
    times = shown.number(1 + check.heavier, 2)
    if check.heavier > 0:
        change = f"Draw the same fibre out {times} times as long before the twist takes it"
    else:
        change = f"Let in more fibre: draw it out only {times} times as long as you do"
    again = "Check again after a few metres"
    return f"{change}. {again}; the check itself is sure to {unsure}."
