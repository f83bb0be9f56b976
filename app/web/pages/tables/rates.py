"""Spinning rates: hours for so much yarn."""

from app.craft.ranges import hours_for, ranges
from app.web.forms.table_fields import Asked, Field
from app.web.pages.table import Answer, Example, Line, Row, Sheet, Table
from app.web.pages.table_numbers import plain, ranged
from app.web.shown import Shown

PER = {"m/h": "metres of single an hour", "g/h": "grams an hour", "yd/h": "yards of single an hour"}


def ask(asked: Asked, shown: Shown) -> Answer:
    """Hours at your own rate."""
    hours = hours_for(asked["amount"], asked["rate"])
    lines = (
        Line("hours", plain(shown, hours, 3), "amount ÷ rate"),
        Line("evenings of two hours", plain(shown, hours / 2, 3)),
    )
    return Answer(f"{plain(shown, hours, 3)} hours of spinning.", lines)


def sheets(shown: Shown) -> tuple[Sheet, ...]:
    rows = tuple(
        Row(
            one.what,
            (ranged(shown, one.low, one.high), one.unit, one.printed or "–"),
            one.standing,
            one.source,
        )
        for one in ranges("spinning_rates")
    )
    columns = ("rate", "in", "as printed")
    return (Sheet("Rates in print", "Who or what", columns, rows),)


TABLE = Table(
    word="rates",
    title="Spinning rates",
    group="Twist",
    place=4,
    answers="How many hours does this much spinning take?",
    fields=(
        Field("amount", "To be spun", hint="In the metres, yards or grams of your rate."),
        Field("rate", "Your rate", most=100_000),
        Field("per", "in", "choice", options=PER),
    ),
    ask=ask,
    example=Example(
        {"amount": "915", "rate": "120", "per": "m/h"},
        "915 m of singles at 120 m an hour",
        "7.62 hours of spinning.",
    ),
    sheets=sheets,
    notes=(
        "Plying comes on top. Time yourself for a quarter of an hour: your own rate is the one "
        "that counts.",
    ),
    caution="Pause now and then: long spinning strains hands, back and knees.",
    more="hours time speed wheel spindle",
)
