"""Fibres by the diameter of their hairs."""

from app.craft.ranges import fibres_of, ranges
from app.web.forms.table_fields import Asked, Field
from app.web.pages.table import Answer, Example, Line, Row, Sheet, Table
from app.web.pages.table_numbers import ranged, short
from app.web.shown import Shown


def ask(asked: Asked, shown: Shown) -> Answer:
    """Every fibre that can be so fine."""
    micron = asked["micron"]
    found = fibres_of(micron)
    lines = tuple(Line(one.what, f"{ranged(shown, one.low, one.high)} µm") for one in found)
    names = ", ".join(one.what for one in found) or "no fibre of this table"
    return Answer(f"{short(shown, micron)} µm fine: {names}.", lines)


def sheets(shown: Shown) -> tuple[Sheet, ...]:
    rows = tuple(
        Row(one.what, (ranged(shown, one.low, one.high),), one.standing, one.source)
        for one in ranges("fibre_microns")
    )
    return (Sheet("Diameter of fibres", "Fibre", ("µm",), rows),)


TABLE = Table(
    word="fibres",
    title="Fineness of fibres",
    group="Fleece",
    place=3,
    answers="How fine are these fibres, and which are as fine as this?",
    fields=(Field("micron", "Diameter", unit="µm", least=1, most=200),),
    ask=ask,
    example=Example(
        {"micron": "18"},
        "18 µm",
        "18 µm fine: Fine wool, Qiviut, Cashmere, Guanaco, Camel, Alpaca, Yak.",
    ),
    sheets=sheets,
    notes=("Fine fibres are soft next to the skin; coarse ones wear longer.",),
    more="micron alpaca mohair cashmere angora silk camel yak wool",
)
