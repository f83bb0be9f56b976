"""Blends: the water a blend holds, from its fibres' agreed regains."""

from app.craft.moisture import (
    blend_regain,
    content_from_regain,
    dry_shares,
    regain_of,
    regains,
)
from app.web.forms.table_fields import Asked, Fault, Field
from app.web.pages.table import Answer, Example, Line, Row, Sheet, Table
from app.web.pages.table_numbers import plain, short
from app.web.shown import Shown

FIBRES = {one.fibre: one.fibre for one in regains() if one.eu is not None}
NONE = {"": "no third"}
EU = "EU 1007/2011 Annex IX"


def ask(asked: Asked, shown: Shown) -> Answer:
    """Regain and content of the blend, and the water in 100 g of it."""
    shares = _shares(asked)
    regain = {fibre: regain_of(fibre).eu or 0.0 for fibre in shares}
    dry = dry_shares(shares, regain) if asked.words["by"] == "label" else shares
    blend = blend_regain(dry, regain)
    whole = sum(dry.values())
    water = 100 * content_from_regain(blend)
    lines = (
        *(
            Line(
                fibre, f"{short(shown, 100 * part / whole)} % of the dry mass", _said(regain, fibre)
            )
            for fibre, part in dry.items()
        ),
        Line("regain of the blend", f"{plain(shown, 100 * blend)} %"),
        Line("water in 100 g", f"{plain(shown, water)} g", "regain ÷ (1 + regain)"),
    )
    sentence = (
        f"{plain(shown, 100 * blend)} % regain: 100 g of it holds {plain(shown, water)} g of water."
    )
    return Answer(sentence, lines)


def _shares(asked: Asked) -> dict[str, float]:
    """Shares by fibre; a fibre named twice is one."""
    found: dict[str, float] = {}
    for n in "123":
        share = asked.get(f"share{n}")
        if share is None:
            continue
        fibre = asked.words[f"fibre{n}"]
        if not fibre:
            raise Fault(f"fibre{n}", "Choose the fibre this share is of.")
        found[fibre] = found.get(fibre, 0.0) + share
    return found


def _said(regain: dict[str, float], fibre: str) -> str:
    return f"{100 * regain[fibre]:g} % regain"


def sheets(_: Shown) -> tuple[Sheet, ...]:
    rows = (
        Row("by dry mass", ("regain = Σ share × regain",), "published", EU),
        Row(
            "as on a label",
            ("dry share in proportion to share ÷ (1 + regain)",),
            "derived",
            "labels state shares of conditioned mass",
        ),
    )
    return (Sheet("How a blend is reckoned", "Shares", ("rule",), rows, prose=True),)


TABLE = Table(
    word="blend",
    title="Regain of a blend",
    group="Fleece",
    place=7,
    answers="How much water does a blend hold?",
    fields=(
        Field("fibre1", "First fibre", "choice", options=FIBRES),
        Field("share1", "Its share", unit="%", most=100),
        Field("fibre2", "Second fibre", "choice", options=FIBRES),
        Field("share2", "Its share", unit="%", most=100),
        Field("fibre3", "Third fibre", "choice", options=NONE | FIBRES),
        Field("share3", "Its share", unit="%", optional=True, most=100),
        Field(
            "by",
            "Shares are",
            "choice",
            options={"dry": "by dry mass", "label": "as on a label"},
        ),
    ),
    ask=ask,
    example=Example(
        {
            "fibre1": "wool, carded",
            "share1": "50",
            "fibre2": "silk",
            "share2": "25",
            "fibre3": "viscose",
            "share3": "25",
        },
        "50 wool, 25 silk, 25 viscose",
        "14.50 % regain: 100 g of it holds 12.66 g of water.",
    ),
    sheets=sheets,
    notes=("The agreed regains of each fibre stand in the table of moisture.",),
    more="moisture regain content label fibre mix",
)
