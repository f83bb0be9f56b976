"""Ruin and recreate: take a few groups apart and divide their parts anew, as the knapsacks say."""

from collections.abc import Sequence
from random import Random

from app.planning.solve.pricing import Priced, Worths, best_groups
from app.planning.solve.problem import Group, Problem, value
from app.planning.solve.solved import SAME, reaches

FORCED = 1e7
"""Worth added to the part that must be placed next."""

RUINED = (2, 3, 4)
"""How many groups are taken apart at once."""

STRAY = 0.3
"""Worths stray by this share, so that not every try comes out alike."""

WARMTH = 1.0
"""A try may be worse by so many changes of skein at first, by nothing at the end."""


class Repair:
    """Tries counted, not timed; the same seed gives the same answer. `seen` are all groups made on
    the way, for the program to choose from."""

    def __init__(self, problem: Problem, worths: Worths, chance: Random) -> None:
        self.problem, self.worths, self.chance = problem, worths, chance
        self.seen: dict[Group, None] = {}
        self.tries = 0

    def improve(self, start: Sequence[Group], tries: int, bound: float) -> tuple[Group, ...]:
        """The best division found from `start` in so many tries; never worse than it, and no
        further than the bound."""
        here = best = tuple(start)
        here_value = best_value = value(self.problem, here)
        while self.tries < tries and not reaches(bound, best_value):
            self.tries += 1
            found = self._try(here)
            found_value = value(self.problem, found)
            slack = WARMTH * self.problem.prices.join * (1 - self.tries / tries)
            if found_value < here_value + slack * self.chance.random():
                here, here_value = found, found_value
            if found_value < best_value - SAME:
                best, best_value = found, found_value
        return tuple(sorted(best))

    def _try(self, groups: tuple[Group, ...]) -> tuple[Group, ...]:
        ruined = self._ruined(groups)
        kept = [one for one in groups if one not in ruined]
        used = {i for one in kept for i in one.skeins}
        skeins = set(range(len(self.problem.skeins))) - used
        parts = {j for one in ruined for j in one.parts}
        return (*kept, *self._recreated(parts, skeins))

    def _ruined(self, groups: tuple[Group, ...]) -> set[Group]:
        """A group and some that could exchange parts or skeins with it."""
        first = self.chance.choice(groups)
        near = [one for one in groups if one != first and self._related(first, one)]
        count = min(len(near), self.chance.choice(RUINED) - 1)
        return {first, *self.chance.sample(near, count)}

    def _related(self, one: Group, other: Group) -> bool:
        parts = [self.problem.parts[j] for j in (*one.parts, *other.parts)]
        return one.kind == other.kind or any(
            part.unlike[one.kind] is not None and part.unlike[other.kind] is not None
            for part in parts
        )

    def _recreated(self, parts: set[int], skeins: set[int]) -> list[Group]:
        worths, found = self._strayed(), []
        while parts:
            forced = self.chance.choice(sorted(parts))
            group = self._best_with(forced, worths, parts, skeins).group
            self.seen[group] = None
            parts = parts - set(group.parts)
            skeins = skeins - set(group.skeins)
            found.append(group)
        return found

    def _best_with(self, forced: int, worths: Worths, parts: set[int], skeins: set[int]) -> Priced:
        raised = [one + FORCED * (j == forced) for j, one in enumerate(worths.parts)]
        lifted = Worths(raised, worths.skeins, worths.fleeces)
        kinds = [k for k, one in enumerate(self.problem.parts[forced].unlike) if one is not None]
        offers = [
            one
            for kind in kinds
            for one in best_groups(self.problem, kind, lifted, parts, skeins, 1)
        ]
        return min(offers, key=lambda one: (one.reduced, one.group))

    def _strayed(self) -> Worths:
        def stray(worth: float) -> float:
            return worth * (1 + STRAY * (2 * self.chance.random() - 1))

        worths = self.worths
        return Worths(
            [stray(one) for one in worths.parts],
            [stray(one) for one in worths.skeins],
            worths.fleeces,
        )
