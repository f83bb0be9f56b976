"""Gauge to metres: the yarn in a stitch, in a square metre, and how firm the fabric is."""

from app.craft.cloth import fullness, square_metre
from app.craft.counts import to_tex
from app.craft.fabric import (
    FIRMNESS,
    KS_DRY,
    KS_FULL,
    KS_WET,
    LOOP_SHARE,
    OPEN_BELOW,
    loop_cm,
    metres_per_m2,
    row_per_width,
)
from app.craft.figure import Figure
from app.craft.gauge import TEN_CM_IN, per_10cm
from app.web.forms.table_fields import Asked, Field
from app.web.pages.table import Answer, Example, Line, Row, Sheet, Table
from app.web.pages.table_grist import SYSTEMS
from app.web.pages.table_numbers import plain, short
from app.web.shown import Shown

MUNDEN = "Munden 1959, plain knit, wool"


def ask(asked: Asked, shown: Shown) -> Answer:
    """Metres by the geometry of plain knit; grams and firmness where the grist is known."""
    measure = asked.words["measure"]
    stitches, rows = (per_10cm(asked[name], measure) for name in ("stitches", "rows"))
    loop = loop_cm(stitches, rows, asked.words["state"] == "washed")
    per_m2 = metres_per_m2(stitches, rows, loop)
    sentence = (
        f"About {plain(shown, per_m2.value)} m in a square metre, "
        f"{plain(shown, loop.value)} cm in a stitch"
    )
    lines = (
        Line("in a square metre", f"{plain(shown, per_m2.value)} m", _doubt(shown, per_m2)),
        Line("in a stitch", f"{plain(shown, loop.value)} cm", _doubt(shown, loop)),
        Line("in a row", f"{plain(shown, row_per_width(stitches, loop).value, 3)} × its width"),
        *_piece(asked, shown, per_m2),
    )
    if "count" not in asked.numbers:
        return Answer(f"{sentence}.", lines)
    tex = to_tex(asked.words["system"], asked["count"])
    cloth, full = square_metre(stitches, rows, loop, Figure(tex, "tex")), fullness(tex, loop.value)
    k = short(shown, full.by_weight)
    more = (
        Line("weight of a square metre", f"{plain(shown, cloth.g_per_m2.value, 3)} g"),
        Line("firmness", f"{k} ({full.word})", "√tex ÷ cm in a stitch"),
    )
    steps = (*cloth.steps, *full.steps)
    return Answer(f"{sentence}; firmness {k}, {full.word}.", (*lines, *more), steps=steps)


def _piece(asked: Asked, shown: Shown, per_m2: Figure) -> tuple[Line, ...]:
    width, length = asked.get("width"), asked.get("length")
    if width is None or length is None:
        return ()
    piece = per_m2.scaled(width * length / 10_000)
    return (Line("in your piece", f"{plain(shown, piece.value, 3)} m", _doubt(shown, piece)),)


def _doubt(shown: Shown, figure: Figure) -> str:
    return f"give or take {plain(shown, figure.u, 2)} {figure.unit}"


def sheets(shown: Shown) -> tuple[Sheet, ...]:
    ks = (
        ("knitted and left to lie", KS_DRY),
        ("washed and dried flat", KS_WET),
        ("washed and tumbled, fully relaxed", KS_FULL),
    )
    constants = tuple(Row(word, (short(shown, k),), "published", MUNDEN) for word, k in ks)
    uppers = (OPEN_BELOW, *(upper for upper, _ in FIRMNESS))
    bands = [("open", f"below {short(shown, OPEN_BELOW)}")]
    bands += [
        (word, f"{short(shown, low)} to {short(shown, upper)}")
        for low, (upper, word) in zip(uppers, FIRMNESS, strict=False)
    ]
    bands.append(("firm", f"above {short(shown, uppers[-1])}"))
    practice = "stocking stitch in wool, common practice"
    return (
        Sheet("Stitches in a square cm × (cm in a stitch)²", "Fabric", ("constant",), constants),
        Sheet(
            "Firmness",
            "Fabric",
            ("√tex ÷ cm in a stitch",),
            tuple(Row(word, (span,), "practice", practice) for word, span in bands),
        ),
    )


TABLE = Table(
    word="gauge",
    title="Gauge to metres",
    group="Fabric",
    place=1,
    answers="How much yarn does this gauge take, and how firm is it?",
    fields=(
        Field("stitches", "Stitches", least=1, most=200),
        Field("rows", "Rows", least=1, most=300),
        Field("measure", "Counted over", "choice", options={name: name for name in TEN_CM_IN}),
        Field(
            "state",
            "The swatch was",
            "choice",
            options={"washed": "washed and dried flat", "as knitted": "not washed"},
        ),
        Field("count", "Grist or count", "count", optional=True, most=1e7),
        Field("system", "in", "choice", options=SYSTEMS),
        Field("width", "Width of a piece", "size", optional=True, most=100_000),
        Field("length", "Its length", "size", optional=True, most=100_000),
    ),
    ask=ask,
    example=Example(
        {"stitches": "22", "rows": "30", "count": "450", "system": "tex"},
        "22 × 30 in 10 cm, washed, of a yarn of 450 tex",
        "About 1194 m in a square metre, 1.809 cm in a stitch; firmness 11.7, ordinary.",
    ),
    sheets=sheets,
    notes=(
        f"By the geometry of plain knit, right to {100 * LOOP_SHARE:g} % or so. A weighed or "
        "unravelled swatch knows it better.",
        "Stitches in 4 inches are 1.6 % more than in 10 cm: say which you counted.",
    ),
    more="tension loop length metres per square metre firmness area fabric munden swatch",
)
