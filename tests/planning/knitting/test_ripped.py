"""Yarn that comes out of rows that are undone, by yarn."""

import pytest

from app.book.plan import RoleYarn
from app.book.shape import Run, Runs, Strand
from app.planning.knitting.doubt import courses_of
from app.planning.knitting.ripped import Ripped, ripped
from tests.books import a_book, a_part, a_plan, a_skein, a_yarn, some_progress

GREY = a_yarn(target_tex=450.0, colour="#8a7f72")
WHITE = a_part("hood", position=2, yarns=(RoleYarn("main", "white"),))
BARE = a_part("hem", position=3, yarns=(RoleYarn("main", "unknown"),))


def back(part_id, rows, *records):
    book = a_book(
        *(GREY, a_yarn("white", target_tex=300.0), a_yarn("unknown"), a_skein()),
        *(a_plan(state="being knit"), a_part(), WHITE, BARE, *records),
    )
    return ripped(book, courses_of(book, "pullover"), part_id, 1, rows)


def test_it_is_what_the_rows_were_planned_to_take():
    """Ten rows of the tube: 41.43 m at 450 tex."""
    (found,) = back("body", 10, some_progress(rows=20))
    assert (found.yarn_id, found.colour) == ("grey two-ply", "#8a7f72")
    assert found.mm == pytest.approx(41_428, abs=5)
    assert found.mg == pytest.approx(18_642, abs=5)


def test_each_part_gives_its_own_yarn():
    (found,) = back("hood", 0, some_progress("hood", rows=20))
    assert found.yarn_id == "white"


def test_yarn_nobody_knows_the_grist_of_cannot_be_reckoned():
    assert back("hem", 0, some_progress("hem", rows=20)) == ()


def test_rows_not_done_give_none():
    assert back("body", 10) == ()
    assert back("body", 30, some_progress(rows=20)) == ()


def test_a_share_of_it():
    whole, half = (Ripped("main", "grey", "", *one) for one in ((1_000, 2_001), (500, 1_000)))
    assert whole.of(0.5) == half


def test_each_yarn_comes_out_of_its_own_role():
    strands = (Strand("main", 0.5), Strand("trim", 0.5))
    yoke = a_part(
        "yoke",
        position=4,
        shape=Runs((Run(40, 100, 100, strands=strands),)),
        yarns=(RoleYarn("trim", "white"),),
    )
    found = back("yoke", 0, yoke, some_progress("yoke", rows=20))
    assert {(one.role, one.yarn_id) for one in found} == {
        ("main", "grey two-ply"),
        ("trim", "white"),
    }
