"""What is written on the label of a skein or of a bag of wool."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date

from app.book.book import Book
from app.book.code_order import in_order
from app.book.event import Balance
from app.book.holding import Holding
from app.book.words import FIBRE_KINDS, YARN_KINDS
from app.craft.fibres import label as fibre_label
from app.craft.yarn_class import by_grist
from app.planning.blend import fibres_of
from app.work.reckoning import Known
from app.work.skein_readings import unfinished
from app.work.wool_traced import traced


@dataclass(frozen=True, slots=True)
class Label:
    """`name` of the yarn or the fleece, empty where the code begins with it; `fibres` with their
    shares; `g` and `m` as the skein is expected to hold them, `m` and `tex` None where they are not
    known; `yarn_class` may be two neighbours; `state` is for wool not yet yarn. `page` is the path
    of the page it leads to."""

    holding_id: str
    page: str
    code: str
    name: str
    colour_name: str
    fibres: str
    g: float
    m: float | None
    tex: float | None
    yarn_class: str
    state: str
    day: date | None


def labels_of(known: Known, ids: Iterable[str]) -> tuple[Label, ...]:
    """The labels of these holdings in their order, those left out that hold nothing or that have
    no page."""
    found = (known.book.holding.get(id) for id in ids)
    labels = (_label(known, one) for one in found if one and not one.put_away)
    return tuple(one for one in labels if one is not None and one.g > 0)


def wool_to_label(book: Book, fleece_id: str = "") -> tuple[str, ...]:
    """The bags of wool not yet yarn that are on the shelf, by their codes; with `fleece_id`, those
    of one fleece."""
    bags = (one for one in book.holdings if one.kind in FIBRE_KINDS and one.put_away is None)
    found = [one for one in bags if not fleece_id or one.fleece_id == fleece_id]
    return tuple(one.id for one in sorted(found, key=lambda one: in_order(one.code)))


def in_order_of_codes(book: Book, ids: Iterable[str]) -> tuple[str, ...]:
    """Holdings by their codes, S-2 before S-10; those that are gone left out."""
    found = [one for id in ids if (one := book.holding.get(id))]
    return tuple(one.id for one in sorted(found, key=lambda one: in_order(one.code)))


def _label(known: Known, holding: Holding) -> Label | None:
    if holding.kind in YARN_KINDS:
        return _of_yarn(known, holding)
    if holding.kind in FIBRE_KINDS and holding.fleece_id in known.book.fleece:
        return _of_wool(known, holding)
    return None


def _of_yarn(known: Known, skein: Holding) -> Label:
    book = known.book
    yarn, line = book.yarn.get(skein.yarn_id or ""), known.reckoning.shelf.get(skein.id)
    m = line.held.value if line and line.held.value > 0 else None
    g = line.held_g if line else 0.0
    tex = 1000 * g / m if m else None
    return Label(
        holding_id=skein.id,
        page=f"/skeins/{skein.id}",
        code=skein.code,
        name=yarn.name if yarn else "",
        colour_name=skein.colour_name or (yarn.colour_name if yarn else ""),
        fibres=_fibres(book, skein.id),
        g=g,
        m=m,
        tex=tex,
        yarn_class=" or ".join(one.label for one in by_grist(tex)) if tex else "",
        state="not finished" if unfinished(book.readings_of.get(skein.id, [])) else "",
        day=skein.day,
    )


def _of_wool(known: Known, wool: Holding) -> Label:
    book = known.book
    fleece = book.fleece[wool.fleece_id or ""]
    return Label(
        holding_id=wool.id,
        page=f"/fleeces/{fleece.id}",
        code=wool.code,
        name="" if wool.code.startswith(fleece.name) else fleece.name,
        colour_name=wool.colour_name or fleece.colour_name,
        fibres=_fibres(book, wool.id),
        g=book.balances.get(wool.id, Balance()).mg / 1000,
        m=None,
        tex=None,
        yarn_class="",
        state=wool.state or "",
        day=wool.day,
    )


def _fibres(book: Book, holding_id: str) -> str:
    shares = fibres_of(book, traced(book), holding_id)
    return fibre_label(shares) if shares else ""
