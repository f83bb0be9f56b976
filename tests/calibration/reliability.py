"""Says how far the odds of a ball can be believed: `python -m tests.calibration.reliability`.

Prints the Brier score and, for each fifth of the odds, what was said beside what happened.
"""

import random
from collections.abc import Iterator
from statistics import mean

from tests.calibration.test_ball import makers

BANDS = 5


def asked(seed: int = 5) -> Iterator[tuple[float, bool]]:
    """The odds told of a row, and whether the ball reached it, for a thousand makers."""
    chance = random.Random(3)
    for one in makers((0.03, 0.08), (0.5,), seed=seed):
        row = one.ball.reaches(0.5) * chance.uniform(0.92, 1.08)
        yield one.ball.odds(row), one.end >= row


def brier(told: list[tuple[float, bool]]) -> float:
    """The mean square of what was said less what happened: 0 is a prophet, 0.25 a coin."""
    return mean((odds - reached) ** 2 for odds, reached in told)


def reliability(told: list[tuple[float, bool]]) -> list[tuple[float, float, int]]:
    """For each band of odds: the mean said, the share that happened, and of how many."""
    bands: list[list[tuple[float, bool]]] = [[] for _ in range(BANDS)]
    for odds, reached in told:
        bands[min(BANDS - 1, int(odds * BANDS))].append((odds, reached))
    return [
        (mean(odds for odds, _ in one), mean(reached for _, reached in one), len(one))
        for one in bands
        if one
    ]


def picture(told: list[tuple[float, bool]]) -> str:
    """The table as it stands in DEVELOPERS.md."""
    lines = ["| said | happened | makers | |", "|---|---|---|---|"]
    for said, happened, count in reliability(told):
        bar = "█" * round(20 * happened)
        lines.append(f"| {said:.2f} | {happened:.2f} | {count} | `{bar:<20}` |")
    return "\n".join(lines)


if __name__ == "__main__":
    seen = list(asked())
    print(f"Brier score {brier(seen):.3f} (a coin: 0.250)\n")
    print(picture(seen))
