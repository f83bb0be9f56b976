"""What can go wrong with a book.

BookError
├── Malformed            a plain value does not describe the record it should; names every place
├── ExchangeError        a document cannot be read or written as a book; names every problem
└── WoolBookError        something that cannot have happened to wool
    ├── BadAmount        a negative amount, or nothing where there must be something
    ├── NotYarn          metres for a holding that holds no yarn
    ├── HoldsTooLittle   more is taken than the holding has
    ├── MakesTooMuch     more yarn comes out than went in
    └── CannotUndo       an undo of an undo, or of what was undone already
"""

from collections.abc import Iterable


class BookError(ValueError):
    """Anything wrong with a book; the text can be shown to the maker."""


class _Problems(BookError):
    def __init__(self, problems: Iterable[str]) -> None:
        self.problems = tuple(problems)
        super().__init__("\n".join(self.problems))


class Malformed(_Problems):
    """You meet it when a plain value is turned into a record; `problems` are "place: what"."""


class ExchangeError(_Problems):
    """You meet it when a document is read or written; `problems` are "where: what"."""


class WoolBookError(BookError):
    """You meet it when an event is made that the wool book cannot hold."""


class BadAmount(WoolBookError):
    """You meet it when an amount is negative, or zero where something must have moved."""


class NotYarn(WoolBookError):
    """You meet it when metres are given to a holding that holds no yarn."""


class HoldsTooLittle(WoolBookError):
    """You meet it when more is taken from a holding than it has."""


class MakesTooMuch(WoolBookError):
    """You meet it when winding gives more metres, or a garment leaves more, than was taken."""


class CannotUndo(WoolBookError):
    """You meet it when an event is an undo itself or was undone already."""
