"""Guards of domain: a number outside what a formula knows is refused in words."""

from math import isfinite


def positive(value: float, what: str) -> float:
    """`value` if it is a finite number above zero; ValueError naming `what` otherwise."""
    if not (isfinite(value) and value > 0):
        raise ValueError(f"{what} must be more than zero, not {value:g}")
    return value


def not_negative(value: float, what: str) -> float:
    """`value` if it is a finite number of zero or more; ValueError naming `what` otherwise."""
    if not (isfinite(value) and value >= 0):
        raise ValueError(f"{what} cannot be less than zero, as in {value:g}")
    return value


def share(value: float, what: str) -> float:
    """`value` if it is a share of a whole, 0 or more and less than 1; ValueError otherwise."""
    if not 0 <= value < 1:
        raise ValueError(f"{what} must be at least 0 % and less than 100 %, not {value * 100:g} %")
    return value
