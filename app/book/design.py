"""A garment as it was designed: the construction, the body it is for, its ease and its choices."""

from dataclasses import dataclass

from app.book.person import Measure


@dataclass(frozen=True, slots=True)
class Choice:
    """One thing that was chosen, by the names of its construction ("neck" is "round")."""

    name: str
    value: str


@dataclass(frozen=True, slots=True)
class Design:
    """`construction` is the word of a way to build a garment; `measures` are of the body and
    `ease` is what the garment measures beyond it, below zero where it is tighter, both in mm.

    They stay as they were when the garment was designed, whatever becomes of its wearer.
    """

    construction: str
    measures: tuple[Measure, ...] = ()
    ease: tuple[Measure, ...] = ()
    choices: tuple[Choice, ...] = ()
