"""The lower root of a matrix of covariances, and what it makes of a right-hand side."""

from collections.abc import Sequence
from math import sqrt

Matrix = Sequence[Sequence[float]]

_FOLLOWS = 1e-7


def lower(spread: Matrix) -> list[list[float]]:
    """The lower triangle L with L·Lᵀ = `spread`; what follows from the others has no rest, a zero
    on the diagonal."""
    size = len(spread)
    root = [[0.0] * size for _ in range(size)]
    for i in range(size):
        for j in range(i + 1):
            rest = spread[i][j] - sum(root[i][k] * root[j][k] for k in range(j))
            if i == j:
                root[i][i] = sqrt(max(rest, 0.0))
            elif root[j][j] > _FOLLOWS:
                root[i][j] = rest / root[j][j]
    return root


def forward(root: Matrix, right: Sequence[float]) -> list[float]:
    """The y with L·y = `right`, L a lower root with no zero on its diagonal."""
    found: list[float] = []
    for i, (row, value) in enumerate(zip(root, right, strict=True)):
        found.append((value - sum(row[j] * found[j] for j in range(i))) / row[i])
    return found
