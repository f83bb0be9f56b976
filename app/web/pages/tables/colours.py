"""The difference of two colours, and what it is to the eye."""

from app.craft.colour import BANDS, SOURCE, compared, difference, difference_word, lab
from app.web.forms.table_fields import Asked, Field
from app.web.pages.table import Answer, Example, Line, Row, Sheet, Table
from app.web.pages.table_numbers import short
from app.web.shown import MINUS, Shown


def ask(asked: Asked, shown: Shown) -> Answer:
    """CIEDE2000 between the two."""
    colours = (asked.words["one"], asked.words["other"])
    first, second = (lab(colour) for colour in colours)
    found = difference(first, second)
    lines = (
        Line("difference", short(shown, found), SOURCE),
        Line("one colour", _told(shown, first), colours[0]),
        Line("the other", _told(shown, second), colours[1]),
    )
    word = difference_word(found)
    sentence = f"A difference of {short(shown, found)}: {word}."
    return Answer(sentence, lines, steps=(compared(*colours),), swatches=colours)


def _told(shown: Shown, colour: tuple[float, float, float]) -> str:
    parts = zip(("L*", "a*", "b*"), colour, strict=True)
    return ", ".join(f"{name} {short(shown, x)}" for name, x in parts).replace("-", MINUS)


def sheets(shown: Shown) -> tuple[Sheet, ...]:
    lows = (0.0, *(upper for upper, _ in BANDS))
    bands = [
        (f"{short(shown, low)} to {short(shown, upper)}", word)
        for low, (upper, word) in zip(lows, BANDS, strict=False)
    ]
    bands.append((f"above {short(shown, lows[-1])}", "plainly different"))
    source = "practice of textile dyers"
    rows = tuple(Row(span, (word,), "practice", source) for span, word in bands)
    return (Sheet("What a difference is to the eye", "Difference", ("seen as",), rows, prose=True),)


TABLE = Table(
    word="colours",
    title="Two colours",
    group="Yarn",
    place=7,
    answers="How far apart are these two colours to the eye?",
    fields=(Field("one", "One colour", "colour"), Field("other", "The other", "colour")),
    ask=ask,
    example=Example(
        {"one": "#8a7a66", "other": "#a3937d"},
        "#8a7a66 and #a3937d, a brown and a paler one",
        "A difference of 8.9: plainly different.",
    ),
    sheets=sheets,
    notes=(
        "A colour picked on a screen is only near that of the wool. Judge by daylight, skein "
        "beside skein.",
        "Below 1 two skeins pass for one; above 3 a change shows where they meet.",
    ),
    more="colour difference ciede2000 shade match dye lot",
)
