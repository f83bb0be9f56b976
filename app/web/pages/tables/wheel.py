"""Wheel: turns put in by treadling, and how often to treadle for a draft."""

from app.craft.twist import INCH_CM, wheel_turns_per_inch
from app.web.forms.table_fields import Asked, Field
from app.web.pages.table import Answer, Example, Line, Row, Sheet, Table
from app.web.pages.table_numbers import plain, short
from app.web.shown import Shown

RATIOS = (6, 8, 10, 12, 14, 16, 20)
TREADLES = (1, 2, 3, 4)
DRAFT_IN = 2.0
INCHES = {"in": 1.0, "cm": INCH_CM}


def ask(asked: Asked, shown: Shown) -> Answer:
    """Turns in an inch and a cm."""
    turns = wheel_turns_per_inch(
        asked["ratio"], asked["treadles"], asked["draft"] / INCHES[asked.words["unit"]]
    )
    lines = (
        Line("turns in an inch", plain(shown, turns, 3), "ratio × treadles ÷ inches drafted"),
        Line("turns in a cm", plain(shown, turns / INCH_CM, 3)),
    )
    return Answer(f"{short(shown, turns)} turns in an inch.", lines)


def sheets(shown: Shown) -> tuple[Sheet, ...]:
    rows = tuple(
        Row(
            f"{ratio} : 1",
            tuple(short(shown, wheel_turns_per_inch(ratio, n, DRAFT_IN)) for n in TREADLES),
            "derived",
            "ratio × treadles ÷ inches drafted",
        )
        for ratio in RATIOS
    )
    columns = tuple(f"{n} treadle{'s' if n > 1 else ''}" for n in TREADLES)
    return (Sheet("Turns in an inch, drafting 2 inches", "Ratio", columns, rows),)


TABLE = Table(
    word="wheel",
    title="The wheel",
    group="Twist",
    place=2,
    answers="How much twist does my wheel put in?",
    fields=(
        Field(
            "ratio", "Ratio of the wheel", hint="Turns of the flyer to one of the wheel.", most=200
        ),
        Field("treadles", "Treadles", most=1000),
        Field("draft", "Length drafted meanwhile", most=1000),
        Field("unit", "in", "choice", options={"in": "inches", "cm": "cm"}),
    ),
    ask=ask,
    example=Example(
        {"ratio": "14", "treadles": "2", "draft": "2", "unit": "in"},
        "14 : 1, 2 in for 2 treadles",
        "14 turns in an inch.",
    ),
    sheets=sheets,
    notes=("A slipping band and slow take-up put in less: count turns in a sample now and then.",),
    caution="Pause now and then: long spinning strains hands, back and knees.",
    more="treadle whorl flyer drafting tpi",
)
