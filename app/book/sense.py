"""Fields whose values make no sense: sizes below zero, percentages past a hundred, and the like."""

from collections.abc import Iterator
from dataclasses import fields
from typing import Any

from app.book.book import Book
from app.book.bounds import Fault, above_zero, inside, not_all, not_below, percent, within
from app.book.finding import Finding, name_of
from app.book.gauge import Gauge
from app.book.pattern import Pattern, SizePart
from app.book.plan import Losses, Part, Plan
from app.book.sense_wool import of_beside, of_knitting, of_wool
from app.book.shape import Measured, Run, Runs, Shape, Strand
from app.book.swatch import Swatch

GAUGE = (0.1, 1_000.0)
"""Beyond these no fabric lies; they keep every sum finite."""

SHARE = (0.0, 1.0)


def nonsense(book: Book) -> list[Finding]:
    """A finding for each field out of its range."""
    found = [Finding("settings", field, text) for _, field, text in _of_settings(book)]
    for record, field, text in _of_records(book):
        found.append(Finding(name_of(book, record), field, text))
    return found


def _of_records(book: Book) -> Iterator[Fault]:
    yield from of_wool(book)
    for swatch in book.swatches:
        yield from _of_swatch(swatch)
    for pattern in book.patterns:
        yield from _of_pattern(pattern)
    yield from _of_people(book)
    yield from _of_plans(book)
    for part in book.parts:
        yield from _of_part(part)
    yield from of_beside(book)
    yield from of_knitting(book)


def _of_settings(book: Book) -> Iterator[Fault]:
    settings = book.settings
    yield from inside(settings, "sureness_pct", settings.sureness_pct)
    yield from above_zero(settings, "girth_mm", settings.girth_mm)
    yield from _of_losses(settings, settings.losses)
    for price in fields(settings.prices):
        yield from not_below(settings, f"prices.{price.name}", getattr(settings.prices, price.name))
    yield from above_zero(settings, "evening_minutes", settings.evening_minutes)
    for step in fields(settings.steps):
        yield from not_all(settings, f"steps.{step.name}", getattr(settings.steps, step.name))


def _of_swatch(swatch: Swatch) -> Iterator[Fault]:
    sizes = ("needle_mm", "weight_mg", "scale_mg", "whole_stitches", "unravelled", "thread_mm")
    for field in sizes:
        yield from above_zero(swatch, field, getattr(swatch, field))
    for when in ("worked", "finished"):
        count = getattr(swatch, when)
        for one in fields(count) if count else ():
            yield from above_zero(swatch, f"{when}.{one.name}", getattr(count, one.name))


def _of_pattern(pattern: Pattern) -> Iterator[Fault]:
    yield from _of_gauge(pattern, pattern.gauge)
    yield from _no_size_twice(pattern)
    for size in pattern.sizes:
        yield from above_zero(pattern, f"size {size.name}, width_mm", size.width_mm)
        yield from above_zero(pattern, f"size {size.name}, stated_mm", size.stated_mm)
        for part in size.parts:
            yield from _of_size_part(pattern, part, f"size {size.name}, {part.name}")
    for share in pattern.shares:
        yield from percent(pattern, f"shares, {share.name}", share.pct)


def _no_size_twice(pattern: Pattern) -> Iterator[Fault]:
    names = [size.name for size in pattern.sizes]
    if len(names) > len(set(names)):
        yield pattern, "sizes", "gives two sizes one name."


def _of_size_part(pattern: Pattern, part: SizePart, name: str) -> Iterator[Fault]:
    for field in ("copies", "cast_on", "widest", "rows", "length_mm"):
        # A piece may be begun with no stitch: picked up, or grafted.
        wanted = not_below if field == "cast_on" else above_zero
        yield from wanted(pattern, f"{name}, {field}", getattr(part, field))


def _of_people(book: Book) -> Iterator[Fault]:
    for person in book.people:
        for measure in person.measures:
            yield from above_zero(person, f"measures, {measure.name}", measure.mm)


def _of_plans(book: Book) -> Iterator[Fault]:
    for plan in book.plans:
        yield from inside(plan, "sureness_pct", plan.sureness_pct)
        yield from _of_gauge(plan, plan.gauge)
        yield from _of_losses(plan, plan.losses)
        yield from _roles_once(plan)
        yield from _of_knitting(plan)
        for measure in plan.design.measures if plan.design else ():
            yield from above_zero(plan, f"design, {measure.name}", measure.mm)
    for promise in book.promises:
        yield from above_zero(promise, "mm", promise.mm)
        yield from not_below(promise, "position", promise.position)


def _of_knitting(plan: Plan) -> Iterator[Fault]:
    for took in plan.took:
        for field in ("mg", "mm", "minutes"):
            yield from not_below(plan, f"took, {field}", getattr(took, field))
    for measure in plan.measured:
        yield from above_zero(plan, f"measured, {measure.name}", measure.mm)
    for number in plan.cast_on.numbers if plan.cast_on else ():
        yield from above_zero(plan, f"cast_on, {number.name}", number.value)
        yield from not_below(plan, f"cast_on, {number.name}, u", number.u)


def _of_part(part: Part) -> Iterator[Fault]:
    yield from above_zero(part, "copies", part.copies)
    yield from percent(part, "shape_u_pct", part.shape_u_pct)
    yield from _of_gauge(part, part.gauge)
    yield from _roles_once(part)
    yield from _of_shape(part, part.shape)
    for extra in part.extras:
        yield from not_below(part, f"extras, {extra.name}", extra.pct)
        yield from not_below(part, f"extras, {extra.name}, u_pct", extra.u_pct)
    yield from _of_sequence(part)
    if part.worked is not None:
        yield from above_zero(part, "worked.width_pct", part.worked.width_pct)
        yield from above_zero(part, "worked.length_pct", part.worked.length_pct)


def _of_sequence(part: Part) -> Iterator[Fault]:
    sequence = part.sequence
    if sequence is None:
        return
    for field in ("from_row", "to_row", "block_rows"):
        yield from above_zero(part, f"sequence.{field}", getattr(sequence, field))
    for band in sequence.bands:
        yield from above_zero(part, f"sequence, {band.role}, rows", band.rows)
    for yarn in sequence.yarns:
        for field in ("share", "share_to"):
            value = getattr(yarn, field)
            yield from within(part, f"sequence, {yarn.role}, {field}", value, SHARE)


def _of_shape(part: Part, shape: Shape) -> Iterator[Fault]:
    if isinstance(shape, Runs):
        for number, run in enumerate(shape.runs, start=1):
            yield from _of_run(part, run, f"run {number}")
        return
    if isinstance(shape, Measured):
        yield from _of_strands(part, shape.strands, "shape")
    for one in fields(shape):
        value = getattr(shape, one.name)
        if one.name not in ("way", "pattern", "strands"):
            # A piece may begin or end in a point, or have no rows yet.
            pointed = one.name in ("rows", "width_mm", "width_to_mm")
            yield from (not_below if pointed else above_zero)(part, f"shape.{one.name}", value)


def _of_run(part: Part, run: Run, name: str) -> Iterator[Fault]:
    yield from not_below(part, f"{name}, rows", run.rows)
    yield from not_below(part, f"{name}, stitches", run.stitches)
    yield from not_below(part, f"{name}, stitches_to", run.stitches_to)
    yield from above_zero(part, f"{name}, needle_mm", run.needle_mm)
    yield from _of_strands(part, run.strands, name)


def _of_strands(part: Part, strands: tuple[Strand, ...], name: str) -> Iterator[Fault]:
    if not strands:
        yield part, f"{name}, strands", "names no yarn to knit with."
    for strand in strands:
        if not strand.role:
            yield part, f"{name}, strands", "has a strand without a role."
        yield from not_below(part, f"{name}, share", strand.share)
        yield from above_zero(part, f"{name}, ends", strand.ends)


def _of_gauge(record: Any, gauge: Gauge | None) -> Iterator[Fault]:
    if gauge is not None:
        yield from within(record, "gauge.stitches", gauge.stitches, GAUGE)
        yield from within(record, "gauge.rows", gauge.rows, GAUGE)
        yield from above_zero(record, "gauge.needle_mm", gauge.needle_mm)
        yield from percent(record, "gauge.assumed_pct", gauge.assumed_pct)


def _of_losses(record: Any, losses: Losses | None) -> Iterator[Fault]:
    if losses is not None:
        yield from percent(record, "losses.unusable_pct", losses.unusable_pct)
        for field in ("tail_mm", "swatch_mm", "mending_mm"):
            yield from not_below(record, f"losses.{field}", getattr(losses, field))


def _roles_once(record: Any) -> Iterator[Fault]:
    roles = [one.role for one in record.yarns]
    if len(roles) > len(set(roles)):
        yield record, "yarns", "gives one role two yarns."
