"""What each skein really holds: the wool book's metres with the errors of how they were measured.

An error common to a reel, a label or a yarn's shrinkage keeps one name, so it stays shared.
"""

from dataclasses import dataclass

from app.book.book import Book
from app.book.holding import Holding
from app.book.reading import Reading
from app.book.words import YARN_KINDS
from app.craft.figure import Figure
from app.craft.reel import skein_length
from app.craft.working import Standing, Step
from app.planning.yarns import Lots

SHARES = {"tape": 0.02, "label": 0.02}
ESTIMATE_SHARE = 0.10
"""Standard uncertainty of a length by how it was taken, as a share of it (practice)."""


@dataclass(frozen=True, slots=True)
class Stock:
    """A holding of yarn on the shelf: metres it is expected to hold when finished, and grams."""

    holding: Holding
    held: Figure
    held_g: float


def stock(lots: Lots) -> dict[str, Stock]:
    """Every holding of yarn that is on the shelf and not empty, by id."""
    found: dict[str, Stock] = {}
    for holding in lots.book.holdings:
        if holding.kind in YARN_KINDS and holding.put_away is None:
            balance = lots.book.balances.get(holding.id)
            if balance and (balance.mm > 0 or balance.mg > 0):
                found[holding.id] = Stock(holding, held(lots, holding), balance.mg / 1000)
    return found


def held(lots: Lots, holding: Holding) -> Figure:
    """Metres a holding is expected to hold once finished."""
    balance = lots.book.balances[holding.id]
    if balance.mm <= 0:
        return _by_weight(lots, holding)
    reading = _last_length(lots.book, holding)
    length = _measured(balance.mm / 1000, holding, reading)
    if reading is None or reading.finished:
        return length
    return length.times(Figure(1.0, "share") - lots.shrinkage(holding.yarn_id), "m")


def working(book: Book, holding_id: str) -> tuple[Step, ...]:
    """How the metres of a holding were worked out; KeyError for one not in the wool book."""
    lots, holding = Lots(book), book.holding[holding_id]
    balance, found = book.balances[holding_id], held(lots, holding)
    reading = _last_length(book, holding)
    name = f"Length of {holding.code}"
    if balance.mm <= 0:
        how = "grams ÷ grist of its yarn"
        return (Step(name, how, found.value, "m", found.u, "ISO 1144", "derived"),)
    how, source, standing = _told(reading)
    last = Step(name, how, found.value, "m", found.u, source, standing)
    if reading is None or reading.finished:
        return (last,)
    return (_shrinkage_step(lots, holding), last)


def _shrinkage_step(lots: Lots, holding: Holding) -> Step:
    share = lots.shrinkage(holding.yarn_id).scaled(100, "%")
    if lots.shrinkage(holding.yarn_id).u > 0.05:
        how = "no skein of this yarn was measured before and after: assumed, wide"
        source = "common practice, no source"
        return Step("Shrinkage in finishing", how, share.value, "%", share.u, source, "assumed")
    how = "skeins of this yarn measured before and after"
    return Step("Shrinkage in finishing", how, share.value, "%", share.u, "", "measured")


def _told(reading: Reading | None) -> tuple[str, str, Standing]:
    if reading is None:
        return "as entered in the wool book, not measured", "", "assumed"
    if reading.instrument == "reel" and reading.girth_mm and reading.turns:
        how = f"{reading.turns:g} turns × {reading.girth_mm / 1000:g} m"
        return how, "principle of ISO 2060", "measured"
    if reading.instrument == "estimate":
        return f"estimated: {reading.typed}", "", "assumed"
    return f"by {reading.instrument}: {reading.typed}", "", "measured"


def _last_length(book: Book, holding: Holding) -> Reading | None:
    lengths = [one for one in book.readings_of.get(holding.id, []) if one.kind == "length"]
    finished = [one for one in lengths if one.finished]
    known = finished or lengths
    return known[-1] if known else None


def _measured(metres: float, holding: Holding, reading: Reading | None) -> Figure:
    if reading is None:
        return Figure(metres, "m", {f"length of {holding.code}": metres * ESTIMATE_SHARE})
    if reading.instrument == "reel" and reading.girth_mm and reading.turns:
        girth_m = reading.girth_mm / 1000
        whole = skein_length(girth_m, reading.turns, reading.finished, holding.code)
        return whole.scaled(metres / whole.value)
    shared = f"label of {holding.yarn_id}" if reading.instrument == "label" else ""
    share = SHARES.get(reading.instrument, ESTIMATE_SHARE)
    return Figure(metres, "m", {shared or f"length of {holding.code}": metres * share})


def _by_weight(lots: Lots, holding: Holding) -> Figure:
    tex = lots.tex(holding.yarn_id) if holding.yarn_id else None
    if tex is None:
        return Figure(0.0, "m")
    return Figure(lots.book.balances[holding.id].mg, "mg").per(tex, "m")
