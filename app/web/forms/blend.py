"""A blend on a form: one line of text, such as "70 wool, 30 silk"."""

import re

from app.book.spinning import FibreShare
from app.craft.typed import Unclear, number
from app.web.forms.reader import Reader
from app.web.shown import Shown

FIELD = "blend"
MOST = 12
WHOLE = 100.05
"""Percent: more than a hundred by no more than rounding."""

PART = re.compile(r"([\d.,]+)\s*%?\s+(\D+)|(\D+?)\s+([\d.,]+)\s*%?")
UNCLEAR = "Write each fibre with its percent, with commas or semicolons between: 70 wool, 30 silk."


def blend_values(blend: tuple[FibreShare, ...], shown: Shown) -> dict[str, str]:
    """What the field holds."""
    parts = (f"{shown.field_number(one.pct)} {one.fibre}" for one in blend)
    return {FIELD: "; ".join(parts)}


def read_blend(reader: Reader) -> tuple[FibreShare, ...]:
    """The blend as typed; none where the field is empty. What its percents leave open is unknown,
    more than a hundred is refused."""
    text = reader.text(FIELD, longest=300)
    if not text:
        return ()
    try:
        found = tuple(_part(one, reader) for one in _parts(text))
    except Unclear as unclear:
        reader.refuse(FIELD, str(unclear))
        return ()
    names = [one.fibre for one in found]
    whole = sum(one.pct for one in found)
    if len(set(names)) < len(names):
        reader.refuse(FIELD, "Name each fibre once.")
    elif whole > WHOLE:
        reader.refuse(FIELD, f"This comes to {Shown(reader.settings).percent(whole, 1)}.")
    elif len(found) > MOST:
        reader.refuse(FIELD, f"Name at most {MOST} fibres; leave the rest open.")
    return found


def _parts(text: str) -> list[str]:
    """Parts between semicolons, or between commas that are no decimal signs."""
    between = ";" if ";" in text else r",(?!\d)|\n|(?<=\D),"
    return [one.strip() for one in re.split(between, text) if one.strip()]


def _part(text: str, reader: Reader) -> FibreShare:
    found = PART.fullmatch(text)
    if found is None:
        raise Unclear(UNCLEAR)
    percent, name = (found[1], found[2]) if found[1] else (found[4], found[3])
    pct = number(percent, reader.settings.decimal)
    if not 0 < pct <= 100:
        raise Unclear(UNCLEAR)
    return FibreShare(name.strip().lower(), pct)
