"""What wool is called where it is told of: a fleece by its name, everything else by its label."""

from app.book.book import Book
from app.book.holding import Holding


def wool_name(book: Book, holding: Holding) -> str:
    """ "Bramble", "G-014" or "Bramble, carded" """
    fleece = book.fleece.get(holding.fleece_id or "")
    return fleece.name if fleece and holding.kind == "fleece" else holding.code
