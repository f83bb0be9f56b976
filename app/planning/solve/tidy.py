"""Of answers that cost the same, the one that begins less wool: long skeins stay whole."""

from collections.abc import Sequence

from app.planning.solve.problem import Group, Problem, left, price, trimmed


def tidied(problem: Problem, groups: Sequence[Group]) -> tuple[Group, ...]:
    """The groups, each skein changed for the shortest unused one that costs no more."""
    used = {i for one in groups for i in one.skeins}
    found = []
    for group in groups:
        for skein in group.skeins:
            better = _shorter(problem, group, skein, used)
            if better is not None:
                used = used - {skein} | {better}
                group = _changed(group, skein, better)
        found.append(group)
    return tuple(sorted(found))


def _shorter(problem: Problem, group: Group, skein: int, used: set[int]) -> int | None:
    metres = {i: problem.skeins[i].metres for i in problem.skeins_of(group.kind)}
    free = (i for i in metres if metres[i] < metres[skein] and i not in used)
    by_length = sorted(free, key=lambda i: (metres[i], i))
    serving = (i for i in by_length if _serves(problem, group, _changed(group, skein, i)))
    return next(serving, None)


def _serves(problem: Problem, group: Group, changed: Group) -> bool:
    enough = left(problem, changed) >= min(0, left(problem, group))
    return (
        enough
        and trimmed(problem, changed) == changed
        and price(problem, changed) <= price(problem, group)
    )


def _changed(group: Group, skein: int, other: int) -> Group:
    skeins = sorted({*group.skeins, other} - {skein})
    return Group(group.kind, group.parts, tuple(skeins))
