"""The metres a size of a written pattern takes, and whether what is free on the shelf covers it."""

from dataclasses import dataclass, replace

from app.book.book import Book
from app.book.plan import Part, Plan
from app.craft.figure import Figure, total
from app.craft.odds import joint_odds, raise_to
from app.planning.allowances import allowances, allowed, knit_need
from app.planning.groups import Group, groups
from app.planning.needs import needs_of
from app.planning.reckoning import reckon
from app.planning.yarns import Lots

TWICE = 2.0
"""Joint standard uncertainties from which two ways to the metres contradict each other."""


@dataclass(frozen=True, slots=True)
class SizeYarn:
    """What the parts of a size take, in m: the stitches alone, and with tails, swatch and what is
    kept for mending. `odds` (0 to 1) that the shelf covers it and `short_m` until it does as
    surely as was asked; None where no yarn has been chosen."""

    parts: tuple[Part, ...]
    knit: Figure
    need: Figure
    odds: float | None
    short_m: float | None


class FreeShelf:
    """What of each yarn a plan could have: what no other plan is promised or keeps in reserve."""

    def __init__(self, book: Book, plan: Plan) -> None:
        self.plan = plan
        self.lots = Lots(book)
        self._free = self._without_plan(book)

    def size_yarn(self, parts: tuple[Part, ...]) -> SizeYarn | None:
        """What these parts would take of the shelf; None for no parts."""
        if not parts:
            return None
        needs = needs_of(self.plan, list(parts), self.lots)
        found = groups(needs, [], {})
        extra = allowances(self.plan, found, needs, self.lots)
        wants = [knit_need(one) + allowed(lines) for one, lines in zip(found, extra, strict=True)]
        odds, short = self._covered(found, wants)
        knit = total((knit_need(one) for one in found), "m")
        return SizeYarn(parts, knit, total(wants, "m"), odds, short)

    def _covered(
        self, found: tuple[Group, ...], wants: list[Figure]
    ) -> tuple[float | None, float | None]:
        if not all(one.yarn_ids for one in found):
            return None, None
        margins = [
            total((self._of_yarn(yarn) for yarn in one.yarn_ids), "m") - want
            for one, want in zip(found, wants, strict=True)
        ]
        book = self.lots.book
        sureness = (self.plan.sureness_pct or book.settings.sureness_pct) / 100
        return joint_odds(margins)[0], sum(raise_to(margins, sureness))

    def _of_yarn(self, yarn_id: str) -> Figure:
        skeins = self.lots.skeins.get(yarn_id, [])
        return total((self._free[one.id] for one in skeins if one.id in self._free), "m")

    def _without_plan(self, book: Book) -> dict[str, Figure]:
        mine = self.plan.id
        others = replace(
            book,
            plans=tuple(one for one in book.plans if one.id != mine),
            parts=tuple(one for one in book.parts if one.plan_id != mine),
            promises=tuple(one for one in book.promises if one.plan_id != mine),
        )
        return {
            holding_id: line.held.scaled(line.free_m / line.held.value)
            for holding_id, line in reckon(others).shelf.items()
            if line.held.value > 0
        }


def contradict(counted: SizeYarn | None, stated: SizeYarn | None) -> bool:
    """Whether counts and stated amount differ by more than twice their joint uncertainty."""
    if counted is None or stated is None:
        return False
    apart = counted.knit - stated.knit
    return abs(apart.value) > TWICE * apart.u
