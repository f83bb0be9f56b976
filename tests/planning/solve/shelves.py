"""Seeded shelves: skeins as a spinner has them, parts as garments have them."""

from random import Random

from app.planning.solve.problem import Kind, Part, Prices, Problem, Skein


def shelf(
    seed: int, skeins: int, parts: int, yarns: int, fullness: float = 1.4, **prices: float
) -> Problem:
    """Skeins of 40 to 180 m in so many yarns; parts that want a `fullness`-th of them in all. A
    part may be knit in one, two or three of the yarns, the second and third at a price."""
    chance = Random(f"{seed} {skeins} {parts} {yarns}")
    held = [(f"y{chance.randrange(yarns)}", chance.randint(40, 180)) for _ in range(skeins)]
    there = sum(metres for _, metres in held)
    weights = [chance.uniform(0.4, 3.0) for _ in range(parts)]
    needs = [max(5, round(there / fullness * one / sum(weights))) for one in weights]
    return Problem(
        parts=tuple(
            Part(f"part {j}", need, _unlike(chance, yarns, need)) for j, need in enumerate(needs)
        ),
        skeins=tuple(Skein(f"S-{i:03}", yarn, m) for i, (yarn, m) in enumerate(held)),
        kinds=tuple(Kind((f"y{k}",)) for k in range(yarns)),
        prices=Prices(**prices),
    )


def _unlike(chance: Random, yarns: int, need: int) -> tuple[float | None, ...]:
    allowed = chance.sample(range(yarns), min(yarns, chance.choice((1, 2, 2, 3))))
    price = {k: place * need / 100 for place, k in enumerate(allowed)}
    return tuple(price.get(k) for k in range(yarns))
