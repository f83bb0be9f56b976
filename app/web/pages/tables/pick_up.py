"""Picking up stitches along the ends of rows."""

from app.craft.shaping import pick_up
from app.web.forms.table_fields import Asked, Fault, Field
from app.web.pages.table import Answer, Example, Line, Row, Sheet, Table
from app.web.pages.table_numbers import short
from app.web.shown import Shown


def ask(asked: Asked, shown: Shown) -> Answer:
    """Stitches out of how many rows, in turn; and for an edge of so many rows, the whole."""
    stitches, rows = asked["stitches"], asked["rows"]
    try:
        pattern = pick_up(stitches, rows)
    except ValueError:
        raise Fault(
            "rows", "With more stitches than rows, pick up one in every row and increase after."
        ) from None
    said = ", then ".join(f"{few} in {many}" for few, many in pattern)
    lines = [Line("stitches to a row", short(shown, stitches / rows, 3), "stitches ÷ rows")]
    if edge := asked.get("edge"):
        lines.append(Line(f"along {edge:g} rows", f"{round(edge * stitches / rows)} stitches"))
    return Answer(f"Pick up {said} rows, over and over.", tuple(lines))


def sheets(_: Shown) -> tuple[Sheet, ...]:
    gauges = ((20, 26), (20, 28), (22, 28), (22, 30), (24, 32), (26, 36), (28, 36))
    rows = tuple(
        Row(
            f"{stitches} × {rows}",
            (", ".join(f"{few} in {many}" for few, many in pick_up(stitches, rows)),),
            "derived",
            "stitch gauge ÷ row gauge",
        )
        for stitches, rows in gauges
    )
    return (Sheet("Along the ends of rows", "Gauge", ("pick up",), rows),)


TABLE = Table(
    word="pick-up",
    title="Picking up",
    group="Small sums",
    place=2,
    answers="How many stitches do I pick up along the ends of rows?",
    fields=(
        Field("stitches", "Stitches of the gauge", least=1, most=200),
        Field("rows", "Rows of the gauge", least=1, most=300),
        Field("edge", "Rows along the edge", "whole", optional=True, least=1, most=100_000),
    ),
    ask=ask,
    example=Example(
        {"stitches": "20", "rows": "26"},
        "20 × 26",
        "Pick up 3 in 4, then 3 in 4, then 4 in 5 rows, over and over.",
    ),
    sheets=sheets,
    notes=("Both numbers of the gauge are counted over the same measure, whichever it is.",),
    more="button band border edge stitches rows",
)
