"""What a change did, in a sentence: how much more it takes, and whether there is enough now."""

from app.book.words import OPEN_STATES
from app.planning.answers import PlanAnswer
from app.planning.changes import Effect, YarnChange
from app.web.pages.answer import listed
from app.web.shown import Shown

NO_METRE = 0.5
"""Metres below which a change of the need is not worth a word."""

UNSURE = 0.05
"""Share by which a need becomes more or less sure before that is worth a word."""

NO_ODDS = 0.025
"""Odds below which a change of them is not: half a time in twenty."""


def effect_sentence(effect: Effect | None, shown: Shown) -> str:
    """For instance "This takes 34 m more (15 g): short by 12 m now.", or what it takes of each yarn
    where several change; empty where nothing that matters was changed, or there is nothing to
    reckon."""
    if effect is None or not effect.after.begun or effect.after.state not in OPEN_STATES:
        return ""
    now = _now(effect.before, effect.after, shown)
    yarns = [one for one in effect.yarns if abs(one.m) >= NO_METRE]
    if len(yarns) > 1 and effect.before.begun:
        return f"This takes {listed([_of_yarn(one, shown) for one in yarns])}: {now}."
    if abs(effect.m) >= NO_METRE:
        return f"{_takes(effect, shown)}: {now}."
    return _as_much(effect, now, shown)


def _as_much(effect: Effect, now: str, shown: Shown) -> str:
    """A change that leaves the need as it is may make it more or less sure."""
    before, after = effect.before.need.u, effect.after.need.u
    if abs(after - before) >= UNSURE * before + NO_METRE:
        surely = "less surely" if after > before else "more surely"
        whole = shown.length_give_or_take(effect.after.need)
        return f"This takes as much yarn as before, but {surely}, {whole}: {now}."
    if abs(effect.after.odds - effect.before.odds) >= NO_ODDS:
        return f"This takes as much yarn as before: {now}."
    return ""


def _of_yarn(one: YarnChange, shown: Shown) -> str:
    more = "more" if one.m > 0 else "less"
    weight = f" ({shown.mass(abs(one.g))})" if one.g else ""
    return f"{shown.length(abs(one.m))} {more} of {one.name}{weight}"


def _takes(effect: Effect, shown: Shown) -> str:
    if not effect.before.begun:
        return f"This takes {shown.short_length(effect.after.need.value)} in all"
    more = "more" if effect.m > 0 else "less"
    weight = f" ({shown.mass(abs(effect.g))})" if effect.g else ""
    return f"This takes {shown.length(abs(effect.m))} {more}{weight}"


def _now(was: PlanAnswer, plan: PlanAnswer, shown: Shown) -> str:
    if plan.enough:
        return f"enough{' still' if was.enough else ''}, {shown.odds(plan.odds)}"
    if plan.waiting:
        return f"not promised yet: {shown.short_length(plan.short_m)}, and the shelf has it free"
    return f"short by {shown.short_length(plan.to_make_m)} now"
