"""How much work a search may do, what it did, and what it found."""

from dataclasses import dataclass, field

from app.planning.solve.problem import Group, Tally

SAME = 1e-6
"""Values that differ by less than this share are the same."""


@dataclass(frozen=True, slots=True)
class Effort:
    """How much work may be done: rounds of bringing in groups, tries at repair, nodes of the
    branching, groups a proof may list, groups that whole ones are chosen from where a list would
    be too long, and nodes of that choosing."""

    rounds: int = 100
    tries: int = 250
    nodes: int = 0
    listed: int = 2000
    offered: int = 200
    choosing: int = 1


@dataclass(frozen=True, slots=True)
class Work:
    """The work that was done: groups looked at, rounds, tries, nodes."""

    groups: int = 0
    rounds: int = 0
    tries: int = 0
    nodes: int = 0


@dataclass(frozen=True, slots=True)
class Solved:
    """A division into groups, what it costs, and the least any division can cost (`bound`).

    `pool` are the groups looked at: a warm start for a problem with the same parts and skeins.
    """

    groups: tuple[Group, ...]
    value: float
    bound: float
    tally: Tally
    work: Work
    pool: tuple[Group, ...] = field(repr=False, default=())

    @property
    def best_possible(self) -> bool:
        """True where no division costs less, for these prices, this grid and these kinds."""
        return reaches(self.bound, self.value)


def reaches(bound: float, value: float) -> bool:
    """Whether a bound proves that nothing costs less than `value`."""
    return bound >= value - SAME * max(1.0, abs(value))
