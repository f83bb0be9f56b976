"""The spinning plan of a yarn: what to put on the bobbins so that the finished yarn is as meant."""

from dataclasses import dataclass, replace

from app.book.book import Book
from app.book.fleece import Fleece
from app.book.spinning import Spinning
from app.book.yarn import Yarn
from app.craft.chain import Chain, Making, backwards
from app.craft.figure import Figure
from app.craft.fleece import yarn_from
from app.craft.spinning import AtRatio, Shared, at_ratio, shared_out
from app.craft.twist_direction import Direction, opposite
from app.craft.twist_uses import Balance, TwistTold, balance, twist_told
from app.craft.working import Step
from app.planning.answers import Reckoning
from app.planning.fleeces import fleece_yield, losses_for, losses_in_force
from app.planning.learning import Learnt
from app.planning.learning.in_force import learned_from, lost_in
from app.planning.spinning_sample import Sample, sample_of
from app.planning.spinning_targets import KNOWN_U, Targets, targets
from app.planning.time_pace import hours_of, pace_step
from app.planning.yarns import Lots

LONG_DRAFT_CM = 30.0
"""A length of single to count treadles over: an arm's draft (practice)."""

SOME_MM = 100_000
"""A length of yarn to reckon a single for, which is the same for any."""

SPUN: Direction = "Z"
"""How singles are usually spun where the final twist is not said (practice)."""


@dataclass(frozen=True, slots=True)
class SpinningPlan:
    """Targets and what follows. `each_m` are metres of each single, or of the one that is
    chain-plied; `outcome_tex` and `outcome_m` are what the fibre becomes by her own spread.
    `singles` and `plying` tell how to put the twist in at each ratio."""

    targets: Targets
    chain: Chain
    each_m: float
    prepared_g: float
    shared: Shared
    told: TwistTold
    balance: Balance | None
    spin_way: Direction
    ply_way: Direction | None
    singles: tuple[AtRatio, ...]
    plying: tuple[AtRatio, ...]
    outcome_tex: Figure
    outcome_m: Figure
    hours: tuple[tuple[str, Figure], ...]
    sample: Sample | None
    steps: tuple[Step, ...]


def spinning_plan(book: Book, reckoning: Reckoning, yarn: Yarn) -> SpinningPlan | str:
    """How to spin a yarn, or what must be said first, in words."""
    meant = targets(book, reckoning, yarn)
    return meant if isinstance(meant, str) else _plan(book, reckoning.learnt, meant)


def single_meant(book: Book, reckoning: Reckoning, yarn: Yarn) -> float | None:
    """The single's tex that is meant, the same for any length of yarn; None while its targets are
    not known."""
    said = yarn.spinning or Spinning()
    some = replace(yarn, spinning=replace(said, wanted_mm=said.wanted_mm or SOME_MM))
    plan = spinning_plan(book, reckoning, some)
    return None if isinstance(plan, str) else plan.chain.single_tex.value


def _plan(book: Book, learnt: Learnt, meant: Targets) -> SpinningPlan:
    shrink = _shrink(book, learnt, meant)
    making = _making(book, learnt, meant, shrink)
    as_meant = backwards(meant.metres, making)
    sample = sample_of(book, meant.yarn, meant.tex.value, as_meant.single_tex.value)
    chain = _corrected(as_meant, sample.factor if sample else 1.0)
    prepared = chain.stages["prepared"].value
    wheel, twist, chained = meant.wheel, meant.twist, meant.said.chained
    bobbin_g = wheel.bobbin_mg / 1000 if wheel and wheel.bobbin_mg else None
    spin_way, ply_way = _ways(meant)
    outcome_tex, outcome_m = _outcome(learnt, meant, making, prepared)
    return SpinningPlan(
        targets=meant,
        chain=chain,
        each_m=chain.single_m.value if chained else chain.single_m.value / meant.plies,
        prepared_g=prepared,
        shared=shared_out(prepared, meant.plies, bobbin_g, chained),
        told=twist_told(twist.ply_per_cm, meant.tex.value),
        balance=_balance(meant),
        spin_way=spin_way,
        ply_way=ply_way,
        singles=_at_ratios(meant, twist.singles_per_cm),
        plying=_at_ratios(meant, twist.ply_per_cm) if meant.plies > 1 else (),
        outcome_tex=outcome_tex,
        outcome_m=outcome_m,
        hours=_hours(learnt, meant, chain),
        sample=sample,
        steps=_steps(learnt, meant, chain, shrink, sample),
    )


def _making(book: Book, learnt: Learnt, meant: Targets, shrink: Step) -> Making:
    steps, fleece = book.settings.steps, _fleece(learnt, meant)
    share = fleece_yield(fleece, learnt)[0] if fleece else Figure(1.0, "share")
    return Making(
        tex=meant.tex.value,
        plies=meant.plies,
        losses=losses_for(_state(meant), steps, learnt, fleece),
        yield_share=share,
        shrink=shrink.value / 100,
        take_up=steps.take_up / 100 if meant.plies > 1 else 0.0,
        chain_plied=meant.said.chained,
    )


def _state(meant: Targets) -> str:
    return meant.said.preparation or "carded"


def _fleece(learnt: Learnt, meant: Targets) -> Fleece | None:
    return learnt.book.fleece.get(meant.yarn.fleece_id or "")


def _shrink(book: Book, learnt: Learnt, meant: Targets) -> Step:
    """Length lost in finishing: of the yarn's own skeins, of the yarn it is to be like, or hers."""
    lots = Lots(book)
    for yarn_id in (meant.yarn.id, meant.said.like_yarn_id):
        share = lots.shrinkage(yarn_id) if yarn_id else None
        if share and share.u < KNOWN_U:
            how = f"skeins of {book.yarn[yarn_id or ''].name}, before and after"
            lost = max(0.0, 100 * share.value)
            return Step("Length lost in finishing", how, lost, "%", 100 * share.u, "", "measured")
    return lost_in("shrink", book.settings, learnt, meant.names).step


def _corrected(chain: Chain, factor: float) -> Chain:
    """The same wool in singles that are heavier by `factor`, and shorter by it."""
    return replace(
        chain,
        single_tex=chain.single_tex.scaled(factor),
        single_m=chain.single_m.scaled(1 / factor),
    )


def _ways(meant: Targets) -> tuple[Direction, Direction | None]:
    final = meant.yarn.twist or (SPUN if meant.plies == 1 else opposite(SPUN))
    return (final, None) if meant.plies == 1 else (opposite(final), final)


def _balance(meant: Targets) -> Balance | None:
    twist = meant.twist
    if meant.plies == 1:
        return None
    return balance(twist.singles_per_cm, twist.ply_per_cm, meant.plies)


def _at_ratios(meant: Targets, turns_per_cm: float) -> tuple[AtRatio, ...]:
    return tuple(at_ratio(turns_per_cm, ratio, LONG_DRAFT_CM) for ratio in meant.ratios)


def _outcome(
    learnt: Learnt, meant: Targets, making: Making, prepared_g: float
) -> tuple[Figure, Figure]:
    """Tex and metres of what the weighed fibre becomes, by how far her yarns and losses stray."""
    times = learnt.times("grist", meant.names, next_batch=False)
    tex = Figure(meant.tex.value, "tex", {"your own spread": meant.tex.value * times.sd})
    fibre = Figure(prepared_g, "g")
    yarn = yarn_from(fibre, _state(meant), making.yield_share, making.losses)
    return tex, yarn.scaled(1000).per(tex, "m")


def _hours(learnt: Learnt, meant: Targets, chain: Chain) -> tuple[tuple[str, Figure], ...]:
    yarn_id = meant.yarn.id
    hours = [("spin", hours_of(learnt, "spin", chain.single_m.value, yarn_id))]
    if meant.plies > 1:
        hours.append(("ply", hours_of(learnt, "ply", chain.plied_m.value, yarn_id)))
    return tuple(hours)


def _steps(
    learnt: Learnt, meant: Targets, chain: Chain, shrink: Step, sample: Sample | None
) -> tuple[Step, ...]:
    told = twist_told(meant.twist.ply_per_cm, meant.tex.value)
    seen = learnt.seen("grist")
    times = learnt.times("grist", meant.names, next_batch=False)
    spread = Step(
        "How far your yarns stray from the grist meant",
        learned_from(seen) if seen else "common practice, nothing measured yet",
        100 * times.sd,
        "%",
        None,
        "",
        "measured" if seen else "practice",
    )
    used = losses_in_force(
        _state(meant), learnt.book.settings.steps, learnt, _fleece(learnt, meant)
    )
    lost = [used[name].step for name in ("spin", "finish")]
    steps = [*chain.steps, shrink, *lost, spread, *told.steps]
    balanced = _balance(meant)
    steps += [sample.step] if sample else []
    steps += [balanced.step] if balanced else []
    works = ("spin", "ply") if meant.plies > 1 else ("spin",)
    return (*steps, *(pace_step(learnt, one, meant.yarn.id) for one in works))
