"""Which way a yarn is twisted: S or Z (ISO 2).

Hold the yarn upright: where the fibres on its surface slope like the middle of the letter S the
twist is S, where they slope like the middle of the letter Z it is Z. Turning the yarn end for end
changes nothing.
"""

from typing import Literal

Direction = Literal["S", "Z"]

SLOPES: dict[Direction, str] = {
    "S": "from upper left to lower right, as the middle of the letter S",
    "Z": "from upper right to lower left, as the middle of the letter Z",
}
"""How the fibres slope on the side of the yarn that faces you (ISO 2)."""


def direction(typed: str) -> Direction:
    """S or Z as typed, in either letter case; ValueError for anything else."""
    letter = typed.strip().upper()
    if letter not in SLOPES:
        raise ValueError(f"twist is S or Z, not {typed!r}")
    return letter


def opposite(one: Direction) -> Direction:
    """The other way: a plied yarn is usually twisted against its singles (practice)."""
    return "Z" if one == "S" else "S"


def of_wheel(clockwise: bool) -> Direction:
    """The twist a wheel puts in, seen from where you sit: clockwise is Z (handbook)."""
    return "Z" if clockwise else "S"
