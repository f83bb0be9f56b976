"""Treadling: how often to tread for a twist."""

from app.craft.twist import INCH_CM
from app.craft.twist_uses import treadles_for_draft, wheel_step
from app.web.forms.table_fields import Asked, Field
from app.web.pages.table import Answer, Example, Line, Row, Sheet, Table
from app.web.pages.table_numbers import short
from app.web.shown import Shown

CM = {"in": INCH_CM, "cm": 1.0}
RATIOS = (6, 8, 10, 12, 14, 16, 20)
TURNS = (4, 6, 8, 10, 12, 16)
DRAFT_IN = 10


def ask(asked: Asked, shown: Shown) -> Answer:
    """Treadles to one draft."""
    unit = CM[asked.words["unit"]]
    step = wheel_step(asked["turns"] / unit, asked["ratio"], asked["draft"] * unit)
    lines = (Line("treadles to a draft", short(shown, step.value), "turns × draft ÷ ratio"),)
    return Answer(f"{short(shown, step.value)} treadles to each draft.", lines, steps=(step,))


def sheets(shown: Shown) -> tuple[Sheet, ...]:
    rows = tuple(
        Row(
            f"{ratio} : 1",
            tuple(
                short(shown, treadles_for_draft(turns / INCH_CM, ratio, DRAFT_IN * INCH_CM))
                for turns in TURNS
            ),
            "derived",
            "turns × draft ÷ ratio",
        )
        for ratio in RATIOS
    )
    columns = tuple(f"{turns} in an inch" for turns in TURNS)
    return (Sheet("Treadles to a draft of 10 inches", "Ratio", columns, rows),)


TABLE = Table(
    word="treadling",
    title="Treadling",
    group="Twist",
    place=3,
    answers="How often do I tread for the twist I want?",
    fields=(
        Field("turns", "Turns wanted", most=1000),
        Field("draft", "Length of a draft", most=1000),
        Field("unit", "both in", "choice", options={"in": "inches", "cm": "cm"}),
        Field(
            "ratio", "Ratio of the wheel", hint="Turns of the flyer to one of the wheel.", most=200
        ),
    ),
    ask=ask,
    example=Example(
        {"turns": "6", "draft": "10", "unit": "in", "ratio": "12"},
        "6 turns in an inch, drafts of 10 inches, 12 : 1",
        "5 treadles to each draft.",
    ),
    sheets=sheets,
    notes=("A tread is one turn of the wheel: with two treadles, both feet once.",),
    more="wheel treadle draft twist ratio whorl",
)
