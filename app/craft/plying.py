"""Plied and cabled yarns: what they come to, and which single is missing for one.

Contraction c is the length before over the length after twisting together: the resultant is
heavier by it than the sum of its singles. It is measured; 1 leaves it out of account.
"""

from math import fsum

from app.craft.counts import from_tex, plied, to_tex

DUST = 1e-12
"""A remainder as small as this share of the whole is a rounding, not a yarn."""


def resultant(system: str, *numbers: float, contraction: float = 1.0) -> float:
    """The number of yarns of those numbers plied together, with their contraction.

    ValueError as `plied`, or for a contraction below 1.
    """
    tex = to_tex(system, plied(system, *numbers))
    return from_tex(system, tex * _at_least_one(contraction))


def cabled(system: str, number: float, *folds: int) -> float:
    """The number of a yarn folded step by step: cotton 60 in folds of 2, then 3 of those, is 10.
    ValueError for a number not above zero or a fold of less than one."""
    for fold in folds:
        number = plied(system, *[number] * fold)
    return number


def missing_single(
    system: str, wanted: float, *others: float, contraction: float = 1.0
) -> float | None:
    """The single to be plied with `others` to give a yarn of the number `wanted`.

    In tex the others are taken from the whole: cotton 40 wants 20 to become 13⅓. None where the
    others are as heavy as the yarn wanted already. ValueError as `resultant`.
    """
    whole = to_tex(system, wanted) / _at_least_one(contraction)
    left = whole - fsum(to_tex(system, number) for number in others)
    return from_tex(system, left) if left > whole * DUST else None


def equal_singles(system: str, wanted: float, plies: int, contraction: float = 1.0) -> float:
    """The number of each of `plies` equal singles of a yarn: 16 cotton two-fold with a printed
    "10 % contraction" (c 1.10) wants 35.2 (GATE TF 1992). ValueError for less than one ply."""
    if plies < 1:
        raise ValueError(f"a yarn has at least one ply, not {plies}")
    return from_tex(system, to_tex(system, wanted) / _at_least_one(contraction) / plies)


def _at_least_one(contraction: float) -> float:
    if contraction < 1:
        raise ValueError(f"contraction is at least 1, not {contraction:g}")
    return contraction
