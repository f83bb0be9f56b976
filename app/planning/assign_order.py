"""In what order the skeins of a group are knit: changes of skein where they show least.

The parts come in their own order. After each choice of skeins the metres tell in which part the
next change falls, so the best order follows by dynamic programming over the subsets.
"""

from collections.abc import Callable, Sequence

from app.book.words import Place

SHOWS: dict[Place, float] = {
    "front": 1.0,
    "yoke": 1.0,
    "neck": 0.9,
    "body": 0.8,
    "crown": 0.8,
    "piece": 0.8,
    "back": 0.7,
    "sleeve": 0.6,
    "cuff": 0.5,
    "band": 0.5,
}
"""How far a change of skein shows in a place, 1 where the eye rests (practice)."""

EXACTLY = 9
"""Up to so many skeins every order is looked at; beyond that the nearest colour comes next."""

Step = Callable[[int, int], float]
"""How far one skein differs from another, by their places."""


def shows(place: Place) -> float:
    """How far a change of skein shows in a place, 0 to 1."""
    return SHOWS.get(place, 0.8)


def skein_order(
    lengths: Sequence[int], needs: Sequence[int], weights: Sequence[float], step: Step
) -> list[int]:
    """The places of the skeins in the order of knitting; of equal orders the first by code.

    `lengths` of the skeins and `needs` of the parts in m, `weights` how far a change shows in each
    part. A change costs the weight of the part it falls in, times one and the step of colour.
    """
    if len(lengths) > EXACTLY:
        return _nearest(len(lengths), step)
    shown = _ShownAt(needs, weights)
    return _best(lengths, shown, step)


class _ShownAt:
    """How far a change shows after so many metres: nothing between two parts or past the last."""

    def __init__(self, needs: Sequence[int], weights: Sequence[float]) -> None:
        self.ends: list[tuple[int, float]] = []
        end = 0
        for need, weight in zip(needs, weights, strict=True):
            end += need
            self.ends.append((end, weight))

    def after(self, metres: int) -> float:
        for end, weight in self.ends:
            if metres < end:
                return weight
            if metres == end:
                return 0.0
        return 0.0


def _best(lengths: Sequence[int], shown: _ShownAt, step: Step) -> list[int]:
    count = len(lengths)
    best: dict[tuple[int, int], tuple[float, list[int]]] = {
        (1 << one, one): (0.0, [one]) for one in range(count)
    }
    for subset in range(1, 1 << count):
        metres = sum(lengths[one] for one in range(count) if subset >> one & 1)
        weight = shown.after(metres)
        for last in (one for one in range(count) if subset >> one & 1):
            cost, order = best[subset, last]
            for following in (one for one in range(count) if not subset >> one & 1):
                key = subset | 1 << following, following
                longer = cost + weight * (1 + step(last, following)), [*order, following]
                best[key] = min(best.get(key, longer), longer)
    whole = (1 << count) - 1
    return min((best[whole, last] for last in range(count)), default=(0.0, []))[1]


def _nearest(count: int, step: Step) -> list[int]:
    order, rest = [0], list(range(1, count))
    while rest:
        order.append(min(rest, key=lambda one: (step(order[-1], one), one)))
        rest.remove(order[-1])
    return order
