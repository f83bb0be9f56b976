"""The colours of skeins: families, order, joins that show, and yarns that pass for one."""

import pytest

from app.book.holding import ColourAt
from app.book.plan import RoleYarn
from app.book.sequence import Sequence, SequenceYarn
from app.book.shape import Counted, Metres
from app.craft.colour import difference, lab
from app.planning import reckon
from app.planning.colours import colours_of
from app.planning.colours_blend import blended
from app.planning.picture import picture
from tests.books import a_book, a_part, a_plan, a_promise, a_skein, a_yarn

GREY, NEAR, DARK = "#8a8a86", "#8b8b87", "#6f6f6b"


def a_body(*promises, colours=(GREY, DARK), **part):
    """100 rounds of 1.809 m; two skeins of 100 m, the second from round 56 on."""
    skeins = [a_skein(f"G-{at}", colour=colour) for at, colour in enumerate(colours, 1)]
    return a_book(
        a_yarn(),
        *skeins,
        a_plan(),
        a_part(**{"shape": Counted(100, 100)} | part),
        *(promises or [a_promise(one.id, 100_000) for one in skeins]),
        held={one.id: (45, 100) for one in skeins},
    )


def found(book):
    plan = book.plan["pullover"]
    return colours_of(book, plan, picture(book, reckon(book), "pullover"))


def test_a_change_of_skein_that_shows_is_told_with_its_place():
    (join,) = found(a_body()).joins
    assert (join.part, join.row, join.before.code, join.after.code) == ("body", 56, "G-1", "G-2")
    assert join.difference == pytest.approx(difference(lab(GREY), lab(DARK)))
    assert join.difference > 3


def test_skeins_that_read_as_one_are_one_family_and_no_join():
    colours = found(a_body(colours=(GREY, NEAR)))
    assert [[one.code for one in family] for family in colours.families] == [["G-2", "G-1"]]
    assert colours.joins == ()


def test_families_go_from_light_to_dark():
    promises = [a_promise(f"G-{at}", 50_000) for at in (1, 2, 3)]
    colours = found(a_body(*promises, colours=(DARK, "#f0e8d8", GREY)))
    assert [[one.code for one in family] for family in colours.families] == [
        ["G-2"],
        ["G-3"],
        ["G-1"],
    ]
    assert [one.lightness for (one,) in colours.families] == sorted(
        (one.lightness for (one,) in colours.families), reverse=True
    )
    assert [one.row for one in colours.joins] == [29, 56]


def test_the_plainest_join_comes_first():
    promises = [a_promise(f"G-{at}", 50_000) for at in (1, 2, 3)]
    colours = found(a_body(*promises, colours=(GREY, DARK, "#f0e8d8")))
    assert [one.row for one in colours.joins] == [56, 29]


def test_colours_nobody_noted_and_colours_that_run_are_named():
    book = a_book(
        a_yarn(),
        a_skein("G-1"),
        a_skein("G-2", colour=GREY, colours=(ColourAt(0, GREY), ColourAt(9_000, DARK))),
        a_skein("G-3", yarn_id=None, colour=GREY),
        a_plan(),
        a_part(shape=Counted(100, 100)),
        *(a_promise(f"G-{at}", 50_000) for at in (1, 2, 3)),
        held={f"G-{at}": (45, 100) for at in (1, 2, 3)},
    )
    colours = found(book)
    assert (colours.unknown, colours.running) == (("G-1",), ("G-2",))
    assert [[one.code for one in family] for family in colours.families] == [["G-3"]]


def test_two_skeins_take_turns_around_the_join():
    book = a_body()
    change = blended(book, book.plan["pullover"], "body", 56, "G-2")
    assert change is not None
    part, promise = change.put
    assert part.sequence == Sequence(
        "fade",
        (SequenceYarn("main", 0.75, 0.25), SequenceYarn("second yarn", 0.25, 0.75)),
        from_row=50,
        to_row=61,
    )
    assert part.yarns == (RoleYarn("second yarn", "grey two-ply"),)
    assert (promise.holding_id, promise.role) == ("G-2", "second yarn")
    changed = change.in_book(book)
    (piece,) = (one for one in picture(changed, reckon(changed), "pullover").pieces[:1])
    rows = [
        band.knit.threads[0].holding_id
        for band in piece.bands
        for _ in range(band.first, band.last + 1)
    ]
    assert rows[:49] == ["G-1"] * 49
    assert set(rows[49:61]) == {"G-1", "G-2"}
    assert rows[61:] == ["G-2"] * 39


def test_flat_the_turns_are_whole_pairs_of_rows():
    book = a_body(place="back")
    change = blended(book, book.plan["pullover"], "body", 56, "G-2")
    assert change is not None
    sequence = change.put[0].sequence
    assert (sequence.from_row, sequence.to_row, sequence.block_rows) == (51, 60, 2)


def test_skeins_of_no_yarn_take_turns_as_well():
    book = a_book(
        a_yarn(),
        a_skein("G-1", yarn_id=None, colour=GREY),
        a_skein("G-2", yarn_id=None, colour=DARK),
        a_plan(),
        a_part(shape=Counted(100, 100)),
        a_promise("G-1", 100_000),
        a_promise("G-2", 100_000),
        held={"G-1": (45, 100), "G-2": (45, 100)},
    )
    change = blended(book, book.plan["pullover"], "body", 56, "G-2")
    assert change is not None
    assert change.put[0].yarns == ()


@pytest.mark.parametrize(
    ("part", "row", "skein"),
    [
        ({"copies": 2}, 56, "G-2"),
        ({"sequence": Sequence("alternate")}, 56, "G-2"),
        ({"shape": Metres(9_000)}, 56, "G-2"),
        ({}, 2, "G-2"),
        ({}, 1, "G-2"),
        ({}, 101, "G-2"),
        ({}, 56, "G-9"),
        ({}, 56, "G-1"),
    ],
)
def test_where_they_cannot_take_turns(part, row, skein):
    book = a_body(**part)
    assert blended(book, book.plan["pullover"], "body", row, skein) is None
