"""The gauge a needle will give, before any swatch."""

from app.craft.counts import to_tex
from app.craft.needles import HAND_SHARE, ROWS_PER_STITCH, ROWS_PER_STITCH_U, predict_gauge
from app.craft.thickness import wraps_from_tex
from app.web.forms.table_fields import Asked, Field
from app.web.pages.table import Answer, Example, Line, Row, Sheet, Table
from app.web.pages.table_grist import SYSTEMS
from app.web.pages.table_numbers import plain, short
from app.web.shown import Shown

NEEDLES = (2.5, 3.0, 3.5, 4.0, 4.5, 5.0, 5.5, 6.0, 7.0, 8.0)
WRAPS = (8, 10, 12, 14, 16, 18)


def ask(asked: Asked, shown: Shown) -> Answer:
    """Stitches and rows to expect in 10 cm of washed plain knit."""
    wraps = wraps_from_tex(to_tex(asked.words["system"], asked["count"]))
    ahead = predict_gauge(asked["needle"], wraps)
    stitches, rows = ahead.stitches, ahead.rows
    lines = (
        Line("stitches in 10 cm", short(shown, stitches.value), f"± {short(shown, stitches.u)}"),
        Line("rows in 10 cm", short(shown, rows.value), f"± {short(shown, rows.u)}"),
        Line("in a stitch", f"{plain(shown, ahead.loop.value)} cm", "π × (needle + yarn)"),
        Line("wraps per inch", short(shown, wraps), "from the grist"),
    )
    sentence = (
        f"About {short(shown, stitches.value, 0)} stitches and {short(shown, rows.value, 0)} rows "
        f"in 10 cm, give or take {short(shown, stitches.u)} and {short(shown, rows.u)}."
    )
    return Answer(sentence, lines)


def sheets(shown: Shown) -> tuple[Sheet, ...]:
    source = "from needle and yarn by the geometry of plain knit, the hand taken as 1"
    rows = tuple(
        Row(
            f"{short(shown, mm)} mm",
            tuple(short(shown, predict_gauge(mm, wraps).stitches.value) for wraps in WRAPS),
            "derived",
            source,
        )
        for mm in NEEDLES
    )
    columns = tuple(f"{wraps} wraps" for wraps in WRAPS)
    return (Sheet("Stitches in 10 cm, by wraps per inch", "Needle", columns, rows),)


TABLE = Table(
    word="gauge-ahead",
    title="Gauge before a swatch",
    group="Fabric",
    place=3,
    answers="What gauge will this needle give with this yarn?",
    fields=(
        Field("needle", "Needle", unit="mm", least=0.5, most=50),
        Field("count", "Grist or count", "count", most=1e7),
        Field("system", "in", "choice", options=SYSTEMS),
    ),
    ask=ask,
    example=Example(
        {"needle": "4", "count": "222", "system": "m/100 g"},
        "4 mm, 222 m/100 g",
        "About 21 stitches and 29 rows in 10 cm, give or take 2.2 and 3.",
    ),
    sheets=sheets,
    notes=(
        f"One knitter's hand lies {100 * HAND_SHARE:g} % or so from another's: this is a place to "
        "begin swatching.",
        f"Rows are taken as {ROWS_PER_STITCH:g} ± {ROWS_PER_STITCH_U:g} to a stitch (practice).",
    ),
    more="needle prediction tension stitches rows",
)
