"""Find a fleece and the holding its own wool lies in."""

from dataclasses import dataclass

from app.book.event import Event
from app.book.fleece import Fleece
from app.book.holding import Holding
from app.book.reading import Reading
from app.book.words import YARN_KINDS
from app.craft.figure import Figure, total
from app.planning.answers import FleeceAnswer
from app.planning.funnel import Stage, funnel
from app.work.reckoning import Known
from app.work.skein_put_away import events_of
from app.work.skein_spin import fleece_holding


@dataclass(frozen=True, slots=True)
class KnownFleece:
    """A fleece, its holding, what it can become, its weighings and what happened to it."""

    fleece: Fleece
    holding: Holding
    answer: FleeceAnswer
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
    return KnownFleece(
        fleece=fleece,
        holding=holding,
        answer=known.reckoning.fleeces[fleece_id],
        readings=tuple(book.readings_of.get(holding.id, [])),
        events=tuple(events_of(book, holding.id)),
        skeins=_spun_from(known, fleece_id),
        undone=frozenset(one.undoes for one in book.events if one.undoes is not None),
    )


def _spun_from(known: Known, fleece_id: str) -> tuple[Holding, ...]:
    spun = (one for one in known.book.holdings if one.fleece_id == fleece_id)
    skeins = (one for one in spun if one.kind in YARN_KINDS and one.put_away is None)
    return tuple(sorted(skeins, key=lambda one: (one.code, one.id)))


def way_ahead(known: Known, found: KnownFleece) -> tuple[Stage, ...]:
    """The stages between a fleece as it is and its yarn; none where nothing is left of it."""
    state, now_g = found.holding.state, found.answer.now_g
    if state is None or now_g <= 0:
        return ()
    return funnel(now_g, state, found.fleece, known.book.settings.steps)


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
