"""Numbers as people write them: either decimal sign, grouped thousands, fractions, exactly."""

import re
import unicodedata
from fractions import Fraction


class Unclear(ValueError):
    """What was typed cannot be understood, or could be understood in two ways; the message says
    in plain words what to type instead."""


FRACTION = r"(?:[0-9]+\s+)?[0-9]+\s*/\s*[0-9]+"
SPACED = r"[0-9]{1,3}(?:[ '][0-9]{3})+(?![0-9])(?:[.,][0-9]+)?"
PLAIN = r"[0-9.,]*[0-9]"
NUMERAL = re.compile(f"{FRACTION}|{SPACED}|{PLAIN}")
"""One number at the head of a text that `plain_text` has prepared."""


def plain_text(text: str) -> str:
    """The text with printers' characters made plain: ½ as 1/2 set apart, thin and fixed spaces as
    spaces, ’ as ', wide digits as digits."""
    apart = "".join(_apart(char) for char in text.strip())
    return unicodedata.normalize("NFKC", apart).replace("\u2044", "/")


def numeral(text: str, decimal: str) -> Fraction:
    """The value of one number; `decimal` is the sign of the maker's settings, "." or ",".

    Unclear where it is no number, where a fraction makes no sense, or where "1,200" could be read
    in two ways because its sign is not the one of the settings.
    """
    if "/" in text:
        return _fraction(text)
    if " " in text or "'" in text:
        return Fraction(re.sub("[ ']", "", text).replace(",", "."))
    whole, sign, tail = _split(text)
    if sign and sign != decimal and _could_be_thousands(whole, tail):
        raise Unclear(_two_readings(text, whole, tail, decimal))
    return Fraction(f"{whole or 0}.{tail or 0}")


def _apart(char: str) -> str:
    if char in "’ʼ":
        return "'"
    if char in "″”“":
        return '"'
    known = unicodedata.decomposition(char).startswith("<fraction>")
    return f" {unicodedata.normalize('NFKC', char)} " if known else char


def _fraction(text: str) -> Fraction:
    *whole, top, bottom = (int(digits) for digits in re.findall("[0-9]+", text))
    if bottom == 0:
        raise Unclear(f"“{text}” divides by zero.")
    if whole and top >= bottom:
        raise Unclear(f"“{text}” is not a whole number and a part: write it as one number.")
    return sum(whole) + Fraction(top, bottom)


def _split(text: str) -> tuple[str, str, str]:
    """Whole digits, decimal sign and digits after it, of a number without spaces."""
    signs = re.findall("[.,]", text)
    if len(signs) > 1:
        return _ungrouped(text, signs)
    whole, sign, tail = text.partition(signs[0]) if signs else (text, "", "")
    return whole, sign, tail


def _ungrouped(text: str, signs: list[str]) -> tuple[str, str, str]:
    group = signs[0]
    head, last = text, ""
    if signs[-1] != group:
        head, _, last = text.rpartition(signs[-1])
    if not re.fullmatch(rf"[0-9]{{1,3}}(?:{re.escape(group)}[0-9]{{3}})+", head):
        raise Unclear(f"“{text}” has more commas and points than a number can have.")
    return head.replace(group, ""), "", last


def _could_be_thousands(whole: str, tail: str) -> bool:
    return len(tail) == 3 and 1 <= len(whole) <= 3 and not whole.startswith("0")


def _two_readings(text: str, whole: str, tail: str, decimal: str) -> str:
    small = f"{whole}{decimal}{tail.rstrip('0') or '0'}"
    return f"“{text}” can be read as {whole}{tail} or as {small}: type the one you mean."
