"""Which needle gives a wanted gauge, before any swatch."""

from app.craft.counts import to_tex
from app.craft.gauge import TEN_CM_IN, per_10cm
from app.craft.needle_choice import Choice, needle_for
from app.craft.needles import HAND_SHARE
from app.craft.thickness import wraps_from_tex
from app.web.forms.table_fields import Asked, Fault, Field
from app.web.pages.table import Answer, Example, Line, Row, Sheet, Table
from app.web.pages.table_grist import SYSTEMS
from app.web.pages.table_numbers import short
from app.web.shown import Shown

STITCHES = (14, 16, 18, 20, 22, 24, 26, 28, 30)
WRAPS = (8, 10, 12, 14, 16, 18)


def ask(asked: Asked, shown: Shown) -> Answer:
    """The needle, and the sizes sold on either side of it with what each would give."""
    wraps = wraps_from_tex(to_tex(asked.words["system"], asked["count"]))
    stitches = per_10cm(asked["stitches"], asked.words["measure"])
    try:
        choice = needle_for(stitches, wraps)
    except ValueError:
        raise Fault(
            "stitches", "This yarn is too thick for so many stitches, whatever the needle."
        ) from None
    lines = tuple(
        Line(
            f"{short(shown, needle.mm, 2)} mm",
            f"{short(shown, ahead.stitches.value)} stitches in 10 cm",
            f"± {short(shown, ahead.stitches.u)}; {short(shown, ahead.rows.value)} rows",
        )
        for needle, ahead in choice.offers
    )
    note = "Swatch the sizes sold next to it first:"
    return Answer(_said(choice, shown), lines, note, choice.steps)


def _said(choice: Choice, shown: Shown) -> str:
    mm, u = (short(shown, x) for x in (choice.needle.value, choice.needle.u))
    return f"A needle of about {mm} mm, give or take {u} mm."


def sheets(shown: Shown) -> tuple[Sheet, ...]:
    source = "from needle and yarn by the geometry of plain knit, the hand taken as 1"
    rows = tuple(
        Row(
            f"{stitches} in 10 cm",
            tuple(short(shown, needle_for(stitches, wraps).needle.value) for wraps in WRAPS),
            "derived",
            source,
        )
        for stitches in STITCHES
    )
    columns = tuple(f"{wraps} wraps" for wraps in WRAPS)
    return (Sheet("Needle in mm, by wraps per inch", "Stitches", columns, rows),)


TABLE = Table(
    word="needle-for-gauge",
    title="Needle for a gauge",
    group="Fabric",
    place=4,
    answers="Which needle gives the gauge I want with this yarn?",
    fields=(
        Field("stitches", "Stitches wanted", least=1, most=200),
        Field("measure", "counted over", "choice", options={name: name for name in TEN_CM_IN}),
        Field("count", "Grist or count", "count", most=1e7),
        Field("system", "in", "choice", options=SYSTEMS),
    ),
    ask=ask,
    example=Example(
        {"stitches": "26", "count": "370", "system": "m/100 g"},
        "26 stitches in 10 cm, 370 m/100 g",
        "A needle of about 3.3 mm, give or take 0.5 mm.",
    ),
    sheets=sheets,
    notes=(
        f"One knitter's hand lies {100 * HAND_SHARE:g} % or so from another's. Two swatches of "
        "your own on two needles know it better.",
    ),
    more="needle size prediction tension",
)
