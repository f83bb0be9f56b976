"""The pages on which wool is blended and a skein is dyed."""

from collections.abc import Sequence
from dataclasses import dataclass

from app.book.book import Book
from app.book.holding import Holding
from app.book.stamp import stamp
from app.book.words import WoolState
from app.craft.fibres import label
from app.planning.blend import blend_shares
from app.web.forms.blend_lots import STATES, TAKEN
from app.web.forms.filled import Filled
from app.web.pages.cautions import CAUTIONS, DYES
from app.web.pages.wool_name import wool_name
from app.web.shown import Shown
from app.work.batch_blend import Blended


@dataclass(frozen=True, slots=True)
class Lot:
    """Wool that can go into a blend, and the field for how much of it does."""

    field: str
    name: str
    held: str
    state: str
    place: str
    colour: str


@dataclass(frozen=True, slots=True)
class BlendPage:
    form: Filled
    lots: tuple[Lot, ...]
    states: dict[WoolState, str]
    doubted: bool
    caution: str


@dataclass(frozen=True, slots=True)
class DyePage:
    """`held` is what the book has of the skein."""

    form: Filled
    id: str
    code: str
    held: str
    caution: str


def blend_page(book: Book, lots: Sequence[Holding], form: Filled, shown: Shown) -> BlendPage:
    """The form of a blend; the lot it was opened from stands first."""
    chosen = form.values.get("chosen", "")
    in_order = sorted(lots, key=lambda one: one.id != chosen)
    return BlendPage(
        form=form,
        lots=tuple(_lot(book, one, shown) for one in in_order),
        states=STATES,
        doubted="sure" in form.errors or bool(form.values.get("sure")),
        caution=CAUTIONS["scoured"],
    )


def dye_page(skein: Holding, held: str, form: Filled) -> DyePage:
    """The form of a dyeing."""
    marked = Filled(form.values, form.errors, form.stamp or stamp(skein))
    return DyePage(marked, skein.id, skein.code, held, DYES)


def blended_said(done: Blended, shown: Shown) -> str:
    """ "Grey heather is on the shelf: 380 g, 75 % wool, 25 % alpaca. 20 g went on the way." """
    fleece = done.fleece
    fibres = blend_shares(fleece.blend) or {fleece.fibre: 1.0}
    made = shown.mass(done.mg / 1000)
    words = f"{fleece.name} is on the shelf: {made}, {label(fibres)}."
    if done.lost_mg < 0:
        return f"{words} It weighs {shown.mass(-done.lost_mg / 1000)} more than went in."
    return f"{words} {shown.mass(done.lost_mg / 1000)} went on the way."


def _lot(book: Book, one: Holding, shown: Shown) -> Lot:
    fleece = book.fleece.get(one.fleece_id or "")
    return Lot(
        field=f"{TAKEN}{one.id}",
        name=wool_name(book, one),
        held=shown.mass(book.balances[one.id].mg / 1000),
        state=one.state or "",
        place=one.place,
        colour=one.colour or (fleece.colour if fleece else ""),
    )
