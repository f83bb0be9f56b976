"""The pages on which a fleece is added, changed or weighed."""

from collections.abc import Mapping
from dataclasses import dataclass
from urllib.parse import quote

from app.book.words import Step, WoolState
from app.craft.breeds import breed_names
from app.web.forms.filled import Filled
from app.web.forms.fleece import FIBRES, STATES
from app.web.forms.fleece_weigh import DONE, REASONS, WORKED
from app.web.pages.cautions import CAUTIONS, DYES
from app.web.shown import Shown
from app.work.fleece_find import KnownFleece, Wool


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
    """`now` is what the book has of the wool, in words; `others` are ways to weigh the rest of
    the fleece; `doubted` where the weighing is to be confirmed."""

    id: str
    name: str
    now: str
    state: str
    form: Filled
    states: Mapping[WoolState, str]
    done: Mapping[str, str]
    others: tuple[tuple[str, str], ...]
    doubted: bool
    worked: Mapping[Step, str]
    reasons: tuple[str, ...]
    caution: str


def fleece_form_page(form: Filled, id: str = "", name: str = "") -> FleeceFormPage:
    """The form of a fleece, empty, filled or with its faults."""
    return FleeceFormPage(id, name, form, tuple(breed_names()), FIBRES, STATES)


def weigh_page(known: KnownFleece, wool: Wool, form: Filled, shown: Shown) -> WeighPage:
    """The form of a weighing of one holding of a fleece's wool."""
    others = (one for one in known.wool if one.holding.id != wool.holding.id)
    return WeighPage(
        id=known.fleece.id,
        name=known.fleece.name,
        now=shown.mass(wool.g),
        state=wool.holding.state or "",
        form=form,
        states=STATES,
        done=DONE,
        others=tuple((weigh_url(known, one), wool_said(known, one, shown)) for one in others),
        doubted="sure" in form.errors or bool(form.values.get("sure")),
        worked=WORKED,
        reasons=REASONS,
        caution=CAUTIONS.get(wool.holding.state or "", DYES),
    )


def weigh_url(known: KnownFleece, wool: Wool) -> str:
    """Where a holding of a fleece's wool is weighed."""
    return f"/fleeces/{known.fleece.id}/weigh?wool={quote(wool.holding.id)}"


def wool_said(known: KnownFleece, wool: Wool, shown: Shown) -> str:
    """ "310 g scoured", "31 g on a bobbin" or, of a dyed part, "97 g combed (madder red)" """
    colour = wool.holding.colour_name
    dyed = f" ({colour})" if colour not in ("", known.fleece.colour_name) else ""
    return f"{shown.mass(wool.g)} {state_said(wool)}{dyed}".strip()


def state_said(wool: Wool) -> str:
    """How far some wool of a fleece has come."""
    return "on a bobbin" if wool.holding.kind == "bobbin" else wool.holding.state or ""
