"""What people type into a field: sums, products, fractions, units, either decimal sign.

    amount   = product { "+" product }  |  measure measure …      4 lb 3 oz
    product  = measure { "×" measure }                            2×96 g
    measure  = number [ unit ]                                    3 1/2 in

A bare number beside a united one takes its unit (96+104 g); alone it takes the field's.
"""

import re
from collections.abc import Iterator
from fractions import Fraction
from typing import Literal, NamedTuple

from app.craft.numerals import NUMERAL, Unclear, numeral, plain_text
from app.craft.units import Quantity, base_units

__all__ = ["Decimal", "Unclear", "exact_mm", "length_mm", "mass_mg", "number", "whole"]

Decimal = Literal[".", ","]

LONGEST = 60
"""Characters in a field for a number."""

MOST_MG = 1_000_000_000
MOST_MM = 100_000_000
MOST = 1_000_000_000
"""One tonne, a hundred kilometres, a thousand million: beyond them it is a slip."""

SIGN = re.compile(r"\+|[×*·]|[xX](?![A-Za-z])")
UNIT = re.compile(r"fl\.?\s?oz|[^\W\d_]+|[\"%]")
MINUS = re.compile(r"[-−–—]")
EXPONENT = re.compile(r"[0-9][eE][+-]?[0-9]")
GROUPED = re.compile(r"(?<![0-9.,])([1-9][0-9]{0,2})[.,]([0-9]{3})(?![0-9.,])")


class Measure(NamedTuple):
    """A number with its unit, empty if none was typed, and the sign written before it: "+", "×"
    or nothing."""

    value: Fraction
    unit: str
    before: str


class Term(NamedTuple):
    """A product worked out: a value in a unit, empty if none was typed."""

    value: Fraction
    unit: str


def mass_mg(text: str, unit: str = "g", decimal: Decimal = ".") -> int:
    """Milligrams typed into a field whose bare numbers are in `unit`; Unclear in plain words."""
    return round(_amount(text, unit, decimal, "mass", MOST_MG, "a tonne"))


def length_mm(text: str, unit: str = "m", decimal: Decimal = ".") -> int:
    """Millimetres typed into a field whose bare numbers are in `unit`; Unclear in plain words."""
    return round(exact_mm(text, unit, decimal))


def exact_mm(text: str, unit: str = "m", decimal: Decimal = ".") -> Fraction:
    """Millimetres typed, not rounded: 4 in are 101.6. Unclear in plain words."""
    return _amount(text, unit, decimal, "length", MOST_MM, "100 km")


def number(text: str, decimal: Decimal = ".", unit: str = "") -> float:
    """A plain number; `unit` is a sign that may be typed after it, such as "%". Unclear in words
    for anything else."""
    return float(_plain(text, decimal, unit))


def whole(text: str) -> int:
    """A whole number; a comma or point between thousands is understood. Unclear otherwise."""
    value = _plain(GROUPED.sub(r"\1\2", text), ".", "")
    if value.denominator != 1:
        raise Unclear(f"“{text.strip()}” is not a whole number.")
    return int(value)


def _plain(text: str, decimal: Decimal, unit: str) -> Fraction:
    terms = _terms(text, decimal)
    for term in terms:
        if term.unit not in ("", unit):
            raise Unclear(f"A number without a unit is wanted here, not “{term.unit}”.")
    value = sum((term.value for term in terms), Fraction(0))
    if value > MOST:
        raise Unclear(f"“{text.strip()}” is larger than anything expected here.")
    return value


def _amount(
    text: str, unit: str, decimal: Decimal, quantity: Quantity, most: int, most_words: str
) -> Fraction:
    terms = _terms(text, decimal)
    bare = _unit_of_bare(terms, unit)
    sizes = (term.value * base_units(term.unit or bare, quantity) for term in terms)
    value = sum(sizes, Fraction(0))
    if value > most:
        raise Unclear(f"“{text.strip()}” is more than {most_words}: is the unit right?")
    return value


def _unit_of_bare(terms: list[Term], unit: str) -> str:
    """The unit a bare number takes: the one typed beside it, or the field's."""
    typed = {term.unit for term in terms if term.unit}
    if len(typed) > 1 and any(not term.unit for term in terms):
        raise Unclear(f"Type a unit after each number: {' and '.join(sorted(typed))} are mixed.")
    return typed.pop() if len(typed) == 1 else unit


def _terms(text: str, decimal: Decimal) -> list[Term]:
    """The products of a sum, each worked out."""
    measures = list(_measures(_checked(text), decimal))
    beside = any(one.before == "" for one in measures[1:])
    if beside and not all(one.unit and one.before == "" for one in measures):
        raise Unclear("Two numbers stand side by side: type + or × between them.")
    terms: list[Term] = []
    for one in measures:
        terms.append(_times(terms.pop(), one) if one.before == "×" else Term(one.value, one.unit))
    return terms


def _times(term: Term, factor: Measure) -> Term:
    if term.unit and factor.unit:
        raise Unclear(f"Two units are multiplied, {term.unit} by {factor.unit}: leave one out.")
    return Term(term.value * factor.value, term.unit or factor.unit)


def _measures(text: str, decimal: Decimal) -> Iterator[Measure]:
    rest, before = text, ""
    while True:
        found = NUMERAL.match(rest)
        if not found:
            raise Unclear(_no_number(text, rest))
        unit, rest = _unit(rest[found.end() :].lstrip())
        yield Measure(numeral(found.group(), decimal), unit, before)
        if not rest:
            return
        sign = SIGN.match(rest)
        before = "" if not sign else "+" if sign.group() == "+" else "×"
        rest = rest[sign.end() :].lstrip() if sign else rest


def _unit(rest: str) -> tuple[str, str]:
    """The unit at the head of a text, in small letters, and what follows it."""
    found = None if SIGN.match(rest) else UNIT.match(rest)
    if not found:
        return "", rest
    word = re.sub(r"fl\.?\s?oz", "fl oz", found.group().lower())
    return word, rest[found.end() :].lstrip(".").lstrip()


def _checked(text: str) -> str:
    if len(text) > LONGEST:
        raise Unclear(f"That is longer than the {LONGEST} characters a number can have here.")
    if MINUS.search(text):
        raise Unclear("A minus sign or dash is not understood here: type an amount of 0 or more.")
    if EXPONENT.search(text):
        raise Unclear("Write the number out in full, without an exponent.")
    plain = plain_text(text).strip()
    if not plain:
        raise Unclear("Type a number.")
    return plain


def _no_number(text: str, rest: str) -> str:
    if not rest:
        return f"A number is missing at the end of “{text}”."
    return f"“{rest}” is not a number." if rest == text else f"“{rest}” in “{text}” is not clear."
