"""A table of sizes as a pattern prints it: the first size, and the others in brackets after it.

Sizes: S (M, L)
Chest: 96 (104, 112) cm
Cast on body: 212 (229, 246) stitches
"""

import re

NUMBER = r"\d+ \d+/\d+|\S+"
PRINTED_LINE = re.compile(
    rf"(?P<what>[^\t;]*?[^\s;:])(?::\s*|\s+)(?P<first>{NUMBER})\s*\((?P<others>[^()\t;]+)\)"
    r"\s*(?P<unit>cm|mm|in|inches|m|yd)?(?: ?stitches| ?sts| ?rows| ?rounds)?[.:]?\s*",
    re.I,
)
ONE_VALUE = re.compile(r"(?P<what>[^\t;:]*[^\s;:])(?::\s*|\s+)(?P<value>[^\t;:\s]+)\s*")


def in_cells(text: str) -> str:
    """The lines with a tab between their cells, where the first is printed with brackets; any other
    table as it is."""
    lines = text.split("\n")
    first = next((line for line in lines if line.strip()), "")
    if not PRINTED_LINE.fullmatch(first):
        return text
    return "\n".join(_cells(line) for line in lines)


def _cells(line: str) -> str:
    """A line that has one value, such as how many alike, has it in its first cell."""
    printed = PRINTED_LINE.fullmatch(line)
    if printed:
        unit = f" ({printed['unit']})" if printed["unit"] else ""
        others = re.split(r"\s*,\s*", printed["others"].strip())
        return "\t".join((printed["what"] + unit, printed["first"], *others))
    one = ONE_VALUE.fullmatch(line)
    return f"{one['what']}\t{one['value']}" if one else line
