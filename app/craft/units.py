"""Units of mass and length that people type. pint is loaded when the first of them is met."""

from fractions import Fraction
from functools import cache
from pathlib import Path
from typing import Any, Literal

from app.craft.numerals import Unclear

Quantity = Literal["mass", "length"]

BASE: dict[Quantity, str] = {"mass": "mg", "length": "mm"}

KNOWN: dict[Quantity, str] = {"mass": "g, kg, oz or lb", "length": "mm, cm, m, in, ft or yd"}

LOOSE = {'"': "in", "gr": "", "fl oz": "floz"}
"""Spellings no unit file can hold; "gr" is grains to some and grams to others."""


@cache
def base_units(word: str, quantity: Quantity) -> Fraction:
    """How many mg or mm one unit of that name is; Unclear for a unit of something else."""
    plain = LOOSE.get(word, word)
    found = _unit(plain)
    if found is None:
        raise Unclear(f"“{word}” is not a unit known here: type {KNOWN[quantity]}.")
    if plain == "floz":
        raise Unclear(f"“{word}” measures a volume, not a {_noun(quantity)}: {_ask(quantity)}")
    if not found.is_compatible_with(BASE[quantity]):
        other: Quantity = "length" if quantity == "mass" else "mass"
        raise Unclear(f"“{word}” measures a {_noun(other)}: {_ask(quantity)}")
    return Fraction(_registry().Quantity(Fraction(1), found).to(BASE[quantity]).magnitude)


def _noun(quantity: Quantity) -> str:
    return "weight" if quantity == "mass" else "length"


def _ask(quantity: Quantity) -> str:
    return f"a {_noun(quantity)} is wanted here, in {KNOWN[quantity]}."


@cache
def _registry() -> Any:
    from pint import UnitRegistry

    path = Path(__file__).with_name("units.txt")
    return UnitRegistry(str(path), non_int_type=Fraction, autoconvert_offset_to_baseunit=False)


def _unit(word: str) -> Any:
    from pint.errors import UndefinedUnitError

    try:
        return _registry().Unit(word) if word else None
    except UndefinedUnitError:
        return None
