"""Yarn that no stitch of a part holds: tails, the swatch, unusable ends, yarn for mending."""

from math import ceil

from app.book.plan import Losses, Plan
from app.book.settings import Settings
from app.book.shape import Metres
from app.craft.figure import Figure, total
from app.planning.answers import Allowance
from app.planning.groups import Group
from app.planning.needs import PartNeed
from app.planning.yarns import Lots

TAILS = "joins and tails"
UNUSABLE = "unusable ends"
SWATCH = "swatch"
MENDING = "kept for mending"

TAIL_SHARE = 0.15
"""Standard uncertainty of the yarn in tails and unusable ends, as a share (practice)."""


def losses_of(plan: Plan, settings: Settings) -> Losses:
    """The plan's own losses, else those of the settings."""
    return plan.losses or settings.losses


def knit_need(group: Group) -> Figure:
    """What the parts of a group take, in m, before any allowance."""
    return total((role.need for _, role in group.roles), "m")


def allowances(
    plan: Plan, groups: tuple[Group, ...], needs: tuple[PartNeed, ...], lots: Lots
) -> list[tuple[Allowance, ...]]:
    """The allowances of each group, in m; swatch and mending are taken from the largest group,
    and not at all from yarn meant for something other than knitting."""
    losses = losses_of(plan, lots.book.settings)
    found = [_own(group, losses, lots) for group in groups]
    if any(not isinstance(one.part.shape, Metres) for one in needs) and groups:
        sizes = [knit_need(group).value for group in groups]
        main = sizes.index(max(sizes))
        found[main] += (
            Allowance(SWATCH, losses.swatch_mm / 1000),
            Allowance(MENDING, losses.mending_mm / 1000),
        )
    return found


def allowed(lines: tuple[Allowance, ...]) -> Figure:
    """The sum of allowances in m; tails and unusable ends are unsure, the others chosen."""
    chance = sum(one.m for one in lines if one.name in (TAILS, UNUSABLE))
    causes = {"tails and unusable ends": chance * TAIL_SHARE} if chance else {}
    return Figure(sum(one.m for one in lines), "m", causes)


def _own(group: Group, losses: Losses, lots: Lots) -> tuple[Allowance, ...]:
    need = knit_need(group).value
    tails = 2 * losses.tail_mm / 1000 * _skeins(group, need, lots)
    return (Allowance(TAILS, tails), Allowance(UNUSABLE, need * losses.unusable_pct / 100))


def _skeins(group: Group, need: float, lots: Lots) -> int:
    """Skeins the group will be knit from: those promised, or as many usual ones as it takes."""
    known = [one for one in group.yarn_ids if one in lots.book.yarn]
    usual = lots.usual_skein_m(known[0]) if known else None
    return max(len(group.promises), ceil(need / usual) if usual else 0, 1)
