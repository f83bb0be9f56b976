"""The list of fleeces, and the sentence that says what they can still become."""

from dataclasses import dataclass

from app.web.pages.answer import Sentence
from app.web.pages.fleece_form import state_said
from app.web.shown import Shown
from app.work.fleece_find import AllFleeces, KnownFleece


@dataclass(frozen=True, slots=True)
class FleeceLine:
    """A fleece in the list."""

    id: str
    name: str
    colour: str
    breed: str
    state: str
    now: str
    becomes: str
    place: str


@dataclass(frozen=True, slots=True)
class FleecesPage:
    sentence: Sentence
    lines: tuple[FleeceLine, ...]
    put_away: tuple[FleeceLine, ...]


def fleeces_page(found: AllFleeces, shown: Shown) -> FleecesPage:
    """Every fleece on the shelf, then those put away."""
    return FleecesPage(
        sentence=_sentence(found, shown),
        lines=tuple(_line(one, shown) for one in found.on_shelf),
        put_away=tuple(_line(one, shown) for one in found.put_away),
    )


def _sentence(found: AllFleeces, shown: Shown) -> Sentence:
    if not found.on_shelf:
        return Sentence("idle", "No fleece yet.", " Add one to see how much yarn it can become.")
    count = len(found.on_shelf)
    lead = f"{shown.mass(found.now_g)} of wool in {count} fleece{'s' if count > 1 else ''}:"
    return Sentence("idle", lead, f" about {shown.mass_range(found.yarn_g)} of yarn to be spun.")


def _line(one: KnownFleece, shown: Shown) -> FleeceLine:
    fleece, answer = one.fleece, one.answer
    some = answer.now_g > 0 and one.holding.put_away is None
    return FleeceLine(
        id=fleece.id,
        name=fleece.name,
        colour=fleece.colour,
        breed=fleece.breed or fleece.fibre,
        state="put away" if one.holding.put_away else _states(one),
        now=shown.mass(answer.now_g),
        becomes=shown.mass_range(answer.yarn_g) if some else "–",
        place=one.holding.place,
    )


def _states(one: KnownFleece) -> str:
    return ", ".join(dict.fromkeys(state_said(wool) for wool in one.wool))
