"""A shelf to test with: two skeins of grey, one of white, a pullover and a hat."""

from app.book.book import Book
from tests.books import a_book, a_part, a_plan, a_promise, a_skein, a_yarn

HELD = {"G-1": (96.0, 213.0), "G-2": (90.0, 200.0), "W-1": (50.0, 150.0)}
"""Grams and metres."""


def a_shelf(*more: object) -> Book:
    """100 m of G-1 (of 213 m) are promised to the body of the pullover; the rest is free or in
    reserve for it."""
    return a_book(
        a_yarn(),
        a_yarn("white single", plies=1),
        a_skein("G-1"),
        a_skein("G-2"),
        a_skein("W-1", yarn_id="white single"),
        a_plan(),
        a_plan("hat", priority=2),
        a_part(),
        a_part("sleeves", copies=2, position=2),
        a_part("crown", plan_id="hat"),
        a_promise(),
        *more,
        held=HELD,
    )
