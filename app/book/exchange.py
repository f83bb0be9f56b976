"""The exchange document: a whole book as one JSON text that people and programs can read.

    {"format": "tallyhank book", "version": 4, "settings": {…}, "people": […], "fleeces": […],
     "yarns": […], "swatches": […], "patterns": […], "holdings": […], "readings": […],
     "events": […], "plans": […], "parts": […], "promises": […], "errands": […],
     "wheels": […], "stints": […], "marks": […], "photos": […],
     "progress": […], "weighings": […]}

Each list holds the records of app/book field by field in the order of the dataclass: masses in mg,
lengths in mm, days as 2026-04-30, None as null, every field present. The canonical text has records
sorted by id and events by seq, an indent of one space, UTF-8 and a newline at the end, so that
loading and writing again gives the same bytes. A document of an earlier version is read as well.
"""

import json
from collections import Counter
from dataclasses import fields, replace
from typing import Any

from app.book.book import Book
from app.book.checks import structure
from app.book.codec import from_plain, to_plain
from app.book.errors import ExchangeError, Malformed
from app.book.older import brought_up
from app.book.sense import nonsense

FORMAT = "tallyhank book"
VERSION = 4
LONGEST = 400_000_000
"""Characters; a guild's book of 10,000 skeins has about 20 million."""


def dumps(book: Book) -> str:
    """The canonical text of `book`; ExchangeError for a number that JSON cannot carry."""
    document = {"format": FORMAT, "version": VERSION, **to_plain(in_order(book))}
    try:
        return json.dumps(document, ensure_ascii=False, allow_nan=False, indent=1) + "\n"
    except ValueError as fault:
        raise ExchangeError(["The book holds a number that is not finite."]) from fault


def loads(text: str | bytes) -> Book:
    """The book in a document; ExchangeError names everything that is wrong with it."""
    document = _opened(_parsed(text))
    try:
        book = from_plain(Book, document)
    except Malformed as fault:
        raise ExchangeError(fault.problems) from fault
    problems = _duplicates(book) or [str(one) for one in structure(book) or nonsense(book)]
    if problems:
        raise ExchangeError(problems)
    return book


def in_order(book: Book) -> Book:
    """The same book with its records sorted by id and its events by seq."""
    ordered = {name: tuple(sorted(records, key=_key)) for name, records in _tables(book).items()}
    return replace(book, **ordered)  # type: ignore[arg-type]


def _parsed(text: str | bytes) -> object:
    if len(text) > LONGEST:
        raise ExchangeError(["The document is too large."])
    try:
        decoded = text if isinstance(text, str) else text.decode("utf-8-sig")
        return json.loads(decoded, object_pairs_hook=_object)
    except UnicodeDecodeError as fault:
        raise ExchangeError(["The document is not UTF-8 text."]) from fault
    except RecursionError as fault:
        raise ExchangeError(["The document is nested too deeply to be a book."]) from fault
    except json.JSONDecodeError as fault:
        where = f"line {fault.lineno}, column {fault.colno}"
        raise ExchangeError([f"{where}: the document is not JSON ({fault.msg})."]) from fault
    except ExchangeError:
        raise
    except ValueError as fault:
        raise ExchangeError(["The document holds a number of absurd length."]) from fault


def _object(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    found = dict(pairs)
    if len(found) < len(pairs):
        twice = Counter(name for name, _ in pairs).most_common(1)[0][0]
        raise ExchangeError([f'The field "{twice}" is given twice in one record.'])
    return found


def _opened(document: object) -> dict[str, Any]:
    """The tables of a document of our format, as the present version holds them."""
    if not isinstance(document, dict) or document.get("format") != FORMAT:
        raise ExchangeError([f'format: this is no "{FORMAT}" document.'])
    version = document.get("version")
    if type(version) is not int or version < 1:
        raise ExchangeError(["version: expected a whole number from 1."])
    if version > VERSION:
        raise ExchangeError(
            [
                f"version: the document has version {version}; this program reads up to {VERSION}."
                " Update the program, then try again."
            ]
        )
    tables = {name: one for name, one in document.items() if name not in ("format", "version")}
    return brought_up(tables, version)


def _duplicates(book: Book) -> list[str]:
    problems = []
    for name, records in _tables(book).items():
        counted = Counter(map(_key, records))
        field = "seq" if name == "events" else "id"
        problems += [
            f"{name}: the {field} {key} is given {n} times" for key, n in counted.items() if n > 1
        ]
    return problems


def _tables(book: Book) -> dict[str, tuple[Any, ...]]:
    return {one.name: getattr(book, one.name) for one in fields(book) if one.name != "settings"}


def _key(record: Any) -> Any:
    return record.seq if hasattr(record, "seq") else record.id
