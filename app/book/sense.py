"""Fields whose values make no sense: sizes below zero, percentages past a hundred, and the like."""

import re
from collections.abc import Iterator
from dataclasses import fields
from typing import Any

from app.book.book import Book
from app.book.finding import Finding, name_of
from app.book.fleece import Fleece
from app.book.gauge import Gauge
from app.book.holding import Holding
from app.book.pattern import Pattern, SizePart
from app.book.plan import Losses, Part
from app.book.shape import Run, Runs, Shape
from app.book.swatch import Swatch
from app.book.yarn import Yarn

Fault = tuple[Any, str, str]
"""A record, its field, and what is wrong."""

ABOVE_ZERO = "must be more than zero."
NOT_BELOW_ZERO = "must not be below zero."
PERCENT = "must lie between 0 and 100 percent."
INSIDE = "must be more than 0 and less than 100 percent."
NOT_ALL = "must be at least 0 and less than 100 percent."
TEX = (0.01, 1_000_000.0)
TURNS = (0.0, 1_000_000.0)
GAUGE = (0.1, 1_000.0)
"""Beyond these no yarn, reel or fabric lies; they keep every sum finite."""

COLOUR = re.compile(r"#[0-9a-f]{6}")


def nonsense(book: Book) -> list[Finding]:
    """A finding for each field out of its range."""
    found = [Finding("settings", field, text) for _, field, text in _of_settings(book)]
    for record, field, text in _of_records(book):
        found.append(Finding(name_of(book, record), field, text))
    return found


def _of_records(book: Book) -> Iterator[Fault]:
    yield from _of_wool(book)
    for swatch in book.swatches:
        yield from _of_swatch(swatch)
    for pattern in book.patterns:
        yield from _of_pattern(pattern)
    yield from _of_people(book)
    yield from _of_plans(book)
    for part in book.parts:
        yield from _of_part(part)


def _of_settings(book: Book) -> Iterator[Fault]:
    settings = book.settings
    yield from _inside(settings, "sureness_pct", settings.sureness_pct)
    yield from _above_zero(settings, "girth_mm", settings.girth_mm)
    yield from _of_losses(settings, settings.losses)
    for step in fields(settings.steps):
        yield from _not_all(settings, f"steps.{step.name}", getattr(settings.steps, step.name))


def _of_wool(book: Book) -> Iterator[Fault]:
    for fleece in book.fleeces:
        yield from _percent(fleece, "yield_pct", fleece.yield_pct)
        yield from _above_zero(fleece, "yield_pct", fleece.yield_pct)
        yield from _above_zero(fleece, "micron", fleece.micron)
        yield from _above_zero(fleece, "staple_mm", fleece.staple_mm)
    for yarn in book.yarns:
        for field in ("plies", "ball_mg", "ball_mm"):
            yield from _above_zero(yarn, field, getattr(yarn, field))
        yield from _within(yarn, "target_tex", yarn.target_tex, TEX)
    coloured: tuple[Fleece | Yarn | Holding, ...] = (*book.fleeces, *book.yarns, *book.holdings)
    for record in coloured:
        if record.colour and not COLOUR.fullmatch(record.colour):
            yield record, "colour", "must be written like #c8b79a, or be empty."
    for reading in book.readings:
        yield from _not_below(reading, "value", reading.value)
        yield from _above_zero(reading, "girth_mm", reading.girth_mm)
        yield from _within(reading, "turns", reading.turns, TURNS)


def _of_swatch(swatch: Swatch) -> Iterator[Fault]:
    sizes = ("needle_mm", "weight_mg", "scale_mg", "whole_stitches", "unravelled", "thread_mm")
    for field in sizes:
        yield from _above_zero(swatch, field, getattr(swatch, field))
    for when in ("worked", "finished"):
        count = getattr(swatch, when)
        for one in fields(count) if count else ():
            yield from _above_zero(swatch, f"{when}.{one.name}", getattr(count, one.name))


def _of_pattern(pattern: Pattern) -> Iterator[Fault]:
    yield from _of_gauge(pattern, pattern.gauge)
    yield from _no_size_twice(pattern)
    for size in pattern.sizes:
        yield from _above_zero(pattern, f"size {size.name}, width_mm", size.width_mm)
        yield from _above_zero(pattern, f"size {size.name}, stated_mm", size.stated_mm)
        for part in size.parts:
            yield from _of_size_part(pattern, part, f"size {size.name}, {part.name}")
    for share in pattern.shares:
        yield from _percent(pattern, f"shares, {share.name}", share.pct)


def _no_size_twice(pattern: Pattern) -> Iterator[Fault]:
    names = [size.name for size in pattern.sizes]
    if len(names) > len(set(names)):
        yield pattern, "sizes", "gives two sizes one name."


def _of_size_part(pattern: Pattern, part: SizePart, name: str) -> Iterator[Fault]:
    for field in ("copies", "cast_on", "widest", "rows", "length_mm"):
        # A piece may be begun with no stitch: picked up, or grafted.
        wanted = _not_below if field == "cast_on" else _above_zero
        yield from wanted(pattern, f"{name}, {field}", getattr(part, field))


def _of_people(book: Book) -> Iterator[Fault]:
    for person in book.people:
        for measure in person.measures:
            yield from _above_zero(person, f"measures, {measure.name}", measure.mm)


def _of_plans(book: Book) -> Iterator[Fault]:
    for plan in book.plans:
        yield from _inside(plan, "sureness_pct", plan.sureness_pct)
        yield from _of_gauge(plan, plan.gauge)
        yield from _of_losses(plan, plan.losses)
        yield from _roles_once(plan)
        for measure in plan.design.measures if plan.design else ():
            yield from _above_zero(plan, f"design, {measure.name}", measure.mm)
    for promise in book.promises:
        yield from _above_zero(promise, "mm", promise.mm)


def _of_part(part: Part) -> Iterator[Fault]:
    yield from _above_zero(part, "copies", part.copies)
    yield from _percent(part, "shape_u_pct", part.shape_u_pct)
    yield from _of_gauge(part, part.gauge)
    yield from _roles_once(part)
    yield from _of_shape(part, part.shape)
    for extra in part.extras:
        yield from _not_below(part, f"extras, {extra.name}", extra.pct)
        yield from _not_below(part, f"extras, {extra.name}, u_pct", extra.u_pct)
    if part.worked is not None:
        yield from _above_zero(part, "worked.width_pct", part.worked.width_pct)
        yield from _above_zero(part, "worked.length_pct", part.worked.length_pct)


def _of_shape(part: Part, shape: Shape) -> Iterator[Fault]:
    if isinstance(shape, Runs):
        for number, run in enumerate(shape.runs, start=1):
            yield from _of_run(part, run, f"run {number}")
        return
    for one in fields(shape):
        value = getattr(shape, one.name)
        if one.name != "way":
            # A piece may begin or end in a point, or have no rows yet.
            pointed = one.name in ("rows", "width_mm", "width_to_mm")
            yield from (_not_below if pointed else _above_zero)(part, f"shape.{one.name}", value)


def _of_run(part: Part, run: Run, name: str) -> Iterator[Fault]:
    yield from _not_below(part, f"{name}, rows", run.rows)
    yield from _not_below(part, f"{name}, stitches", run.stitches)
    yield from _not_below(part, f"{name}, stitches_to", run.stitches_to)
    yield from _above_zero(part, f"{name}, needle_mm", run.needle_mm)
    if not run.strands:
        yield part, f"{name}, strands", "names no yarn to knit with."
    for strand in run.strands:
        if not strand.role:
            yield part, f"{name}, strands", "has a strand without a role."
        yield from _not_below(part, f"{name}, share", strand.share)
        yield from _above_zero(part, f"{name}, ends", strand.ends)


def _of_gauge(record: Any, gauge: Gauge | None) -> Iterator[Fault]:
    if gauge is not None:
        yield from _within(record, "gauge.stitches", gauge.stitches, GAUGE)
        yield from _within(record, "gauge.rows", gauge.rows, GAUGE)
        yield from _above_zero(record, "gauge.needle_mm", gauge.needle_mm)
        yield from _percent(record, "gauge.assumed_pct", gauge.assumed_pct)


def _of_losses(record: Any, losses: Losses | None) -> Iterator[Fault]:
    if losses is not None:
        yield from _percent(record, "losses.unusable_pct", losses.unusable_pct)
        for field in ("tail_mm", "swatch_mm", "mending_mm"):
            yield from _not_below(record, f"losses.{field}", getattr(losses, field))


def _roles_once(record: Any) -> Iterator[Fault]:
    roles = [one.role for one in record.yarns]
    if len(roles) > len(set(roles)):
        yield record, "yarns", "gives one role two yarns."


def _above_zero(record: Any, field: str, value: float | None) -> Iterator[Fault]:
    if value is not None and value <= 0:
        yield record, field, ABOVE_ZERO


def _not_below(record: Any, field: str, value: float | None) -> Iterator[Fault]:
    if value is not None and value < 0:
        yield record, field, NOT_BELOW_ZERO


def _within(
    record: Any, field: str, value: float | None, bounds: tuple[float, float]
) -> Iterator[Fault]:
    least, most = bounds
    if value is not None and not least <= value <= most:
        yield record, field, f"must lie between {least:g} and {most:,.0f}."


def _inside(record: Any, field: str, value: float | None) -> Iterator[Fault]:
    if value is not None and not 0 < value < 100:
        yield record, field, INSIDE


def _not_all(record: Any, field: str, value: float) -> Iterator[Fault]:
    if not 0 <= value < 100:
        yield record, field, NOT_ALL


def _percent(record: Any, field: str, value: float | None) -> Iterator[Fault]:
    if value is not None and not 0 <= value <= 100:
        yield record, field, PERCENT
