"""The first thing that comes to mind: the largest part first, with the skein that fits it best.

It is what any better answer is compared with, and where the search begins.
"""

from dataclasses import dataclass, field

from app.planning.solve.problem import Group, Problem, trimmed


def greedy(problem: Problem) -> tuple[Group, ...]:
    """The largest part first, in the kind that suits it best; of its skeins the one that covers
    what is missing with the least left, else the largest. A skein's rest goes on to other parts."""
    sharing = _Sharing(problem, [one.metres for one in problem.skeins])
    for j in sorted(range(len(problem.parts)), key=lambda one: (-problem.parts[one].need, one)):
        sharing.serve(j)
    return sharing.groups()


@dataclass(slots=True)
class _Sharing:
    """What is left of each skein, the kind each begun skein is knit in, and the skeins of each
    part with its kind."""

    problem: Problem
    rest: list[int]
    begun: dict[int, int] = field(default_factory=dict)
    used: dict[int, tuple[int, list[int]]] = field(default_factory=dict)

    def serve(self, j: int) -> None:
        kind, skeins = self._kind(j), []
        missing = self.problem.parts[j].need
        while missing > 0 and (offered := self._offered(kind)):
            taken = self._next(offered, missing)
            metres = min(missing, self.rest[taken])
            self.rest[taken] -= metres
            self.begun[taken] = kind
            missing -= metres
            skeins.append(taken)
        self.used[j] = kind, skeins

    def _next(self, offered: list[int], missing: int) -> int:
        enough = [i for i in offered if self.rest[i] >= missing]
        if enough:
            return min(enough, key=lambda i: (self.rest[i], i))
        return max(offered, key=lambda i: (self.rest[i], -i))

    def _kind(self, j: int) -> int:
        """The cheapest kind with enough; where none has, the one with most."""
        part = self.problem.parts[j]
        allowed = {k: cost for k, cost in enumerate(part.unlike) if cost is not None}
        offers = {k: sum(self.rest[i] for i in self._offered(k)) for k in allowed}
        return min(allowed, key=lambda k: (max(0, part.need - offers[k]), allowed[k], offers[k], k))

    def _offered(self, kind: int) -> list[int]:
        found = self.problem.skeins_of(kind)
        return [i for i in found if self.rest[i] > 0 and self.begun.get(i, kind) == kind]

    def groups(self) -> tuple[Group, ...]:
        """Parts that share a skein hang together; each bundle is a group."""
        bundles: list[tuple[int, set[int], set[int]]] = []
        for j, (kind, skeins) in sorted(self.used.items()):
            parts, held = {j}, set(skeins)
            for one in [one for one in bundles if one[2] & held]:
                bundles.remove(one)
                parts |= one[1]
                held |= one[2]
            bundles.append((kind, parts, held))
        found = (Group(kind, tuple(sorted(p)), tuple(sorted(s))) for kind, p, s in bundles)
        return tuple(sorted(trimmed(self.problem, one) for one in found))
