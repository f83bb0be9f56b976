"""A skein on the reel: girth and turns give its length, with its weight its grist."""

from app.craft.counts import YARD_M, tex_of
from app.craft.reel import GIRTH_SHARE, PILE_UP_SHARE, skein_length
from app.web.forms.table_fields import Asked, Field
from app.web.pages.table import Answer, Example, Line, Row, Sheet, Table
from app.web.pages.table_grist import grist_lines
from app.web.pages.table_numbers import plain
from app.web.shown import Shown


def ask(asked: Asked, shown: Shown) -> Answer:
    """Length of a skein, how sure it is, and the grist from its weight."""
    length = skein_length(asked["girth"], asked["turns"], asked.words["state"] == "finished")
    metres = plain(shown, length.value)
    lines = (
        Line("length", f"{metres} m", f"give or take {plain(shown, length.u, 2)} m"),
        Line("length", f"{plain(shown, length.value / YARD_M)} yd"),
    )
    note = f"Most of the doubt: {length.chief_cause}."
    mass = asked.get("mass")
    if mass is None:
        return Answer(f"{metres} m.", lines, note)
    tex = tex_of(mass, length.value)
    return Answer(f"{metres} m, {plain(shown, tex)} tex.", (*lines, *grist_lines(shown, tex)), note)


def sheets(_: Shown) -> tuple[Sheet, ...]:
    pile_up, girth = (f"{100 * share:g} %" for share in (PILE_UP_SHARE, GIRTH_SHARE))
    principle = "the principle of ISO 2060"
    rows = (
        Row("length", ("turns × girth",), "published", principle),
        Row("linear density", ("1000 × grams ÷ metres, in tex",), "published", "ISO 1144"),
        Row(
            "girth", (f"± {girth}, the same for every skein of a reel",), "assumed", "a taped reel"
        ),
        Row(
            "turns", ("± half a turn",), "derived", "the yarn's end lies anywhere on the last turn"
        ),
        Row(
            "thick yarn on the reel",
            (f"0 to {pile_up}, one way: it piles up and stretches",),
            "practice",
            "common practice",
        ),
    )
    return (Sheet("How a skein is measured", "What", ("how",), rows, prose=True),)


TABLE = Table(
    word="skein",
    title="Skein and grist",
    group="Yarn",
    place=4,
    answers="How long is this skein, and how fine?",
    fields=(
        Field("girth", "Once round the reel", "yarn"),
        Field("turns", "Turns", most=100_000),
        Field("mass", "Weight", "wool", optional=True),
        Field(
            "state",
            "Measured",
            "choice",
            options={
                "reel": "off the bobbin, on the reel",
                "finished": "wet-finished, hanging free",
            },
        ),
    ),
    ask=ask,
    example=Example(
        {"girth": "1.5 m", "turns": "142", "mass": "96 g"},
        "1.5 m × 142 turns, 96 g",
        "213.0 m, 450.7 tex.",
    ),
    sheets=sheets,
    notes=(
        "Before and after finishing are two measurements: yarn shortens in the bath.",
        "Weigh dry: damp yarn is heavier and seems thicker than it is.",
    ),
    more="reel niddy-noddy hank metres yards length weight",
)
