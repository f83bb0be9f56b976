"""What is to be decided while a garment is knit, in sentences."""

from collections.abc import Iterator

from app.book.book import Book
from app.planning.knitting.decide import MayBecome, OneNotBoth, may_become, one_not_both
from app.planning.knitting.fade_when import FadeWhen, fades_when
from app.planning.knitting.forecast import Forecast
from app.planning.knitting.spin_in_time import InTime
from app.web.pages.answer import yarn_name
from app.web.shown import Shown, down

LEAST_MM = 5.0
"""A length that differs by less is not worth a word."""

MOST_SHARE = 0.4
"""Nobody makes a part longer or shorter by more than this share of it (assumed)."""


def decisions(ahead: Forecast, book: Book, shown: Shown) -> Iterator[str]:
    """The sentences, the most pressing first."""
    for fade in fades_when(ahead):
        yield _fade(fade, book)
    for pair in one_not_both(ahead):
        yield _pair(pair, shown)
    for part in may_become(ahead):
        if LEAST_MM <= abs(part.likely_mm - part.planned_mm) <= MOST_SHARE * part.planned_mm:
            yield _length(part, shown)


def in_time_said(one: InTime, book: Book, shown: Shown) -> str:
    """Hours of knitting until the yarn ends, against the hours of spinning what is short."""
    name = yarn_name(one.yarn_id, book)
    lasts, spin = (shown.number(hours.value) for hours in (one.lasts, one.spin))
    said = (
        f"{name} surely lasts for about {lasts} hours of knitting. The "
        f"{shown.short_length(one.short_m)} that are short take about {spin} hours of work on the "
        f"wool, and {one.dry_days} days to dry."
    )
    if one.late_days:
        days = "a day" if one.late_days == 1 else f"{one.late_days} days"
        return f"{said} Begin now; the knitting will wait about {days} for it."
    return f"{said} Begin by {shown.day(one.begin_by)}, and it is there in time."


def _fade(one: FadeWhen, book: Book) -> str:
    name, at = yarn_name(one.yarn_id, book), one.at
    where = f"row {at.row} of the {at.part.lower()}" + (
        ", on every piece alike" if at.pieces > 1 else ""
    )
    if one.kind == "alternate":
        share = max(1, down(20 * one.share))
        return (
            f"Alternate {name} with another yarn from {where} on, {share} rows in 20 of it: so it "
            "reaches the end."
        )
    return (
        f"Begin the fade at {where}, from every row down to one in four: so {name} surely reaches "
        "the end."
    )


def _pair(one: OneNotBoth, shown: Shown) -> str:
    return (
        f"{one.code} does one piece of the {one.part.lower()} but not both: it reaches the end of "
        f"this one {shown.odds(one.odds_one)}, of both {shown.odds(one.odds_both)}."
    )


def _length(one: MayBecome, shown: Shown) -> str:
    low, high = (
        shown.size(10 * round(max(0.0, mm) / 10)) for mm in sorted((one.surely_mm, one.likely_mm))
    )
    sizes = low if low == high else f"{low} to {high}"
    return (
        f"The {one.part.lower()} may become {sizes} long if it alone takes what there is; "
        f"{shown.size(one.planned_mm)} is planned."
    )
