"""Where a garment is, in rows and in planned metres."""

import pytest

from app.book.shape import Counted, Metres
from app.planning.groups import groups
from app.planning.knitting.course import courses
from app.planning.knitting.done import metres_done, rows_done
from app.planning.needs import needs_of
from app.planning.yarns import Lots
from tests.books import a_book, a_part, a_plan, a_skein, a_weighing, a_yarn, some_progress

ROW_M = 497.13 / 120
SLEEVES = a_part("sleeves", position=2, copies=2, shape=Counted(60, 100))


def course_of(*records):
    """The one course of a pullover."""
    book = a_book(a_yarn(), a_skein(), a_plan(state="being knit"), *records)
    plan, parts = book.plan["pullover"], book.parts_of["pullover"]
    needs = needs_of(plan, parts, Lots(book))
    (found,) = courses(plan, needs, groups(needs, [], {}))
    return found


def test_a_row_is_a_share_of_the_part():
    """The tube of 229 stitches by 120 rows at 22 × 30 takes 497.1 m."""
    course = course_of(a_part())
    assert course.metres == pytest.approx(497.13, abs=0.02)
    assert course.at("body", 1, 60) == pytest.approx(60 * ROW_M, rel=1e-4)
    assert course.end_of("body", 1) == pytest.approx(course.metres)
    assert course.at("body", 1, 500) == pytest.approx(course.metres)


def test_pieces_follow_each_other_in_the_order_of_the_parts():
    course = course_of(SLEEVES, a_part())
    assert [(one.part, one.piece, one.pieces) for one in course.legs] == [
        ("body", 1, 1),
        ("sleeves", 1, 2),
        ("sleeves", 2, 2),
    ]
    first, second = course.at("sleeves", 1, 0), course.at("sleeves", 2, 0)
    assert first == pytest.approx(497.13, abs=0.02)
    assert second - first == pytest.approx(60 * 100 * 497.13 / (229 * 120), rel=1e-4)
    assert course.metres == pytest.approx(second + (second - first))


def test_a_place_is_the_last_whole_row():
    course = course_of(a_part(), SLEEVES)
    place = course.place(60.5 * ROW_M)
    assert (place.part_id, place.piece, place.rows, place.of) == ("body", 1, 60, 120)
    assert not place.whole
    again = course.place(course.at("sleeves", 2, 40))
    assert (again.part, again.piece, again.pieces, again.rows) == ("sleeves", 2, 2, 40)
    assert course.place(course.metres).whole
    assert course.place(course.metres + 1) is None


def test_what_this_yarn_does_not_knit_has_no_place_in_it():
    course = course_of(a_part())
    assert course.at("sleeves", 1, 3) is None
    with pytest.raises(KeyError):
        course.end_of("sleeves", 1)
    assert course.leg("body", 2) is None


def test_metres_for_something_else_have_no_rows():
    course = course_of(a_part(shape=Metres(300_000)))
    assert course.legs == ()
    assert course.place(10.0) is None


def test_rows_are_done_as_ticked_or_else_as_weighed():
    records = [a_part(), SLEEVES, some_progress(rows=50), a_weighing(rows=60)]
    records += [a_weighing(id="a", part_id="sleeves", rows=10)]
    records += [a_weighing(id="b", part_id="sleeves", rows=30)]
    records += [a_weighing(id="c", part_id="sleeves", plan_id="loan", rows=90), a_plan("loan")]
    book = a_book(a_yarn(), a_skein(), a_plan(state="being knit"), *records)
    assert rows_done(book, "pullover") == {("body", 1): 50, ("sleeves", 1): 30}
    course = course_of(*records)
    sleeve_row = course.leg("sleeves", 1).rows[0]
    done = metres_done(course, rows_done(book, "pullover"))
    assert done == pytest.approx(50 * ROW_M + 30 * sleeve_row, rel=1e-4)
