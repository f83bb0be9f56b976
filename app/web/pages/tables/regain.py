"""Moisture: what wool weighs dry, and at the regain the trade agrees on."""

from app.craft.moisture import (
    DRY_ENOUGH,
    Regain,
    invoice_mass,
    regain_from_content,
    regain_of,
    regains,
)
from app.web.forms.table_fields import Asked, Field
from app.web.pages.table import Answer, Example, Line, Row, Sheet, Table
from app.web.pages.table_numbers import plain, short
from app.web.shown import Shown

FIBRES = {one.fibre: one.fibre for one in regains()}


def ask(asked: Asked, shown: Shown) -> Answer:
    """Regain from content, the dry mass, and the mass at each agreed regain."""
    mass, content = asked["mass"], asked["content"] / 100
    fibre = regain_of(asked.words["fibre"])
    dry = invoice_mass(mass, content, 0.0)
    regain = 100 * regain_from_content(content)
    lines = (
        Line("regain", f"{plain(shown, regain)} %", "content ÷ (1 − content)"),
        Line("dry", f"{plain(shown, dry)} g", "mass × (1 − content)"),
        *(
            Line(f"at {short(shown, 100 * agreed, 2)} % regain", _grams(shown, asked, agreed), by)
            for agreed, by in _agreed(fibre)
        ),
    )
    sentence = f"{plain(shown, dry)} g dry: {plain(shown, regain)} % regain."
    return Answer(sentence, lines)


def _agreed(fibre: Regain) -> tuple[tuple[float, str], ...]:
    both = ((fibre.eu, "agreed in the EU"), (fibre.astm, "agreed by ASTM or the trade"))
    return tuple((regain, by) for regain, by in both if regain is not None)


def _grams(shown: Shown, asked: Asked, regain: float) -> str:
    return f"{plain(shown, invoice_mass(asked['mass'], asked['content'] / 100, regain))} g"


def sheets(shown: Shown) -> tuple[Sheet, ...]:
    rows = tuple(
        Row(
            one.fibre,
            tuple("–" if x is None else short(shown, 100 * x, 2) for x in (one.eu, one.astm)),
            one.standing,
            one.source,
        )
        for one in regains()
    )
    return (Sheet("Agreed regain, % of the dry mass", "Fibre", ("EU", "ASTM or trade"), rows),)


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
