"""Moisture: what wool weighs dry, and at the regain the trade agrees on."""

from app.craft.moisture import (
    DRY_ENOUGH,
    Agreed,
    Regain,
    invoice_mass,
    regain_from_content,
    regain_of,
    regains,
)
from app.web.forms.table_fields import Asked, Field
from app.web.pages.table import Answer, Example, Line, Row, Sheet, Table
from app.web.pages.table_numbers import plain, short
from app.web.pages.table_rows import said_standing
from app.web.shown import Shown

FIBRES = {one.fibre: one.fibre for one in regains()}


def ask(asked: Asked, shown: Shown) -> Answer:
    """Regain from content, the dry mass, and the mass at each agreed regain."""
    mass, content = asked["mass"], asked["content"] / 100
    dry = invoice_mass(mass, content, 0.0)
    regain = 100 * regain_from_content(content)
    lines = (
        Line("regain", f"{plain(shown, regain)} %", "content ÷ (1 − content)"),
        Line("dry", f"{plain(shown, dry)} g", "mass × (1 − content)"),
        *(
            Line(
                f"at {short(shown, 100 * agreed.regain, 2)} % regain",
                f"{plain(shown, invoice_mass(mass, content, agreed.regain))} g",
                f"{agreed.source} ({said_standing(agreed.standing)})",
            )
            for agreed in _agreed(regain_of(asked.words["fibre"]))
        ),
    )
    return Answer(f"{plain(shown, dry)} g dry: {plain(shown, regain)} % regain.", lines)


def _agreed(fibre: Regain) -> list[Agreed]:
    return [one for one in (fibre.by_eu, fibre.by_astm) if one]


def sheets(shown: Shown) -> tuple[Sheet, ...]:
    rules = (
        ("Agreed in the EU (Regulation 1007/2011)", [(one.fibre, one.by_eu) for one in regains()]),
        ("Agreed by ASTM D1909 or the trade", [(one.fibre, one.by_astm) for one in regains()]),
    )
    return tuple(_sheet(caption, rows, shown) for caption, rows in rules)


def _sheet(caption: str, found: list[tuple[str, Agreed | None]], shown: Shown) -> Sheet:
    rows = tuple(
        Row(fibre, (short(shown, 100 * one.regain, 2),), one.standing, one.source)
        for fibre, one in found
        if one
    )
    return Sheet(caption, "Fibre", ("regain, % of the dry mass",), rows)


TABLE = Table(
    word="regain",
    title="Moisture",
    group="Fleece",
    place=6,
    answers="How much of this weight is water?",
    fields=(
        Field("mass", "Weight", "wool"),
        Field("content", "Water in it", unit="%", hint="Of the whole weight.", least=0, most=95),
        Field("fibre", "Fibre", "choice", options=FIBRES),
    ),
    ask=ask,
    example=Example(
        {"mass": "100 g", "content": "12", "fibre": "wool, carded"},
        "100 g with 12 % of water in it",
        "88.00 g dry: 13.64 % regain.",
    ),
    sheets=sheets,
    notes=(
        "Regain is water to the dry mass, content water to the whole: two different numbers.",
        f"Wool is dry when two weighings an hour apart agree within {100 * DRY_ENOUGH:g} % "
        "(practice).",
    ),
    more="regain moisture content conditioned dry weight water humidity",
)
