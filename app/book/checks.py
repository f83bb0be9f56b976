"""Whether a book is sound: grams balance, links hold, promises are covered, fields make sense."""

from collections import Counter
from collections.abc import Iterable

from app.book.book import Book
from app.book.event import Balance, Event
from app.book.finding import Finding, name_of
from app.book.links import broken_links
from app.book.plan import Part, Promise
from app.book.sense import nonsense
from app.book.shape import Measured, Runs, Shape, Strand
from app.book.words import OPEN_STATES, SINKS, YARN_KINDS

__all__ = ["Finding", "check", "knit_roles", "structure"]

NOTHING = Balance()


def check(book: Book) -> list[Finding]:
    """Everything in the book that cannot be right; an empty list for a sound book."""
    return [*structure(book), *_holdings(book), *_promises(book), *_roles(book), *nonsense(book)]


def structure(book: Book) -> list[Finding]:
    """What no book can be read without: links, sinks, events that balance, one code a holding."""
    return [*broken_links(book), *_sinks(book), *_events(book), *_codes(book)]


def _sinks(book: Book) -> Iterable[Finding]:
    for kind in SINKS:
        holding = book.holding.get(kind)
        if holding is None or holding.kind != kind:
            yield Finding(kind, "id", f'The holding "{kind}", which every book has, is missing.')
    for holding in book.holdings:
        if holding.kind in SINKS and holding.id != holding.kind:
            yield Finding(
                name_of(book, holding), "kind", f'There can be only one "{holding.kind}".'
            )


def _events(book: Book) -> Iterable[Finding]:
    undone = Counter(event.undoes for event in book.events if event.undoes is not None)
    for event in book.events:
        name = name_of(book, event)
        off = sum(line.mg for line in event.lines)
        if off:
            yield Finding(name, "lines", _unbalanced(book, event, off))
        if (event.kind == "undo") != (event.undoes is not None):
            yield Finding(
                name, "undoes", "An undo must name the event it undoes, and no other may."
            )
        if undone[event.seq] > 1:
            yield Finding(name, "seq", f"It was undone {undone[event.seq]} times.")


def _unbalanced(book: Book, event: Event, off: int) -> str:
    holdings = (book.holding.get(line.holding_id) for line in event.lines)
    among = ", ".join(dict.fromkeys(one.code for one in holdings if one))
    return f"The grams do not balance: {off} mg too many, among {among or 'no holding'}."


def _codes(book: Book) -> Iterable[Finding]:
    for code, times in Counter(holding.code for holding in book.holdings).items():
        if times > 1:
            yield Finding(f"holding {code}", "code", f"{times} holdings have this code.")


def _holdings(book: Book) -> Iterable[Finding]:
    for holding in book.holdings:
        held = book.balances.get(holding.id, NOTHING)
        name = name_of(book, holding)
        if holding.kind not in SINKS and (held.mg < 0 or held.mm < 0):
            text = f"It holds less than nothing: {held.mg / 1000:g} g, {held.mm / 1000:g} m."
            yield Finding(name, "balance", text)
        if held.mm and holding.kind not in YARN_KINDS:
            yield Finding(name, "balance", "It holds metres, but is no skein, ball or left-over.")


def _promises(book: Book) -> Iterable[Finding]:
    promised: dict[str, int] = {}
    for promise in book.promises:
        yield from _promise(book, promise)
        if _open(book, promise):
            promised[promise.holding_id] = promised.get(promise.holding_id, 0) + promise.mm
    for holding_id, mm in promised.items():
        held = book.balances.get(holding_id, NOTHING)
        # A skein that was only weighed has no metres in the book to compare with.
        if holding_id in book.holding and mm > held.mm and (held.mm or not held.mg):
            text = f"{mm / 1000:g} m are promised, but it holds {held.mm / 1000:g} m."
            yield Finding(name_of(book, book.holding[holding_id]), "promises", text)


def _promise(book: Book, promise: Promise) -> Iterable[Finding]:
    name = name_of(book, promise)
    holding, part = book.holding.get(promise.holding_id), book.part.get(promise.part_id)
    if holding and holding.kind not in YARN_KINDS:
        yield Finding(name, "holding_id", f"{holding.code} is no skein, ball or left-over.")
    if holding and holding.put_away and _open(book, promise):
        yield Finding(name, "holding_id", f"{holding.code} was put away.")
    if part and part.plan_id != promise.plan_id:
        yield Finding(name, "part_id", f"{part.name} belongs to another plan.")


def _open(book: Book, promise: Promise) -> bool:
    plan = book.plan.get(promise.plan_id)
    return plan is None or plan.state in OPEN_STATES


def _roles(book: Book) -> Iterable[Finding]:
    promised: dict[str, set[str]] = {}
    for promise in book.promises:
        promised.setdefault(promise.part_id, set()).add(promise.role)
    for part in book.parts:
        name, knit = name_of(book, part), knit_roles(part)
        for role in sorted(knit - _named_roles(book, part)):
            yield Finding(name, "shape", f'No yarn is named for the role "{role}".')
        for role in sorted(promised.get(part.id, set()) - knit):
            yield Finding(name, "promises", f'Nothing in it is knit with the role "{role}".')


def knit_roles(part: Part) -> set[str]:
    """The roles of yarn that a part is knit with, those that take turns among them."""
    roles = {strand.role for strand in strands_of(part.shape) if strand.role}
    if part.sequence:
        roles |= {one.role for one in part.sequence.yarns}
        roles |= {one.role for one in part.sequence.bands}
    return roles


def strands_of(shape: Shape) -> tuple[Strand, ...]:
    """The yarns that work in a shape, as it says; one alone where it says nothing of them."""
    match shape:
        case Runs():
            return tuple(strand for run in shape.runs for strand in run.strands)
        case Measured():
            return shape.strands
        case _:
            return (Strand(),)


def _named_roles(book: Book, part: Part) -> set[str]:
    plan = book.plan.get(part.plan_id)
    yarns = (*part.yarns, *(plan.yarns if plan else ()))
    return {"main", *(one.role for one in yarns)}
