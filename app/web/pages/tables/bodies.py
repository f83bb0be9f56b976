"""Body sizes: what a chest says of the rest of a body."""

from app.craft.sizes import LEAST_CHEST_CM, MOST_CHEST_CM, Printed, body, printed
from app.craft.working import Standing
from app.web.forms.table_fields import Asked, Field
from app.web.pages.table import Answer, Example, Line, Row, Sheet, Table
from app.web.pages.table_numbers import ranged, short
from app.web.pages.table_rows import said_standing
from app.web.shown import Shown

GROUPS = {"woman": "Women", "man": "Men", "child": "Children, by age", "baby": "Babies"}
CM_IN = 2.54


def ask(asked: Asked, shown: Shown) -> Answer:
    """Every measure known or assumed from the chest."""
    found = body(asked["chest"])
    lines = tuple(
        Line(name, _size(shown, one.cm), _doubt(shown, one.u, one.standing))
        for name, one in found.items()
        if name != "chest"
    )
    arm, upper = (_size(shown, found[name].cm) for name in ("arm length to underarm", "upper arm"))
    return Answer(
        f"Chest {_size(shown, asked['chest'])}: arm to underarm {arm}, upper arm {upper}.", lines
    )


def _size(shown: Shown, cm: float) -> str:
    unit = shown.size_unit
    return f"{short(shown, cm if unit == 'cm' else cm / CM_IN)} {unit}"


def _doubt(shown: Shown, u: float, standing: Standing) -> str:
    return f"± {_size(shown, u)}, {said_standing(standing)}"


def sheets(shown: Shown) -> tuple[Sheet, ...]:
    groups = tuple(_sheet(group, caption, shown) for group, caption in GROUPS.items())
    return (*groups, _heads(shown))


def _sheet(group: str, caption: str, shown: Shown) -> Sheet:
    of_group = [row for row in printed() if row.group == group]
    sizes = list(dict.fromkeys(row.size for row in of_group))
    measures = list(dict.fromkeys(row.measure for row in of_group))
    rows = tuple(
        _row([row for row in of_group if row.measure == measure], sizes, shown)
        for measure in measures
    )
    return Sheet(f"{caption}, {_unit(shown)}", "Measure", tuple(map(_said, sizes)), rows)


def _unit(shown: Shown) -> str:
    return "in cm" if shown.size_unit == "cm" else "in inches"


def _said(size: str) -> str:
    return size.replace("mo", " months")


def _row(rows: list[Printed], sizes: list[str], shown: Shown) -> Row:
    by_size = {row.size: row for row in rows}
    cells = tuple(_span(shown, by_size[size]) if size in by_size else "–" for size in sizes)
    weakest = next((row for row in rows if row.standing == "memory"), rows[0])
    return Row(rows[0].measure, cells, weakest.standing, weakest.source)


def _heads(shown: Shown) -> Sheet:
    rows = tuple(
        Row(row.size, (_span(shown, row),), row.standing, row.source)
        for row in printed()
        if row.group == "head"
    )
    return Sheet(f"Heads, {_unit(shown)}", "Whose", ("around",), rows)


def _span(shown: Shown, row: Printed) -> str:
    """To the half centimetre or quarter inch: no body is known better."""
    per, step = (1.0, 0.5) if shown.size_unit == "cm" else (CM_IN, 0.25)
    low, high = (round(cm / per / step) * step for cm in (row.low_cm, row.high_cm))
    return ranged(shown, low, high, 2).replace(" to ", "–")


TABLE = Table(
    word="bodies",
    title="Body sizes",
    group="Bodies",
    place=1,
    answers="What are the other measures of a body with this chest?",
    fields=(Field("chest", "Chest", "size", least=LEAST_CHEST_CM, most=MOST_CHEST_CM),),
    ask=ask,
    example=Example(
        {"chest": "92 cm"},
        "a chest of 92 cm",
        "Chest 92 cm: arm to underarm 44.6 cm, upper arm 29.4 cm.",
    ),
    sheets=sheets,
    notes=(
        "The wearer's own measures come first. Printed upper arms and shoulders run small above a "
        "chest of 100 cm (40 in).",
        "There are no garment lengths in these tables.",
    ),
    more="measurements chest sleeve arm head size women men children baby",
)
