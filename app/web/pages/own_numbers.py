"""Your own numbers: what was learned, before and after, and from which measurements."""

from dataclasses import dataclass

from app.craft.learning import Standing
from app.planning.learning import Learnt
from app.planning.learning.before_after import BeforeAfter, Range, before_after
from app.planning.learning.factors import factor_of
from app.planning.learning.observed import Observation, Told
from app.web.pages.answer import Sentence, counted, listed
from app.web.pages.learned_said import EffectRow, drifts_said, effect_rows
from app.web.shown import Shown

IN_FORCE = "what you measured"
SETTING = "your own setting: you changed it"


@dataclass(frozen=True, slots=True)
class RangeBar:
    """Two ranges on one scale of 0 to 100: where each begins, and how wide it is."""

    before_at: float
    before_wide: float
    now_at: float
    now_wide: float


@dataclass(frozen=True, slots=True)
class NumberRow:
    """A factor of one case, in words."""

    what: str
    whose: str
    before: str
    now: str
    seen: int
    used: str
    bar: RangeBar


@dataclass(frozen=True, slots=True)
class SeenRow:
    """A measurement: where it leads, what it said, what was to be expected, and what became of it.
    `press` is the verdict its button asks for, empty to take a mark off; `button` its words."""

    key: str
    what: str
    url: str
    measured: str
    usual: str
    standing: Standing
    told: str
    press: str
    button: str


@dataclass(frozen=True, slots=True)
class OwnNumbersPage:
    answer: Sentence
    rows: tuple[NumberRow, ...]
    aside: tuple[SeenRow, ...]
    struck: tuple[SeenRow, ...]
    counting: tuple[SeenRow, ...]
    effects: tuple[EffectRow, ...]
    drifts: tuple[str, ...]


def own_numbers_page(learnt: Learnt, shown: Shown) -> OwnNumbersPage:
    """All that is learned, the latest measurements first."""
    told = sorted(learnt.told, key=lambda one: one.observation.day, reverse=True)
    seen = [_seen(one, shown) for one in told]
    return OwnNumbersPage(
        answer=_answer(told),
        rows=tuple(_row(one, shown) for one in before_after(learnt)),
        aside=tuple(one for one in seen if one.standing == "set aside"),
        struck=tuple(one for one in seen if one.standing == "struck out"),
        counting=tuple(one for one in seen if one.standing in ("counts", "let in")),
        effects=tuple(effect_rows(learnt.book, shown)),
        drifts=tuple(drifts_said(learnt.book, shown)),
    )


def _answer(told: list[Told]) -> Sentence:
    counting = sum(1 for one in told if one.counts)
    aside = [one.observation.what for one in told if one.standing == "set aside"]
    if not told:
        return Sentence("idle", "Nothing is learned yet.", " Until then common practice is used.")
    lead = f"Learned from {counted(counting, 'measurement')} of your own."
    if not aside:
        return Sentence("enough", lead, " None of them was set aside.")
    verb = "is" if len(aside) == 1 else "are"
    return Sentence("waiting", lead, f" {listed(aside[:5])} {verb} set aside: too far off.")


def _row(one: BeforeAfter, shown: Shown) -> NumberRow:
    return NumberRow(
        what=one.words,
        whose=one.whose,
        before=_told(one.before, one.unit, shown),
        now=_told(one.now, one.unit, shown),
        seen=one.seen,
        used=SETTING if one.set_herself else IN_FORCE,
        bar=_bar(one.before, one.now),
    )


def _bar(before: Range, now: Range) -> RangeBar:
    low, high = min(before[0], now[0]), max(before[1], now[1])
    scale = 100 / (high - low)

    def part(one: Range) -> tuple[float, float]:
        return round((one[0] - low) * scale, 1), round((one[1] - one[0]) * scale, 1)

    return RangeBar(*part(before), *part(now))


def _seen(one: Told, shown: Shown) -> SeenRow:
    observation = one.observation
    press, button = {
        "set aside": ("let in", "Let it in"),
        "struck out": ("", "Count it again"),
        "let in": ("", "Set it aside again"),
        "counts": ("struck out", "Strike it out"),
    }[one.standing]
    return SeenRow(
        key=observation.key,
        what=f"{observation.what}, {shown.day(observation.day)}",
        url=f"/skeins/{observation.holding_id}" if _of_skein(observation) else "",
        measured=_one(observation.measured, observation.unit, shown),
        usual=_one(observation.usual, observation.unit, shown),
        standing=one.standing,
        told=listed([factor_of(name).words for name in observation.factors]),
        press=press,
        button=button,
    )


def _of_skein(one: Observation) -> bool:
    return bool(one.holding_id) and one.factors[0] in ("shrink", "finish", "grist")


def _told(span: Range, unit: str, shown: Shown) -> str:
    low, high = span
    if unit == "share":
        return f"{_percent(low, shown)} to {shown.percent(100 * high, 1)}"
    if unit in ("m/h", "g/h"):
        low_told, high_told = (_amount(one, unit, shown) for one in span)
        return f"{low_told} to {high_told} an hour"
    return f"{shown.number(low, 2)} to {shown.number(high, 2)} {unit}"


def _one(value: float, unit: str, shown: Shown) -> str:
    if unit == "share":
        return shown.percent(100 * value, 1)
    if unit in ("m/h", "g/h"):
        return f"{_amount(value, unit, shown)} an hour"
    return f"× {shown.number(value, 3)}"


def _amount(value: float, unit: str, shown: Shown) -> str:
    return shown.length(value) if unit == "m/h" else shown.mass(value)


def _percent(share: float, shown: Shown) -> str:
    return shown.number(100 * share, 1, least=0)
