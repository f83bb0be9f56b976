"""Find a fleece and the holding its own wool lies in."""

from dataclasses import dataclass

from app.book.event import Event
from app.book.fleece import Fleece
from app.book.holding import Holding
from app.book.reading import Reading
from app.craft.figure import Figure, total
from app.planning.answers import FleeceAnswer
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
        undone=frozenset(one.undoes for one in book.events if one.undoes is not None),
    )


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
