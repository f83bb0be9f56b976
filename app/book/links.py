"""Links from record to record that lead nowhere."""

from collections.abc import Container, Iterator
from typing import Any

from app.book.book import Book
from app.book.finding import Finding, name_of
from app.book.knitting import Progress, Weighing
from app.book.pattern import Pattern
from app.book.plan import Part, Plan

Link = tuple[Any, str, str | None, Container[Any]]
"""A record, its field, the id found there, and the ids it may be."""


def broken_links(book: Book) -> list[Finding]:
    """A finding for each id that no record has."""
    return [
        Finding(name_of(book, record), field, f"names {target}, which is not in the book.")
        for record, field, target, known in _links(book)
        if target is not None and target not in known
    ]


def _links(book: Book) -> Iterator[Link]:
    for yarn in book.yarns:
        yield yarn, "fleece_id", yarn.fleece_id, book.fleece
        if yarn.spinning:
            yield yarn, "spinning.wheel_id", yarn.spinning.wheel_id, book.wheel
            yield yarn, "spinning.like_yarn_id", yarn.spinning.like_yarn_id, book.yarn
    for swatch in book.swatches:
        yield swatch, "yarn_id", swatch.yarn_id, book.yarn
    for holding in book.holdings:
        yield holding, "fleece_id", holding.fleece_id, book.fleece
        yield holding, "yarn_id", holding.yarn_id, book.yarn
        yield holding, "plan_id", holding.plan_id, book.plan
    for reading in book.readings:
        yield reading, "holding_id", reading.holding_id, book.holding
    yield from _event_links(book)
    yield from _plan_links(book)
    yield from _beside_links(book)


def _event_links(book: Book) -> Iterator[Link]:
    known = {str(event.seq) for event in book.events}
    for event in book.events:
        undone = None if event.undoes is None else str(event.undoes)
        yield event, "undoes", undone, known
        for line in event.lines:
            yield event, "lines", line.holding_id, book.holding


def _plan_links(book: Book) -> Iterator[Link]:
    knit_to: tuple[Plan | Part | Pattern, ...] = (*book.patterns, *book.plans, *book.parts)
    for knit in knit_to:
        taken_from = knit.gauge.swatch_id if knit.gauge else None
        yield knit, "gauge.swatch_id", taken_from, book.swatch
    for plan in book.plans:
        yield plan, "person_id", plan.person_id, book.person
        yield plan, "pattern_id", plan.pattern_id, book.pattern
        for role in plan.yarns:
            yield plan, "yarns", role.yarn_id, book.yarn
    for part in book.parts:
        yield part, "plan_id", part.plan_id, book.plan
        for role in part.yarns:
            yield part, "yarns", role.yarn_id, book.yarn
    for promise in book.promises:
        yield promise, "plan_id", promise.plan_id, book.plan
        yield promise, "part_id", promise.part_id, book.part
        yield promise, "holding_id", promise.holding_id, book.holding
    for errand in book.errands:
        yield errand, "plan_id", errand.plan_id, book.plan


def _beside_links(book: Book) -> Iterator[Link]:
    for stint in book.stints:
        yield stint, "holding_id", stint.holding_id, book.holding
        yield stint, "yarn_id", stint.yarn_id, book.yarn
        yield stint, "plan_id", stint.plan_id, book.plan
    for photo in book.photos:
        yield photo, "fleece_id", photo.fleece_id, book.fleece
        yield photo, "holding_id", photo.holding_id, book.holding
        yield photo, "plan_id", photo.plan_id, book.plan
    knit: tuple[Progress | Weighing, ...] = (*book.progress, *book.weighings)
    for one in knit:
        yield one, "plan_id", one.plan_id, book.plan
        yield one, "part_id", one.part_id, book.part
    for weighing in book.weighings:
        yield weighing, "holding_id", weighing.holding_id, book.holding
