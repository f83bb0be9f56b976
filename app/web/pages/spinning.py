"""How to spin a yarn: the sheet of the wheel, on the screen and on paper."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date

from app.book.book import Book
from app.book.yarn import Yarn
from app.craft.spinning import AtRatio
from app.craft.thickness import wraps_expected
from app.craft.working import Step
from app.planning.answers import Reckoning
from app.planning.bobbins import started
from app.planning.spinning_plan import SpinningPlan, spinning_plan
from app.planning.yarns import Lots
from app.web.forms.filled import Filled
from app.web.forms.spinning import (
    PREPARATIONS,
    filled_spinning,
    per_size,
    use_options,
    wheel_options,
)
from app.web.pages.answer import Sentence, counted
from app.web.shown import THIN, Shown

Fact = tuple[str, str]


@dataclass(frozen=True, slots=True)
class RatioRow:
    """A ratio of the wheel: treadles over a long draft, and the draft for one, of the singles and
    of the ply."""

    ratio: str
    singles: Fact
    plying: Fact | None


@dataclass(frozen=True, slots=True)
class BobbinLine:
    """A bobbin to spin, its weight of fibre in words."""

    name: str
    fibre: str


@dataclass(frozen=True, slots=True)
class SpinningPage:
    """`facts` are what to spin, `ratios` how at the wheel, `bobbins` how to weigh out; all empty
    while the yarn is not planned. `made` are bobbins of it by name; `like` the yarn it is like."""

    yarn: Yarn
    answer: Sentence
    facts: tuple[Fact, ...]
    ratios: tuple[RatioRow, ...]
    long_draft: str
    bobbins: tuple[BobbinLine, ...]
    sample: str
    steps: tuple[Step, ...]
    note: str
    wheel: str
    like: Yarn | None
    made: Mapping[str, str]
    like_form: Filled
    today: date


@dataclass(frozen=True, slots=True)
class SpinningFormPage:
    yarn: Yarn
    form: Filled
    uses: dict[str, str]
    preparations: dict[str, str]
    wheels: dict[str, str]


def spinning_page(
    book: Book, reckoning: Reckoning, yarn: Yarn, like_form: Filled | None = None
) -> SpinningPage:
    """The plan of a yarn; `like_form` is the form for more like it, with its faults."""
    shown, said = Shown(book.settings), yarn.spinning
    plan = spinning_plan(book, reckoning, yarn)
    planned = None if isinstance(plan, str) else plan
    wheel = book.wheel.get((said.wheel_id if said else None) or "")
    return SpinningPage(
        yarn=yarn,
        answer=_missing(plan) if isinstance(plan, str) else _answer(plan, shown),
        facts=_facts(plan, shown) if not isinstance(plan, str) else (),
        ratios=_ratios(planned, shown),
        long_draft=shown.size(300),
        bobbins=_bobbins(planned, shown),
        sample=_sample(planned, shown),
        steps=planned.steps if planned else (),
        note=said.note if said else "",
        wheel=wheel.name if wheel else "",
        like=book.yarn.get((said.like_yarn_id if said else None) or ""),
        made={one.id: one.code for one in started(book, yarn.id)},
        like_form=like_form or Filled(_like_values(book, yarn, shown)),
        today=date.today(),
    )


def spinning_form_page(book: Book, yarn: Yarn, form: Filled | None = None) -> SpinningFormPage:
    """The form of the targets, as they are or as they were typed."""
    shown = Shown(book.settings)
    wheels = wheel_options(book)
    return SpinningFormPage(
        yarn, form or filled_spinning(yarn, shown), use_options(), PREPARATIONS, wheels
    )


def twist_told(per_cm: float, shown: Shown) -> str:
    """Turns as she counts them, per centimetre or per inch."""
    turns = per_cm * 100 * per_size(shown)
    return f"{shown.number(turns, 1)} turns per {'cm' if shown.size_unit == 'cm' else 'inch'}"


def _missing(words: str) -> Sentence:
    return Sentence("idle", "Nothing to spin by yet.", f" {words}")


def _answer(plan: SpinningPlan, shown: Shown) -> Sentence:
    single, fibre = shown.grist(plan.chain.single_tex.value), shown.short_mass(plan.prepared_g)
    share = plan.shared
    each = shown.short_length(plan.each_m)
    what = "the yarn" if plan.targets.plies == 1 else "each single"
    weighed = f"{counted(share.in_all, 'bobbin')} of {shown.mass(share.each_g)} of fibre"
    return Sentence(
        "waiting", f"Spin at {single}:", f" {each} of {what}, {fibre} of fibre in {weighed}."
    )


def _facts(plan: SpinningPlan, shown: Shown) -> tuple[Fact, ...]:
    meant, chain, twist = plan.targets, plan.chain, plan.targets.twist
    single, plied = chain.single_tex.value, meant.plies > 1
    plies = "singles" if not plied else f"{meant.plies} plies"
    plies += ", chain-plied" if meant.said.chained else ""
    wraps = shown.number(wraps_expected(single).value)
    made = f"{shown.short_length(meant.metres)} at {shown.grist(meant.tex.value)}, {plies}"
    facts = [
        ("Finished yarn", f"{made}, for {meant.use}"),
        ("The single", f"{shown.grist(single)}, about {wraps} wraps in an inch"),
        ("Of each single", shown.short_length(plan.each_m)),
        ("Twist of the single", f"{plan.spin_way}, {twist_told(twist.singles_per_cm, shown)}"),
    ]
    if plied:
        facts.append(("Twist of the ply", f"{plan.ply_way}, {twist_told(twist.ply_per_cm, shown)}"))
        facts.append(("To ply", f"{shown.short_length(chain.plied_m.value)} before finishing"))
    facts += [
        ("Angle of the twist", f"{shown.number(plan.told.angle)}° in the finished yarn"),
        ("Fibre, ready to spin", shown.short_mass(plan.prepared_g)),
        ("It becomes", f"{shown.length_range(plan.outcome_m)}, 9 times in 10"),
        *_hours(plan, shown),
    ]
    return tuple(facts)


def _hours(plan: SpinningPlan, shown: Shown) -> list[Fact]:
    words = {"spin": "Hours of spinning", "ply": "Hours of plying"}
    return [
        (words[work], f"{shown.number(one.value, 1)} ± {shown.number(one.u, 1)}{THIN}h")
        for work, one in plan.hours
    ]


def _ratios(plan: SpinningPlan | None, shown: Shown) -> tuple[RatioRow, ...]:
    if plan is None:
        return ()
    plying: tuple[AtRatio | None, ...] = plan.plying or (None,) * len(plan.singles)
    return tuple(
        RatioRow(
            f"{shown.number(one.ratio, 2, least=0)} : 1",
            _at(one, shown),
            _at(other, shown) if other else None,
        )
        for one, other in zip(plan.singles, plying, strict=True)
    )


def _at(one: AtRatio, shown: Shown) -> Fact:
    return shown.number(one.treadles, 1), shown.size(round(one.draft_cm * 10, 0))


def _bobbins(plan: SpinningPlan | None, shown: Shown) -> tuple[BobbinLine, ...]:
    if plan is None:
        return ()
    share, grams = plan.shared, shown.mass(plan.shared.each_g)
    many = share.loads > 1
    return tuple(
        BobbinLine(f"{f'Load {load}, ' if many else ''}single {single}", f"{grams} of fibre")
        for load in range(1, share.loads + 1)
        for single in range(1, share.bobbins + 1)
    )


def _sample(plan: SpinningPlan | None, shown: Shown) -> str:
    if plan is None:
        return ""
    sample = plan.sample
    if sample is None:
        return "Spin a sample skein first, finish it and measure it: it corrects the single."
    came = f"{counted(sample.skeins, 'skein')} came to {shown.grist(sample.tex)}"
    singles = "of singles as they were checked" if sample.checked else "of singles as meant"
    change = 100 * (sample.factor - 1)
    word = "heavier" if change > 0 else "finer"
    by = f"{shown.percent(abs(change), 1)} {word}" if abs(change) >= 0.05 else "no different"
    return f"{came[0].upper()}{came[1:]}, {singles}: the next single is to be {by}."


def _like_values(book: Book, yarn: Yarn, shown: Shown) -> dict[str, str]:
    usual = Lots(book).usual_skein_m(yarn.id)
    return {"wanted": shown.field_length(1000 * round(usual)) if usual else ""}
