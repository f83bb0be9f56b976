"""The pages on which a fleece is added, changed or weighed."""

from collections.abc import Mapping
from dataclasses import dataclass

from app.book.words import WoolState
from app.craft.breeds import breed_names
from app.web.forms.fleece import FIBRES, STATES
from app.web.forms.reader import Filled
from app.work.fleece_find import KnownFleece


@dataclass(frozen=True, slots=True)
class FleeceFormPage:
    """`name` is empty for a fleece that is only being added; then weight and state are asked."""

    id: str
    name: str
    form: Filled
    breeds: tuple[str, ...]
    fibres: tuple[str, ...]
    states: Mapping[WoolState, str]


@dataclass(frozen=True, slots=True)
class WeighPage:
    id: str
    name: str
    now: str
    state: str
    form: Filled
    states: Mapping[WoolState, str]


def fleece_form_page(form: Filled, id: str = "", name: str = "") -> FleeceFormPage:
    """The form of a fleece, empty, filled or with its faults."""
    return FleeceFormPage(id, name, form, tuple(breed_names()), FIBRES, STATES)


def weigh_page(known: KnownFleece, now: str, form: Filled) -> WeighPage:
    """The form of a weighing; `now` is what the book holds, in words."""
    return WeighPage(
        id=known.fleece.id,
        name=known.fleece.name,
        now=now,
        state=known.holding.state or "",
        form=form,
        states=STATES,
    )
