"""Multiples: the stitch counts a pattern fits into."""

from app.craft.shaping import multiples_near
from app.web.forms.table_fields import Asked, Field
from app.web.pages.table import Answer, Example, Line, Row, Sheet, Table
from app.web.shown import Shown


def ask(asked: Asked, _: Shown) -> Answer:
    """The nearest counts at or below and at or above."""
    plus = int(asked.get("plus") or 0)
    wanted, multiple = asked.whole("stitches"), asked.whole("multiple")
    below, above = multiples_near(wanted, multiple, plus)
    lines = tuple(
        Line(f"{count} stitches", f"{(count - plus) // multiple} repeats", _off(count - wanted))
        for count in sorted({below, above})
    )
    said = f"{wanted} fits" if below == above else f"{below} or {above} stitches"
    return Answer(f"{said}.", lines)


def _off(off: int) -> str:
    if off == 0:
        return "as it is"
    return f"{abs(off)} {'more' if off > 0 else 'fewer'}"


def sheets(_: Shown) -> tuple[Sheet, ...]:
    source = "common practice: flat pieces end as they began"
    rows = (
        Row("1 × 1 rib", ("2", "1"), "practice", source),
        Row("2 × 2 rib", ("4", "2"), "practice", source),
        Row("3 × 2 rib", ("5", "3"), "practice", source),
        Row("moss stitch", ("2", "1"), "practice", source),
    )
    return (Sheet("Multiples of borders", "Border", ("multiple", "and more when flat"), rows),)


TABLE = Table(
    word="multiples",
    title="Multiples",
    group="Small sums",
    place=3,
    answers="Which stitch count fits this pattern?",
    fields=(
        Field("stitches", "Stitches wanted", "whole", least=1, most=100_000),
        Field("multiple", "Multiple of", "whole", least=1, most=10_000),
        Field("plus", "and so many more", "whole", optional=True, least=0, most=10_000),
    ),
    ask=ask,
    example=Example(
        {"stitches": "229", "multiple": "4", "plus": "2"},
        "229 stitches in a 2 × 2 rib, flat",
        "226 or 230 stitches.",
    ),
    sheets=sheets,
    more="rib repeat pattern border stitches",
)
