"""A measure of a body or a garment in words: how long, how surely, and who says so."""

from collections.abc import Mapping

from app.book.person import Measure
from app.craft.sizes import Measured, body
from app.web.shown import MM_PER_CM, MM_PER_IN, Shown

AS_THE_TABLE = "as the body table has it"


def size_cm(cm: float, shown: Shown) -> str:
    """A size given in cm: "96 cm", "38 in"."""
    return shown.size(10 * cm)


def give_or_take(one: Measured, shown: Shown) -> str:
    """A measure with its standard uncertainty: "73.9 ± 3.7 cm"; without one where it has none."""
    if not one.u:
        return size_cm(one.cm, shown)
    per = (MM_PER_CM if shown.size_unit == "cm" else MM_PER_IN) / 10
    return shown.figure(one.cm / per, shown.size_unit, one.u / per)


def where_from(one: Measured) -> str:
    """Who says so, for a measure nobody took."""
    if one.source:
        return AS_THE_TABLE
    return "assumed" if one.u else "usual"


def assumed_said(one: Measured, shown: Shown) -> str:
    """ "73.9 ± 3.7 cm, as the body table has it"."""
    return f"{give_or_take(one, shown)}, {where_from(one)}"


def ease_said(cm: float, shown: Shown) -> str:
    """Ease in words: "7.5 cm more", "5 cm less", "as the body"."""
    if abs(cm) < 0.05:
        return "as the body"
    return f"{size_cm(abs(cm), shown)} {'more' if cm > 0 else 'less'}"


def body_known(measures: Mapping[str, int]) -> dict[str, Measured]:
    """Every measure of a body by name, from those taken (in mm); empty where the chest, which finds
    the others, was not taken or lies outside the table."""
    taken = {name: mm / 10 for name, mm in measures.items()}
    try:
        return body(taken["chest"], taken) if "chest" in taken else {}
    except ValueError:
        return {}


def by_name(measures: tuple[Measure, ...]) -> dict[str, int]:
    """Measures in mm by their name."""
    return {one.name: one.mm for one in measures}
