"""A reckoning in lines to read on a terminal."""

import re

from app.book.settings import Settings
from app.telling import as_text
from tests.books import (
    a_book,
    a_fleece,
    a_holding,
    a_part,
    a_plan,
    a_promise,
    a_skein,
    a_yarn,
    an_errand,
)


def _text(**other: object) -> str:
    records = [a_yarn(), a_skein(), a_plan(), a_part(copies=2), a_promise(), an_errand()]
    return as_text(a_book(*records, held={"G-1": (96, 213)}, **other))


def test_a_plan_that_is_short_says_by_how_much() -> None:
    lines = _text().splitlines()
    assert lines[0] == "pullover (intended)"
    assert lines[1].startswith("  Short by ")
    assert " m" in lines[1]
    assert "100 m promised" in lines[2]
    assert lines[3].startswith("  - 2 × body: ")
    assert lines[3].endswith("G-1")
    assert "To do" in lines
    assert "  - buy soap" in lines


def test_her_units_are_used() -> None:
    assert " yd" in _text(settings=Settings(length_unit="yd"))


def test_a_plan_with_enough_says_what_is_left() -> None:
    skein = a_skein("G-9")
    promise = a_promise("G-9", 2_000_000)
    text = as_text(a_book(a_yarn(), skein, a_plan(), a_part(), promise, held={"G-9": (900, 2000)}))
    assert "will be left" in text
    assert "Short" not in text


def test_a_plan_without_parts_is_not_reckoned() -> None:
    assert "Nothing to reckon yet" in as_text(a_book(a_yarn(), a_plan()))


def test_a_promise_the_shelf_lost_is_named() -> None:
    promise = a_promise(mm=300_000)
    text = as_text(
        a_book(a_yarn(), a_skein(), a_plan(), a_part(), promise, held={"G-1": (96, 213)})
    )
    assert "No longer covered" in text
    assert "87 m of G-1 for pullover, body" in text


def test_a_finished_plan_is_only_named() -> None:
    assert as_text(a_book(a_yarn(), a_plan(state="finished"), a_part())) == "pullover (finished)"


def test_what_must_be_made_is_told_with_its_amounts() -> None:
    wool = [a_fleece(), a_holding("F-1", fleece_id="Bramble", state="raw")]
    yarn = a_yarn(fleece_id="Bramble", target_tex=450.0)
    text = as_text(a_book(*wool, yarn, a_plan(), a_part(), held={"F-1": (2000, 0)}))
    (line,) = [line for line in text.splitlines() if "Spin" in line]
    assert re.search(r": [\d ]+ m, \d+ g, \d+ g prepared, \d+ g raw$", line)


def test_an_empty_book_has_nothing_to_tell() -> None:
    assert as_text(a_book()) == ""
