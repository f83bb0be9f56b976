"""Plied yarns: the number of singles twisted together."""

from app.craft.counts import COUNTS, to_tex
from app.craft.plying import resultant
from app.web.forms.table_fields import Asked, Field
from app.web.pages.table import Answer, Example, Row, Sheet, Table
from app.web.pages.table_grist import SYSTEMS, grist_lines, grist_said
from app.web.pages.table_numbers import plain
from app.web.shown import Shown

SINGLES = tuple(
    Field(f"single{n}", f"Single {n}", "count", optional=n > 1, most=1e7) for n in range(1, 5)
)
BROOKS = "Brooks, Cotton Manufacturing"


def ask(asked: Asked, shown: Shown) -> Answer:
    """The plied yarn's number, take-up reckoned in."""
    system = asked.words["system"]
    singles = [asked[one.name] for one in SINGLES if one.name in asked.numbers]
    contraction = 1 / (1 - (asked.get("take_up") or 0.0) / 100)
    number = resultant(system, *singles, contraction=contraction)
    tex = to_tex(system, number)
    added = "added" if COUNTS[system].kind == "direct" else "added as reciprocals"
    names = " and ".join(plain(shown, one) for one in singles)
    note = f"{names} {system}, {added}."
    return Answer(
        f"{plain(shown, number)} {system}: {grist_said(shown, tex)}.", grist_lines(shown, tex), note
    )


def sheets(shown: Shown) -> tuple[Sheet, ...]:
    rows = (
        _row(shown, "40 and 20 cotton", BROOKS, 40, 20),
        _row(shown, "40, 80 and 120 cotton", BROOKS, 40, 80, 120),
        _row(shown, "64, 48 and 32 cotton", "Davis, Hosiery Manufacture", 64, 48, 32),
        _row(shown, "2/40 cotton", "Taylor, Cotton Weaving and Designing", 40, 40),
        Row("40/2 spun silk", ("40",), "published", "Taylor, Cotton Weaving and Designing"),
    )
    return (Sheet("Plied yarns in print", "Singles", ("together",), rows),)


def _row(shown: Shown, word: str, source: str, *singles: float) -> Row:
    return Row(word, (plain(shown, resultant("cotton", *singles)),), "published", source)


TABLE = Table(
    word="plied",
    title="Plied yarns",
    group="Yarn",
    place=2,
    answers="What do these singles come to when they are plied?",
    fields=(
        Field("system", "Counted in", "choice", options=SYSTEMS),
        *SINGLES,
        Field("take_up", "Take-up in plying", unit="%", optional=True, least=0, most=90),
    ),
    ask=ask,
    example=Example(
        {"system": "cotton", "single1": "40", "single2": "20"},
        "40 and 20 cotton",
        "13.33 cotton: 44.29 tex, 2258 m/100 g, 11200 yd/lb.",
    ),
    sheets=sheets,
    notes=(
        "Take-up is the share of length lost in plying. Measure it; left empty it counts as none.",
        "Spun silk is numbered by the whole yarn: 40/2 spun silk is 40.",
    ),
    more="folded resultant two-ply three-ply cabled",
)
