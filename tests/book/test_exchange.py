"""The exchange document: lossless, canonical, and clear about what is wrong with it."""

import json
import random
from dataclasses import fields, replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.book.book import Book
from app.book.errors import ExchangeError
from app.book.exchange import LONGEST, dumps, in_order, loads
from app.book.settings import Settings, StepLosses
from tests.books import a_book, a_fleece, a_plan, a_promise, a_skein, a_yarn
from tests.random_books import books


def faults(text):
    with pytest.raises(ExchangeError) as caught:
        loads(text)
    return caught.value.problems


def changed(**fields):
    return json.dumps(json.loads(dumps(a_book(a_yarn(), a_plan()))) | fields)


@pytest.mark.property
@given(books())
def test_a_book_comes_back_whole_and_the_text_to_the_byte(book):
    text = dumps(book)
    assert loads(text) == in_order(book)
    assert dumps(loads(text)) == text
    assert loads(text.encode()) == loads(text)


@pytest.mark.property
@given(books())
def test_the_order_of_records_does_not_matter(book):
    tables = {one.name: list(getattr(book, one.name)) for one in fields(book)[1:]}
    for records in tables.values():
        random.Random(1).shuffle(records)
    mixed = replace(book, **{name: tuple(records) for name, records in tables.items()})
    assert dumps(mixed) == dumps(book)


def test_the_canonical_text():
    text = dumps(a_book(a_fleece("Ümit", name="Løv <b>")))
    lines = text.split("\n")
    assert lines[:4] == ["{", ' "format": "tallyhank book",', ' "version": 4,', ' "settings": {']
    assert '   "name": "Løv <b>",' in lines
    assert text.endswith("\n}\n")


def test_an_empty_book():
    assert loads(dumps(Book())) == in_order(Book())


@pytest.mark.parametrize(
    ("text", "what"),
    [
        ("", "line 1, column 1: the document is not JSON (Expecting value)."),
        ('{"format": 1', "line 1, column 13: the document is not JSON"),
        ("[]", 'format: this is no "tallyhank book" document.'),
        ('{"format": "book"}', 'format: this is no "tallyhank book" document.'),
        (changed(version=5), "version: the document has version 5; this program reads up to 4."),
        (changed(version=True), "version: expected a whole number from 1."),
        (changed(version=0), "version: expected a whole number from 1."),
        (changed(moths=[]), "moths: no such field"),
        ("[" * 100_000, "The document is nested too deeply to be a book."),
        ("9" * 5000, "The document holds a number of absurd length."),
        ('{"format": 1, "format": 2}', 'The field "format" is given twice in one record.'),
        (b"\xff\xfe", "The document is not UTF-8 text."),
    ],
)
def test_what_is_no_book_is_refused_in_words(text, what):
    (found,) = faults(text)
    assert found.startswith(what)


def test_numbers_that_are_none():
    text = dumps(Book()).replace("90.0", "NaN").replace('"spin": 3.0', '"spin": 1e999')
    assert faults(text) == (
        "settings.sureness_pct: expected a finite number",
        "settings.steps.spin: expected a finite number",
    )
    with pytest.raises(ExchangeError, match="not finite"):
        dumps(Book(settings=Settings(sureness_pct=float("nan"))))


def test_a_document_too_large_is_refused_unread():
    class Huge(bytes):
        def __len__(self):
            return LONGEST + 1

    assert faults(Huge()) == ("The document is too large.",)


def test_a_mark_at_the_beginning_of_a_file_does_no_harm():
    assert loads(b"\xef\xbb\xbf" + dumps(Book()).encode()) == in_order(Book())


def test_ids_given_twice():
    book = a_book(a_skein("G-1"), a_skein("G-1"), a_yarn(), held={"G-1": (1, 1)})
    book = replace(book, events=book.events * 2)
    assert faults(dumps(book)) == (
        "holdings: the id G-1 is given 2 times",
        "events: the seq 1 is given 2 times",
    )


def test_links_that_lead_nowhere_are_refused_all_together():
    assert faults(dumps(a_book(a_skein(), a_promise()))) == (
        "skein G-1, yarn_id: names grey two-ply, which is not in the book.",
        "promise of G-1 to pullover, plan_id: names pullover, which is not in the book.",
        "promise of G-1 to pullover, part_id: names body, which is not in the book.",
    )


ANY_JSON = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats() | st.text(),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(), inner, max_size=3),
    max_leaves=8,
)


def places(value, path=()):
    """Every path into a JSON value."""
    yield path
    if isinstance(value, dict | list):
        for key, one in value.items() if isinstance(value, dict) else enumerate(value):
            yield from places(one, (*path, key))


@pytest.mark.property
@given(st.data(), books(), ANY_JSON)
def test_a_document_with_anything_anywhere_is_read_or_refused(data, book, anything):
    document = json.loads(dumps(book))
    *way, last = data.draw(st.sampled_from([one for one in places(document) if one]))
    inside = document
    for step in way:
        inside = inside[step]
    inside[last] = anything
    try:
        read = loads(json.dumps(document))
    except ExchangeError:
        return
    assert loads(dumps(read)) == in_order(read)


@pytest.mark.parametrize(
    ("settings", "where"),
    [
        (Settings(sureness_pct=200.0), "sureness_pct"),
        (Settings(steps=StepLosses(spin=150.0)), "steps.spin"),
    ],
)
def test_numbers_that_make_no_sense_are_refused(settings: Settings, where: str) -> None:
    with pytest.raises(ExchangeError, match=where):
        loads(dumps(replace(Book(), settings=settings)))
