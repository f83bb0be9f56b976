"""The way of the wool through the book as it is known now: followed once for each version of it."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from threading import Lock

from app.book.book import Book
from app.book.event import Balance
from app.book.holding import Holding
from app.book.words import FIBRE_KINDS, SINKS
from app.planning.blend import MadeOf, fibres_of, fibres_together, made_of
from app.planning.trace import Trace, trace
from app.planning.trace_layers import Layers, layers
from app.planning.trace_streams import LEAST_MG, Stream, ahead, back


@dataclass(frozen=True, slots=True)
class From:
    """A share of a holding's wool, between 0 and 1, and the holding it came in as."""

    origin: Holding
    share: float


@dataclass(frozen=True, slots=True)
class Became:
    """Where wool of some origins is now, in mg; of a sink, what went there."""

    holding: Holding
    mg: float


_kept: list[tuple[Book, Trace]] = []
_one_at_a_time = Lock()


def traced(book: Book) -> Trace:
    """The way of all wool in a book; the last book asked about is remembered."""
    with _one_at_a_time:
        if not _kept or _kept[0][0] is not book:
            _kept[:] = [(book, trace(book.events))]
        return _kept[0][1]


def came_from(book: Book, holding_id: str) -> tuple[From, ...]:
    """Where the wool of a holding came in, the most first; none for one that came in itself."""
    shares = traced(book).origins(holding_id)
    return () if list(shares) == [holding_id] else _by_share(book, shares)


def became(book: Book, roots: Iterable[str]) -> tuple[tuple[Became, ...], tuple[Stream, ...]]:
    """Where the wool of some holdings is now, the most first and the sinks last, and the streams
    that led there."""
    found = ahead(traced(book), roots)
    nothing = Balance()
    mg = {
        id: share * book.balances.get(id, nothing).mg
        for id, share in found.shares.items()
        if share > 0
    }
    there = [
        Became(book.holding[id], part)
        for id, part in (mg | dict(found.sunk)).items()
        if id in book.holding and abs(part) >= LEAST_MG
    ]
    last = sorted(there, key=lambda one: (one.holding.kind in SINKS, -one.mg))
    return tuple(last), found.streams


def way_back(book: Book, holding_id: str) -> tuple[tuple[Stream, ...], Layers]:
    """The streams that led to a holding, and how they are laid out."""
    streams = tuple(one for one in back(traced(book), holding_id) if one.source != "come in")
    return streams, layers(streams)


def roots_of(book: Book, holding_id: str) -> tuple[str, ...]:
    """The holdings that a holding's way begins with: of a fleece all by which it came in."""
    holding = book.holding[holding_id]
    new = traced(book).mg.get("come in", {})
    if holding.kind != "fleece" or holding.fleece_id is None:
        return (holding_id,)
    return (
        holding_id,
        *(
            id
            for id in new
            if id in book.holding
            and book.holding[id].fleece_id == holding.fleece_id
            and book.holding[id].kind in FIBRE_KINDS
            and id != holding_id
        ),
    )


def made_of_holding(book: Book, holding_id: str) -> MadeOf | None:
    """What a holding is made of; None for one that never held wool."""
    return made_of(fibres_of(book, traced(book), holding_id), _combed(book, holding_id))


def made_of_plan(book: Book, plan_id: str) -> MadeOf | None:
    """What a garment is made of: of what was knit into it, else of what is promised to it."""
    return made_of(fibres_together(book, traced(book), plan_mg(book, plan_id)))


def plan_came_from(book: Book, plan_id: str) -> tuple[From, ...]:
    """Where the wool of a garment, or what is promised to it, came in, the most first."""
    mg = plan_mg(book, plan_id)
    whole, shares = sum(mg.values()), dict[str, float]()
    for holding_id, part in mg.items():
        for origin, share in traced(book).origins(holding_id).items():
            shares[origin] = shares.get(origin, 0.0) + share * part / whole
    return _by_share(book, shares)


def plan_mg(book: Book, plan_id: str) -> dict[str, float]:
    """What was knit into a garment, or while nothing was, what is promised to it, in mg by
    holding."""
    garments = [one for one in book.holdings if one.plan_id == plan_id and one.kind == "garment"]
    mg = {one.id: float(book.balances[one.id].mg) for one in garments if one.id in book.balances}
    knit = {id: part for id, part in mg.items() if part > 0}
    return knit or _promised_mg(book, plan_id)


def _promised_mg(book: Book, plan_id: str) -> dict[str, float]:
    mg: dict[str, float] = {}
    for promise in book.promises_of.get(plan_id, []):
        held = book.balances.get(promise.holding_id)
        if held and held.mm > 0 and held.mg > 0:
            part = held.mg * promise.mm / held.mm
            mg[promise.holding_id] = mg.get(promise.holding_id, 0.0) + part
    return mg


def _by_share(book: Book, shares: Mapping[str, float]) -> tuple[From, ...]:
    found = [From(book.holding[id], share) for id, share in shares.items() if id in book.holding]
    return tuple(sorted(found, key=lambda one: (-one.share, one.origin.code)))


def _combed(book: Book, holding_id: str) -> bool:
    return book.holding[holding_id].state == "combed"
