"""Fields of wool, yarn, wheels, time and photos whose values make no sense."""

import re
from collections.abc import Iterator
from dataclasses import fields

from app.book.book import Book
from app.book.bounds import Fault, above_zero, not_below, percent, within
from app.book.fleece import Fleece
from app.book.holding import Holding
from app.book.reading import Reading
from app.book.yarn import Yarn

TEX = (0.01, 1_000_000.0)
TURNS = (0.0, 1_000_000.0)
"""Beyond these no yarn or reel lies; they keep every sum finite."""

MINUTES = (0, 24 * 60 - 1)
BLEND_PCT = 100.5
"""Rounded shares may come to a little more than all of it."""

COLOUR = re.compile(r"#[0-9a-f]{6}")
NO_COLOUR = "must be written like #c8b79a, or be empty."
DIGEST = re.compile(r"[0-9a-f]{64}")
SPINNING = {"ratio", "draft_mm", "ply_twist_per_m", "singles_twist_per_m", "wraps", "wanted_mm"}
"""What is above zero where it is said how a yarn is to be spun."""


def of_wool(book: Book) -> Iterator[Fault]:
    """Fleeces, yarns, holdings and readings."""
    for fleece in book.fleeces:
        yield from _of_fleece(fleece)
    for yarn in book.yarns:
        yield from _of_yarn(yarn)
    for holding in book.holdings:
        yield from _of_holding(holding)
    for reading in book.readings:
        yield from _of_reading(reading)


def of_beside(book: Book) -> Iterator[Fault]:
    """Wheels, time and photos."""
    for wheel in book.wheels:
        yield from above_zero(wheel, "bobbin_mg", wheel.bobbin_mg)
        for ratio in wheel.ratios:
            yield from above_zero(wheel, "ratios", ratio.value)
    for stint in book.stints:
        for field in ("minutes", "mg", "mm"):
            yield from above_zero(stint, field, getattr(stint, field))
    for photo in book.photos:
        for field in ("bytes", "width", "height"):
            yield from above_zero(photo, field, getattr(photo, field))
        # The digest is a file's name: anything else could lead out of the folder.
        if not DIGEST.fullmatch(photo.sha256):
            yield photo, "sha256", "must be 64 hexadecimal digits."


def of_knitting(book: Book) -> Iterator[Fault]:
    """What is on the needles."""
    for progress in book.progress:
        yield from above_zero(progress, "piece", progress.piece)
        yield from not_below(progress, "rows", progress.rows)
    for weighing in book.weighings:
        yield from above_zero(weighing, "piece", weighing.piece)
        yield from above_zero(weighing, "scale_mg", weighing.scale_mg)
        for field in ("rows", "mg"):
            yield from not_below(weighing, field, getattr(weighing, field))
        yield from within(weighing, "minute", weighing.minute, MINUTES)


def _of_fleece(fleece: Fleece) -> Iterator[Fault]:
    yield from percent(fleece, "yield_pct", fleece.yield_pct)
    for field in ("yield_pct", "micron", "staple_mm"):
        yield from above_zero(fleece, field, getattr(fleece, field))
    yield from _of_colour(fleece)
    yield from _of_blend(fleece)


def _of_yarn(yarn: Yarn) -> Iterator[Fault]:
    for field in ("plies", "ball_mg", "ball_mm"):
        yield from above_zero(yarn, field, getattr(yarn, field))
    yield from within(yarn, "target_tex", yarn.target_tex, TEX)
    yield from _of_colour(yarn)
    yield from _of_blend(yarn)
    for one in fields(yarn.spinning) if yarn.spinning else ():
        if one.name in SPINNING:
            yield from above_zero(yarn, f"spinning.{one.name}", getattr(yarn.spinning, one.name))


def _of_holding(holding: Holding) -> Iterator[Fault]:
    yield from _of_colour(holding)
    for place in holding.colours:
        yield from not_below(holding, "colours", place.mm)
        if not COLOUR.fullmatch(place.colour):
            yield holding, "colours", NO_COLOUR


def _of_reading(reading: Reading) -> Iterator[Fault]:
    yield from not_below(reading, "value", reading.value)
    yield from above_zero(reading, "girth_mm", reading.girth_mm)
    yield from within(reading, "turns", reading.turns, TURNS)
    yield from within(reading, "minute", reading.minute, MINUTES)


def _of_colour(record: Fleece | Yarn | Holding) -> Iterator[Fault]:
    if record.colour and not COLOUR.fullmatch(record.colour):
        yield record, "colour", NO_COLOUR


def _of_blend(record: Fleece | Yarn) -> Iterator[Fault]:
    for share in record.blend:
        yield from above_zero(record, f"blend, {share.fibre}", share.pct)
    if sum(share.pct for share in record.blend) > BLEND_PCT:
        yield record, "blend", "has shares of more than 100 percent together."
