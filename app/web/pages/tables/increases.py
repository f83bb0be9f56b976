"""Even shaping: increases or decreases spread over rows or stitches."""

from app.craft.shaping import Spacing, even_spacing, even_spacing_flat
from app.web.forms.table_fields import Asked, Fault, Field
from app.web.pages.table import Answer, Example, Line, Row, Sheet, Table
from app.web.shown import Shown

OVER = {
    "round": "rounds or rows, any of them",
    "flat": "rows, every second at most",
    "stitches": "stitches of one row",
}


def ask(asked: Asked, _: Shown) -> Answer:
    """How often to work one, and how often one stitch or row later."""
    events, rows = asked.whole("events"), asked.whole("over")
    spread = even_spacing_flat if asked.words["kind"] == "flat" else even_spacing
    try:
        spacing = spread(events, rows)
    except ValueError:
        raise Fault("events", "There are more of them than places for them.") from None
    noun = "stitch" if asked.words["kind"] == "stitches" else "row"
    lines = tuple(Line(f"{times} times", f"every {_nth(gap, noun)}") for times, gap in spacing)
    return Answer(f"{_said(spacing, noun)}.", lines)


def _said(spacing: Spacing, noun: str) -> str:
    parts = [f"every {_nth(gap, noun)} {_times(times)}" for times, gap in spacing]
    text = ", then ".join(parts)
    return text[0].upper() + text[1:]


def _times(times: int) -> str:
    return "once" if times == 1 else f"{times} times"


def _nth(gap: int, noun: str) -> str:
    if gap == 1:
        return noun
    ending = "th" if gap % 100 in (11, 12, 13) else {1: "st", 2: "nd", 3: "rd"}.get(gap % 10, "th")
    return f"{gap}{ending} {noun}"


def sheets(_: Shown) -> tuple[Sheet, ...]:
    rule = "whole-number division with its remainder"
    rows = (
        Row("each gap", ("rows ÷ shapings, the whole part",), "derived", rule),
        Row("longer by one", ("as many as the remainder of that division",), "derived", rule),
        Row("flat work", ("pairs of rows are divided instead of rows",), "derived", rule),
    )
    return (Sheet("How it is divided", "What", ("rule",), rows, prose=True),)


TABLE = Table(
    word="increases",
    title="Even increases",
    group="Small sums",
    place=1,
    answers="How far apart do these increases or decreases sit?",
    fields=(
        Field("events", "Increases or decreases", "whole", least=1, most=100_000),
        Field("over", "spread over", "whole", least=1, most=1_000_000),
        Field("kind", "which are", "choice", options=OVER),
    ),
    ask=ask,
    example=Example(
        {"events": "11", "over": "108", "kind": "round"},
        "11 in 108 rounds",
        "Every 9th row 2 times, then every 10th row 9 times.",
    ),
    sheets=sheets,
    notes=("Work the longer gaps where the shaping should be gentler; the sum is the same.",),
    more="decreases shaping evenly sleeve spread",
)
