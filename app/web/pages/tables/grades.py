"""Grades of wool: by the diameter of its fibres."""

from app.craft.grades import Grade, grade_of, grades
from app.web.forms.table_fields import Asked, Field
from app.web.pages.table import Answer, Example, Line, Row, Sheet, Table
from app.web.pages.table_numbers import ranged, short
from app.web.shown import Shown


def ask(asked: Asked, shown: Shown) -> Answer:
    """The grade, and the blood grade that goes with it."""
    found = grade_of(asked["micron"], asked.get("sd"))
    lines = (
        Line("grade", found.name, found.source),
        Line("blood grade", found.blood, "the older American system"),
        Line("mean diameter", f"{_microns(shown, found)} µm"),
    )
    return Answer(f"Grade {found.name}, blood grade {found.blood}.", lines)


def _microns(shown: Shown, one: Grade) -> str:
    return ranged(shown, one.micron_low, one.micron_high, 2)


def sheets(shown: Shown) -> tuple[Sheet, ...]:
    rows = tuple(
        Row(
            one.name,
            (
                _microns(shown, one),
                "–" if one.most_sd is None else short(shown, one.most_sd, 2),
                one.blood,
            ),
            one.standing,
            one.source,
        )
        for one in grades()
    )
    columns = ("mean, µm", "most spread, µm", "blood grade")
    return (Sheet("Grades of wool", "Grade", columns, rows),)


TABLE = Table(
    word="grades",
    title="Grades of wool",
    group="Fleece",
    place=2,
    answers="Which grade is wool of this fineness?",
    fields=(
        Field("micron", "Mean diameter", unit="µm", least=5, most=100),
        Field("sd", "Standard deviation", unit="µm", optional=True, least=0.1, most=50),
    ),
    ask=ask,
    example=Example({"micron": "24"}, "24 µm", "Grade 60s, blood grade 1/2 blood."),
    sheets=sheets,
    notes=(
        "A spread larger than the grade allows puts the wool one grade lower (remembered).",
        "The count of a grade once said how fine a yarn could be spun from it.",
    ),
    more="micron bradford count blood fineness usda",
)
