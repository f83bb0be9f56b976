"""What a new proposal moves of the one before it."""

from dataclasses import replace

from app.planning import reckon
from app.planning.assign_moved import moved
from tests.books import DAY, a_book, a_part, a_plan, a_promise, a_skein, a_yarn

HELD = {"G-1": (90, 200), "G-2": (45, 100), "G-3": (45, 100)}


def shelf(*promises, **skein):
    skeins = [a_skein(code) for code in HELD if code != "G-3"]
    return a_book(
        a_yarn(),
        *skeins,
        a_skein("G-3", **skein),
        a_plan(),
        a_part(),
        a_part("sleeves", position=2),
        *promises,
        held=HELD,
    )


def idea(code, mm=50_000, part="body", why="it fits"):
    names = {"id": f"{code} {part} {mm}", "state": "proposed", "why": why}
    return a_promise(code, mm, part_id=part, **names)


def told(old, new, book=None):
    book = book or shelf()
    return [
        (one.kind, one.code, one.was, one.now, one.m, one.why)
        for one in moved(old, new, book, reckon(book))
    ]


def test_nothing_was_proposed_before():
    assert told([], [idea("G-1")]) == []


def test_what_is_as_it_was_is_not_told():
    assert told([idea("G-1")], [replace(idea("G-1"), id="new", why="for another reason")]) == []


def test_moved_put_changed_and_taken_off():
    old = [idea("G-1"), idea("G-2"), idea("G-3")]
    new = [idea("G-1", 60_000), idea("G-2", part="sleeves", why="goes on")]
    assert told(old, new) == [
        ("changed", "G-1", ("body",), ("body",), 60.0, "it fits"),
        ("moved", "G-2", ("body",), ("sleeves",), 50.0, "goes on"),
        (
            "taken off",
            "G-3",
            ("body",),
            (),
            0.0,
            "other skeins serve with fewer changes, cuts or scraps",
        ),
    ]
    assert told([idea("G-1")], [idea("G-1"), idea("G-2")]) == [
        ("put", "G-2", (), ("body",), 50.0, "it fits")
    ]


def test_a_skein_for_two_parts_names_both():
    new = [idea("G-1", part="sleeves", why="goes on"), idea("G-1", why="shared")]
    assert told([idea("G-2")], new)[0] == (
        ("put", "G-1", (), ("body", "sleeves"), 100.0, "goes on; shared")
    )


def test_why_a_skein_serves_no_more():
    gone = shelf(put_away=DAY)
    assert told([idea("G-3")], [idea("G-1")], gone)[1][-1] == "it is no longer on the shelf"
    taken = shelf(a_promise("G-3", 100_000))
    assert told([idea("G-3")], [idea("G-1")], taken)[1][-1] == "nothing of it is free any more"
