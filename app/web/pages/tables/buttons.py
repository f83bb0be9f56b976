"""Buttons: where each buttonhole begins along a band."""

from app.craft.shaping import button_places
from app.web.forms.table_fields import Asked, Fault, Field
from app.web.pages.table import Answer, Example, Line, Row, Sheet, Table
from app.web.pages.table_numbers import short
from app.web.shown import Shown

CM_IN = 2.54


def ask(asked: Asked, shown: Shown) -> Answer:
    """Each buttonhole from the lower end, and the gap between two."""
    buttons = asked.whole("buttons")
    try:
        places = button_places(asked["band"], buttons, asked["hole"], asked["edge"])
    except ValueError:
        raise Fault("buttons", "So many buttonholes do not fit on this band.") from None
    lines = tuple(
        Line(f"buttonhole {number}", _size(shown, place), "from the lower end")
        for number, place in enumerate(places, 1)
    )
    if buttons == 1:
        return Answer(f"It begins {_size(shown, places[0])} from the lower end.", lines)
    gap = places[1] - places[0] - asked["hole"]
    return Answer(f"{_size(shown, gap)} between one buttonhole and the next.", lines)


def _size(shown: Shown, cm: float) -> str:
    unit = shown.size_unit
    return f"{short(shown, cm if unit == 'cm' else cm / CM_IN, 2)} {unit}"


def sheets(_: Shown) -> tuple[Sheet, ...]:
    rows = (
        Row(
            "gap between two",
            ("(band − 2 × edge − buttons × hole) ÷ (buttons − 1)",),
            "derived",
            "the band is holes, gaps and two edges",
        ),
        Row("one button", ("in the middle",), "practice", "common practice"),
    )
    return (Sheet("How it is divided", "What", ("rule",), rows, prose=True),)


TABLE = Table(
    word="buttons",
    title="Buttons",
    group="Small sums",
    place=4,
    answers="How far apart do the buttonholes sit?",
    fields=(
        Field("band", "Length of the band", "size", most=100_000),
        Field("buttons", "Buttons", "whole", least=1, most=200),
        Field("hole", "Length of a buttonhole", "size", most=1000),
        Field("edge", "From either end", "size", least=0, most=10_000),
    ),
    ask=ask,
    example=Example(
        {"band": "50 cm", "buttons": "7", "hole": "2 cm", "edge": "1.5 cm"},
        "7 buttons on 50 cm, holes of 2 cm, 1.5 cm from either end",
        "5.5 cm between one buttonhole and the next.",
    ),
    sheets=sheets,
    notes=("In rows or stitches it is the same sum: type them as if they were cm.",),
    caution="Small buttons come off: none on clothes for babies and small children.",
    more="buttonhole band spacing cardigan",
)
