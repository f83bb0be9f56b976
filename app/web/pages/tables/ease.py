"""Ease: how much larger than the body a garment is meant to be."""

from app.craft.sizes import EASES, Ease
from app.web.forms.table_fields import Asked, Field
from app.web.pages.table import Answer, Example, Line, Row, Sheet, Table
from app.web.pages.table_numbers import ranged
from app.web.shown import Shown

CM_IN = 2.54


def ask(asked: Asked, shown: Shown) -> Answer:
    """What the garment measures around for each fit, by both charts."""
    chest = asked["chest"]
    lines = tuple(
        Line(one.name, _span(shown, chest + one.low_cm, chest + one.high_cm), _ease(shown, one))
        for one in EASES
    )
    standard = next(one for one in EASES if one.name == "standard")
    around = _span(shown, chest + standard.low_cm, chest + standard.high_cm)
    return Answer(f"A standard fit measures {around} around.", lines)


def _ease(shown: Shown, one: Ease) -> str:
    return f"ease {_span(shown, one.low_cm, one.high_cm)}"


def _span(shown: Shown, low_cm: float, high_cm: float) -> str:
    per = 1.0 if shown.size_unit == "cm" else CM_IN
    return f"{ranged(shown, low_cm / per, high_cm / per).replace('-', '−')} {shown.size_unit}"


def sheets(shown: Shown) -> tuple[Sheet, ...]:
    rows = tuple(
        Row(one.name, (_span(shown, one.low_cm, one.high_cm),), one.standing, one.source)
        for one in EASES
    )
    return (Sheet("Ease around the chest", "Fit", ("ease",), rows),)


TABLE = Table(
    word="ease",
    title="Ease",
    group="Bodies",
    place=2,
    answers="How wide is a garment made for this chest?",
    fields=(Field("chest", "Chest", "size", least=30, most=180),),
    ask=ask,
    example=Example(
        {"chest": "96 cm"}, "a chest of 96 cm", "A standard fit measures 101 to 106 cm around."
    ),
    sheets=sheets,
    notes=("The two charts use the same words for other amounts: say which one you mean.",),
    more="fit close loose oversized width",
)
