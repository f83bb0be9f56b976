"""Find a fleece and the holding its own wool lies in."""

from dataclasses import dataclass

from app.book.book import Book
from app.book.event import Event
from app.book.fleece import Fleece
from app.book.holding import Holding
from app.book.reading import Reading
from app.book.weighed_as import weighed_as
from app.book.words import FIBRE_KINDS, YARN_KINDS, WoolState
from app.craft.figure import Figure, total
from app.planning.answers import FleeceAnswer
from app.planning.drying import Drying, drying
from app.planning.fleeces import wool_g, wool_of
from app.planning.funnel import Stage, funnel
from app.work.fleece_step import STAGE
from app.work.reckoning import Known
from app.work.skein_spin import fleece_holding


@dataclass(frozen=True, slots=True)
class Wool:
    """A holding of a fleece's wool, the grams in it, the state they were weighed in, and its
    weighings, oldest first."""

    holding: Holding
    g: float
    weighed_as: WoolState
    readings: tuple[Reading, ...]


@dataclass(frozen=True, slots=True)
class KnownFleece:
    """A fleece, its holding, all its `wool` not yet yarn and still on the shelf (what is furthest
    along last), the ids of all its `holdings` of wool, put away or not, what it can become, its
    weighings and what happened to it."""

    fleece: Fleece
    holding: Holding
    wool: tuple[Wool, ...]
    answer: FleeceAnswer
    holdings: frozenset[str]
    readings: tuple[Reading, ...]
    events: tuple[Event, ...]
    skeins: tuple[Holding, ...]
    undone: frozenset[int]


@dataclass(frozen=True, slots=True)
class AllFleeces:
    """The fleeces still on the shelf and those put away; grams of wool and the yarn it becomes."""

    on_shelf: tuple[KnownFleece, ...]
    put_away: tuple[KnownFleece, ...]
    now_g: float
    yarn_g: Figure


def known_fleece(known: Known, fleece_id: str) -> KnownFleece | None:
    """All that is known of a fleece; None where there is none of that id."""
    book = known.book
    fleece, holding = book.fleece.get(fleece_id), fleece_holding(book, fleece_id)
    if fleece is None or holding is None:
        return None
    wool = wool_on_shelf(known, fleece_id)
    ids = {one.id for one in book.holdings if _is_wool_of(one, fleece_id)}
    return KnownFleece(
        fleece=fleece,
        holding=holding,
        wool=wool,
        answer=known.reckoning.fleeces[fleece_id],
        holdings=frozenset(ids),
        readings=_readings(book, ids),
        events=tuple(one for one in book.events if any(x.holding_id in ids for x in one.lines)),
        skeins=_spun_from(known, fleece_id),
        undone=frozenset(one.undoes for one in book.events if one.undoes is not None),
    )


def _is_wool_of(holding: Holding, fleece_id: str) -> bool:
    return holding.fleece_id == fleece_id and holding.kind in FIBRE_KINDS


def wool_on_shelf(known: Known, fleece_id: str) -> tuple[Wool, ...]:
    """The wool of a fleece that is on the shelf and holds something, raw first. An empty fleece
    of which nothing else is left stands there too: it can be weighed again."""
    book = known.book
    found = [
        Wool(
            holding=one,
            g=wool_g(book, [one]),
            weighed_as=weighed_as(book, one) or "carded",
            readings=tuple(book.readings_of.get(one.id, [])),
        )
        for one in wool_of(book).get(fleece_id, [])
    ]
    some = [one for one in found if one.g > 0] or found[:1]
    return tuple(sorted(some, key=lambda one: (_stage(one.holding), one.holding.code)))


def _stage(holding: Holding) -> int:
    return STAGE[holding.state or "carded"]


def _readings(book: Book, ids: set[str]) -> tuple[Reading, ...]:
    found = (one for id in sorted(ids) for one in book.readings_of.get(id, []))
    return tuple(sorted(found, key=lambda one: (one.day, one.id)))


def _spun_from(known: Known, fleece_id: str) -> tuple[Holding, ...]:
    spun = (one for one in known.book.holdings if one.fleece_id == fleece_id)
    skeins = (one for one in spun if one.kind in YARN_KINDS and one.put_away is None)
    return tuple(sorted(skeins, key=lambda one: (one.code, one.id)))


def way_ahead(known: Known, found: KnownFleece) -> tuple[Stage, ...]:
    """The stages between the most of a fleece's wool as it is and its yarn; none where nothing is
    left of it."""
    most = heaviest(found)
    if most is None or most.g <= 0:
        return ()
    steps, learnt = known.book.settings.steps, known.reckoning.learnt
    return funnel(most.g, most.weighed_as, found.fleece, steps, learnt)


def lying_wet(known: Known, found: KnownFleece) -> tuple[Drying, ...]:
    """What of a fleece's wool lies drying."""
    dried = (drying(known.book, one.holding) for one in found.wool)
    return tuple(one for one in dried if one)


def heaviest(found: KnownFleece) -> Wool | None:
    """The holding that most of a fleece's wool lies in; None once it is put away."""
    return max(found.wool, key=lambda one: one.g, default=None)


def all_fleeces(known: Known) -> AllFleeces:
    """Every fleece, by name."""
    named = sorted(known.book.fleeces, key=lambda one: (one.name.casefold(), one.id))
    found = [one for fleece in named if (one := known_fleece(known, fleece.id))]
    here = tuple(one for one in found if one.holding.put_away is None)
    return AllFleeces(
        on_shelf=here,
        put_away=tuple(one for one in found if one.holding.put_away is not None),
        now_g=sum(one.answer.now_g for one in here),
        yarn_g=total((one.answer.yarn_g for one in here), "g"),
    )
