"""The problem of dividing parts into groups, in whole metres, and what an answer to it costs.

Nothing here knows a book. Parts, skeins, kinds and fleeces are named by their place in the tuples.
"""

from dataclasses import dataclass, field


@dataclass(frozen=True, slots=True)
class Prices:
    """What is paid: for a join (a change of skein inside a part), for a cut (a skein shared by two
    parts), for a remnant below `scrap_below` metres, for each metre still to be made (`miss`), and
    for each gram of yarn that no fleece is left to give (`lack`)."""

    join: float = 1.0
    cut: float = 2.0
    scrap: float = 1.5
    scrap_below: int = 10
    miss: float = 1000.0
    lack: float = 3000.0


@dataclass(frozen=True, slots=True)
class Part:
    """A part, or one role of it: whole metres it needs, and for each kind of yarn what it costs to
    knit it in that kind (None: never)."""

    name: str
    need: int
    unlike: tuple[float | None, ...]


@dataclass(frozen=True, slots=True)
class Skein:
    """A skein with the whole metres it can give and the yarn it is of."""

    code: str
    yarn: str
    metres: int


@dataclass(frozen=True, slots=True)
class Kind:
    """One yarn, or a mixture of yarns that may be knit together. What is missing is made in its
    first yarn, from `fleece` (its place; None: bought) at so many grams a metre."""

    yarns: tuple[str, ...]
    fleece: int | None = None
    grams_a_metre: float = 0.0


@dataclass(frozen=True, slots=True)
class Problem:
    """`fleeces` are the grams of finished yarn each can still give."""

    parts: tuple[Part, ...]
    skeins: tuple[Skein, ...]
    kinds: tuple[Kind, ...]
    fleeces: tuple[float, ...] = ()
    prices: Prices = field(default_factory=Prices)

    def skeins_of(self, kind: int) -> list[int]:
        """The skeins a kind may use, in their order; empty ones are no use."""
        yarns = self.kinds[kind].yarns
        return [i for i, one in enumerate(self.skeins) if one.yarn in yarns and one.metres > 0]

    def parts_of(self, kind: int) -> list[int]:
        """The parts that may be knit in a kind."""
        return [j for j, one in enumerate(self.parts) if one.unlike[kind] is not None]


@dataclass(frozen=True, slots=True, order=True)
class Group:
    """Parts knit from the same skeins of one kind; what the skeins lack is made."""

    kind: int
    parts: tuple[int, ...]
    skeins: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class Tally:
    """What groups ask of the knitter, before any price: changes of skein, skeins cut for two
    parts, small remnants, metres still to be made."""

    joins: int
    cuts: int
    scraps: int
    to_make: int


def left(problem: Problem, group: Group) -> int:
    """Metres left of a group's skeins; below zero they are still to be made."""
    held = sum(problem.skeins[i].metres for i in group.skeins)
    return held - sum(problem.parts[j].need for j in group.parts)


def tally(problem: Problem, groups: tuple[Group, ...]) -> Tally:
    """What an answer asks of the knitter."""
    lefts = [left(problem, one) for one in groups]
    new = sum(1 for one in lefts if one < 0)
    return Tally(
        joins=sum(len(one.skeins) for one in groups) + new - len(groups),
        cuts=sum(len(one.parts) - 1 for one in groups),
        scraps=sum(1 for one in lefts if 0 < one < problem.prices.scrap_below),
        to_make=sum(-one for one in lefts if one < 0),
    )


def price(problem: Problem, group: Group) -> float:
    """What a group costs, apart from wool that no fleece can give."""
    told, prices = tally(problem, (group,)), problem.prices
    cost = told.joins * prices.join + told.cuts * prices.cut + told.scraps * prices.scrap
    unlike = sum(problem.parts[j].unlike[group.kind] or 0.0 for j in group.parts)
    return cost + unlike + told.to_make * prices.miss


def value(problem: Problem, groups: tuple[Group, ...]) -> float:
    """What an answer costs in all."""
    return sum(price(problem, one) for one in groups) + problem.prices.lack * sum(
        max(0.0, used - there)
        for used, there in zip(grams(problem, groups), problem.fleeces, strict=True)
    )


def grams(problem: Problem, groups: tuple[Group, ...]) -> list[float]:
    """Grams of finished yarn an answer asks of each fleece."""
    used = [0.0 for _ in problem.fleeces]
    for one in groups:
        kind, made = problem.kinds[one.kind], max(0, -left(problem, one))
        if kind.fleece is not None:
            used[kind.fleece] += made * kind.grams_a_metre
    return used


def faults(problem: Problem, groups: tuple[Group, ...]) -> list[str]:
    """What is wrong with an answer: nothing where each part stands in one group, each skein in one
    at most, and all of them may be together."""
    placed = sorted(j for one in groups for j in one.parts)
    used = [i for one in groups for i in one.skeins]
    found = [] if placed == list(range(len(problem.parts))) else ["parts not placed once each"]
    found += ["a skein is used twice"] if len(used) > len(set(used)) else []
    found += ["a group that may not be"] * sum(not may_stand(problem, o) for o in groups)
    return found


def may_stand(problem: Problem, group: Group) -> bool:
    """Whether all parts and skeins of a group may be in its kind, and each skein is needed."""
    skeins, parts = problem.skeins_of(group.kind), problem.parts_of(group.kind)
    suits = set(group.skeins) <= set(skeins) and set(group.parts) <= set(parts)
    return suits and trimmed(problem, group) == group


def trimmed(problem: Problem, group: Group) -> Group:
    """The group without skeins it does not need: what is left lies in one skein that was begun."""
    skeins, over = list(group.skeins), left(problem, group)
    while skeins and over >= (largest := max(problem.skeins[i].metres for i in skeins)):
        skeins.remove(next(i for i in skeins if problem.skeins[i].metres == largest))
        over -= largest
    return Group(group.kind, group.parts, tuple(skeins))
