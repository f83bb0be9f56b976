"""Counts: a yarn's number in every system the trade uses."""

from app.craft.counts import COUNTS, GRAIN_G, OUNCE_G, POUND_G, YARD_M, Count, from_tex, to_tex
from app.web.forms.table_fields import Asked
from app.web.pages.table import Answer, Example, Line, Row, Sheet, Table
from app.web.pages.table_grist import factor, grist_fields, grist_said
from app.web.pages.table_numbers import plain
from app.web.shown import Shown

MASSES = {POUND_G: "lb", OUNCE_G: "oz", GRAIN_G: "grains"}


def ask(asked: Asked, shown: Shown) -> Answer:
    """One yarn in all systems at once."""
    tex = to_tex(asked.words["system"], asked["count"])
    lines = (
        Line(name, plain(shown, from_tex(name, tex)), factor(shown, count))
        for name, count in COUNTS.items()
    )
    return Answer(f"{grist_said(shown, tex)}.", tuple(lines))


def sheets(shown: Shown) -> tuple[Sheet, ...]:
    rows = tuple(
        Row(name, _cells(count, shown), count.standing, count.source)
        for name, count in COUNTS.items()
    )
    columns = ("counts", "to tex", "also called")
    return (Sheet("Count systems", "System", columns, rows, prose=True),)


def _cells(count: Count, shown: Shown) -> tuple[str, ...]:
    return (_counts(count), factor(shown, count), count.also or "–")


def _counts(count: Count) -> str:
    """What the number counts: "g in 1000 m", "lengths of 840 yd in 1 lb"."""
    unit = MASSES.get(count.mass_g, "g")
    mass = "1" if count.mass_g in MASSES else f"{count.mass_g:g}"
    metric = float(count.length_m).is_integer()
    length = f"{count.length_m:g} m" if metric else f"{count.length_m / YARD_M:g} yd"
    if count.kind == "direct":
        return f"{unit} in {length}"
    return f"lengths of {length} in {mass} {unit}"


TABLE = Table(
    word="counts",
    title="Counts of yarn",
    group="Yarn",
    place=1,
    answers="What is this yarn's number in another system?",
    fields=grist_fields(),
    ask=ask,
    example=Example(
        {"count": "20", "system": "tex"}, "20 tex", "20.00 tex, 5000 m/100 g, 24803 yd/lb."
    ),
    sheets=sheets,
    notes=(
        "Four digits are shown: a yarn is seldom known better. Each line can be copied as it is.",
        "A folded yarn is numbered by its single; spun silk by the whole, so 40/2 is 40.",
        "Printed tables round yd/lb to the nearest 5 or 25, so they agree to 1 % only.",
    ),
    more="tex denier cotton worsted metric linen nm ne grist convert conversion yards per pound",
)
