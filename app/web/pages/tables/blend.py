"""Blends: the water a blend holds, from its fibres' agreed regains."""

from app.craft.conditioning import conditioned_mass
from app.craft.moisture import agreed_by, regain_from_content, regains
from app.web.forms.table_fields import Asked, Fault, Field
from app.web.pages.table import Answer, Example, Line, Row, Sheet, Table
from app.web.pages.table_numbers import plain, short
from app.web.pages.table_rows import said_standing
from app.web.shown import Shown

FIBRES = {one.fibre: one.fibre for one in regains() if one.eu is not None}
NONE = {"": "no third"}
EU = "EU 1007/2011 Annex IX"


def ask(asked: Asked, shown: Shown) -> Answer:
    """Regain and content of the blend, and what it weighs as agreed."""
    mass, content = asked.get("mass") or 100.0, (asked.get("content") or 0.0) / 100
    labelled = asked.words["by"] == "label"
    found = conditioned_mass(mass, _shares(asked), regain_from_content(content), labelled)
    regain, water = plain(shown, 100 * found.regain), plain(shown, 100 * found.content)
    lines = (
        *(
            Line(fibre, f"{short(shown, 100 * part)} % of the dry mass", _said(fibre, shown))
            for fibre, part in found.dry_shares.items()
        ),
        Line("regain of the blend", f"{regain} %", "Σ share × regain"),
        Line("water in 100 g", f"{water} g", "regain ÷ (1 + regain)"),
        Line(f"{short(shown, mass)} g, dry", f"{plain(shown, found.dry_g)} g"),
        Line("and as agreed", f"{plain(shown, found.g)} g", "dry × (1 + regain)"),
    )
    sentence = f"{regain} % regain: 100 g of it holds {water} g of water."
    return Answer(sentence, lines, steps=found.steps)


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


def _said(fibre: str, shown: Shown) -> str:
    agreed = agreed_by("EU", fibre)
    said = f"{short(shown, 100 * agreed.regain, 2)} % regain"
    return f"{said} ({said_standing(agreed.standing)})"


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
        Field("mass", "Weighed", "wool", optional=True),
        Field("content", "with water in it", unit="%", optional=True, least=0, most=95),
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
