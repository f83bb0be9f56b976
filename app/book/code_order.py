"""Codes in the order people count them."""

import re


def in_order(code: str) -> tuple[tuple[str, int, str], ...]:
    """A key to put codes in the order people count: "G-2" before "G-10"."""
    pieces = re.findall(r"(\D*)(\d*)", code)
    return tuple((words.casefold(), int(number or 0), number) for words, number in pieces)
