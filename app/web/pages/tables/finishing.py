"""Wet finishing: how much shorter a skein becomes in the bath."""

from app.craft.ranges import ranges
from app.craft.reel import shrink_default
from app.web.forms.table_fields import Asked, Field
from app.web.pages.table import Answer, Example, Line, Row, Sheet, Table
from app.web.pages.table_numbers import plain, ranged
from app.web.shown import MINUS, Shown


def ask(asked: Asked, shown: Shown) -> Answer:
    """The length to expect; or the loss, where both lengths are known."""
    before, after = asked["before"], asked.get("after")
    if after is not None:
        return _measured(shown, before, after)
    shrink = shrink_default()
    expected = before * (1 - shrink.value)
    doubt = plain(shown, before * shrink.u, 2)
    lines = (
        Line("off the bobbin", f"{plain(shown, before)} m"),
        Line("finished", f"{plain(shown, expected)} m", f"give or take {doubt} m"),
    )
    note = "A guess for want of your own: measure a skein before and after."
    return Answer(f"About {plain(shown, expected)} m, give or take {doubt} m.", lines, note)


def _measured(shown: Shown, before: float, after: float) -> Answer:
    lost = 100 * (1 - after / before)
    word = "shorter" if lost >= 0 else "longer"
    said = f"{plain(shown, abs(lost), 3)} % {word}"
    lines = (
        Line("change of length", said, "of the length before"),
        Line("for 100 m finished", f"{plain(shown, 100 * before / after)} m", "off the bobbin"),
    )
    return Answer(
        f"{said}: for 100 m finished, spin {plain(shown, 100 * before / after)} m.", lines
    )


def sheets(shown: Shown) -> tuple[Sheet, ...]:
    rows = tuple(
        Row(
            one.what,
            (ranged(shown, one.low, one.high).replace("-", MINUS), one.printed or "–"),
            one.standing,
            one.source,
        )
        for one in ranges("wet_finishing")
    )
    return (Sheet("Change in wet finishing", "What", ("%", "as printed"), rows),)


TABLE = Table(
    word="finishing",
    title="Wet finishing",
    group="Fleece",
    place=8,
    answers="How much shorter is yarn after its bath?",
    fields=(
        Field("before", "Length off the bobbin", "yarn"),
        Field("after", "Length finished", "yarn", optional=True),
    ),
    ask=ask,
    example=Example(
        {"before": "600 yd", "after": "433 yd"},
        "600 yd before, 433 yd after",
        "27.8 % shorter: for 100 m finished, spin 138.6 m.",
    ),
    sheets=sheets,
    notes=("Yarns differ so much that your own ratio is worth more than any table.",),
    caution="Hot water scalds: let wool cool in it before you lift it.",
    more="shrink wash bath length skein swatch",
)
