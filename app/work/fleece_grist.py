"""The grist a fleece is likely to be spun at, for want of an answer."""

from app.book.book import Book
from app.book.event import Balance
from app.book.words import YARN_KINDS
from app.craft.counts import tex_of

USUAL_TEX = 450.0
"""A two-ply for a jersey, where nothing tells what is meant to be spun (assumed)."""


def likely_tex(book: Book, fleece_id: str) -> float:
    """Linear density in tex of what was spun from a fleece, else what is aimed at, else usual."""
    return _spun_tex(book, fleece_id) or _target_tex(book, fleece_id) or USUAL_TEX


def _spun_tex(book: Book, fleece_id: str) -> float | None:
    skeins = [
        book.balances.get(one.id, Balance())
        for one in book.holdings
        if one.fleece_id == fleece_id and one.kind in YARN_KINDS
    ]
    mg, mm = sum(one.mg for one in skeins), sum(one.mm for one in skeins)
    return tex_of(mg / 1000, mm / 1000) if mg > 0 and mm > 0 else None


def _target_tex(book: Book, fleece_id: str) -> float | None:
    targets = (one.target_tex for one in book.yarns if one.fleece_id == fleece_id)
    return next((tex for tex in targets if tex), None)
