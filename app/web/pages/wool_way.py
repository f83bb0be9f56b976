"""Where the wool of a holding came from and what it became, with pictures and in words."""

from dataclasses import dataclass

from app.book.book import Book
from app.book.words import FIBRE_KINDS, SINKS, YARN_KINDS
from app.planning.blend import MadeOf
from app.planning.trace_layers import layers
from app.store.wool_list import BalanceLine
from app.web.pages.answer import Sentence, listed
from app.web.pages.wool_book import seen_at
from app.web.pages.wool_flow import Way, way_picture
from app.web.pages.wool_name import wool_name
from app.web.shown import MINUS, Shown
from app.work.wool_traced import (
    Became,
    From,
    became,
    came_from,
    made_of_holding,
    roots_of,
    way_back,
)


@dataclass(frozen=True, slots=True)
class FromRow:
    """A share of the wool, where it came in, and when."""

    share: str
    name: str
    url: str
    about: str


@dataclass(frozen=True, slots=True)
class BecameRow:
    name: str
    url: str
    kind: str
    amount: str


@dataclass(frozen=True, slots=True)
class WoolWayPage:
    """`back` and `ahead` are the pictures, None where nothing flowed."""

    name: str
    url: str
    sentence: Sentence
    back: Way | None
    came: tuple[FromRow, ...]
    ahead: Way | None
    became: tuple[BecameRow, ...]
    made_of: MadeOf | None
    water: str


def wool_way_page(book: Book, holding_id: str, shown: Shown) -> WoolWayPage:
    """The way of one holding's wool; KeyError where there is none of that id."""
    holding = book.holding[holding_id]
    came = came_from(book, holding_id)
    made = made_of_holding(book, holding_id)
    roots = roots_of(book, holding_id)
    ended, streams = became(book, roots)
    left = {one.holding.id: one.mg for one in ended if one.holding.id in roots}
    return WoolWayPage(
        name=wool_name(book, holding),
        url=_url(book, holding_id),
        sentence=_sentence(book, came, ended, shown),
        back=way_picture(*way_back(book, holding_id), book, shown),
        came=tuple(_came(book, one, shown) for one in came),
        ahead=way_picture(streams, layers(streams, left), book, shown),
        became=tuple(_became(book, one, shown) for one in ended) if streams else (),
        made_of=made,
        water=water_said(made, shown) if made else "",
    )


def water_said(made: MadeOf, shown: Shown) -> str:
    """The agreed water of a blend in percent, with its width where a fibre is not known."""
    regain = made.regain
    return shown.figure(100 * regain.value, "%", 100 * regain.u if regain.u else None)


def shares_said(book: Book, came: tuple[From, ...], shown: Shown) -> str:
    """ "75 % Bramble and 25 % Teasel" """
    return listed(
        [f"{shown.percent(100 * one.share)} {wool_name(book, one.origin)}" for one in came]
    )


def _sentence(
    book: Book, came: tuple[From, ...], ended: tuple[Became, ...], shown: Shown
) -> Sentence:
    if came:
        return Sentence("idle", "It came from", f" {shares_said(book, came, shown)}.")
    yarn = sum(one.mg for one in ended if one.holding.kind in (*YARN_KINDS, "garment"))
    wool = sum(one.mg for one in ended if one.holding.kind in FIBRE_KINDS)
    lead = f"{shown.mass(yarn / 1000)} of it is yarn or knit"
    return Sentence("idle", lead, f", {shown.mass(wool / 1000)} is still to be spun.")


def _came(book: Book, one: From, shown: Shown) -> FromRow:
    origin = one.origin
    fleece = book.fleece.get(origin.fleece_id or "")
    spun = origin.kind not in FIBRE_KINDS and fleece
    about = [f"of {fleece.name}, spun before it was written down" if spun and fleece else ""]
    about += [fleece.breed, fleece.source] if fleece else []
    about += [f"came in on {shown.day(origin.day)}"] if origin.day else []
    return FromRow(
        share=shown.percent(100 * one.share, 1),
        name=wool_name(book, origin),
        url=_url(book, origin.id),
        about=", ".join(filter(None, about)),
    )


def _became(book: Book, one: Became, shown: Shown) -> BecameRow:
    kind = "" if one.holding.kind in SINKS else one.holding.kind
    less = MINUS if one.mg < 0 else ""
    amount = f"{less}{shown.mass(abs(one.mg) / 1000)}"
    return BecameRow(wool_name(book, one.holding), _url(book, one.holding.id), kind, amount)


def _url(book: Book, holding_id: str) -> str:
    holding = book.holding[holding_id]
    return seen_at(
        BalanceLine(
            holding.id, holding.code, holding.kind, holding.fleece_id, holding.plan_id, 0, 0
        )
    )
