"""Ways out of a garment on the needles: from what is really left, and no row done is touched."""

import pytest

from app.book.plan import Part
from app.book.shape import Counted, Measured, Rectangle, Run, Runs, Trapezoid
from app.planning import reckon
from app.planning.needs import needs_of
from app.planning.rows import stitches_per_row
from app.planning.ways_out.judged import way_out, ways_out
from app.planning.yarns import Lots
from tests.books import (
    a_book,
    a_fleece,
    a_holding,
    a_part,
    a_plan,
    a_promise,
    a_skein,
    a_weighing,
    a_yarn,
    some_progress,
)
from tests.planning.test_ways_out import GAUGE, GREY

BODY = a_part(place="body")
YOKE = a_part("yoke", place="yoke", position=3, shape=Counted(200, 40))
SLEEVES = a_part("sleeves", position=2, copies=2, shape=Counted(60, 100), place="sleeve")


def on_needles(*records, body=BODY, metres=600, **plan):
    """Body, sleeves and yoke of grey; a brown like it lies free, and a fleece to spin more of."""
    book = a_book(
        a_fleece(fibre="wool"),
        a_holding("F-1", fleece_id="Bramble", state="carded"),
        a_yarn(fibre="wool", fleece_id="Bramble", target_tex=450.0),
        a_yarn("brown", fibre="wool"),
        a_skein(),
        a_skein("B-1", "brown"),
        a_plan(state="being knit", gauge=GAUGE, **plan),
        body,
        SLEEVES,
        YOKE,
        a_promise("G-1", metres * 1000),
        *records,
        held={"G-1": (metres * 0.45, metres), "B-1": (225, 500), "F-1": (3000, 0)},
    )
    return book, ways_out(book, reckon(book), "pullover")


def keys(ways):
    return {one.proposal.key for one in ways}


def rows_of(book, part_id):
    """Stitches of each row, and what its yarns are."""
    plan, part = book.plan["pullover"], book.part[part_id]
    (need,) = needs_of(plan, [part], Lots(book))
    return stitches_per_row(need), need.loop, part.yarns, part.gauge


def test_what_is_not_begun_may_be_anything():
    """All of the body is done; sleeves and yoke are open."""
    _, found = on_needles(some_progress(rows=120), metres=950)
    assert keys(found) >= {"spin", "shorten-sleeves", "other-sleeves", "other-yoke", "last-sleeves"}
    assert "shorten-body" not in keys(found)


def test_a_straight_body_half_done_may_still_end_sooner():
    book, found = on_needles(some_progress(rows=60))
    (way,) = [one for one in found if one.proposal.key == "shorten-body"]
    after = way.proposal.change.in_book(book)
    assert rows_of(after, "body")[0] == rows_of(book, "body")[0][: len(rows_of(after, "body")[0])]
    assert len(rows_of(after, "body")[0]) > 60
    assert not any(one.startswith("last-body") for one in keys(found))


@pytest.mark.parametrize("rows", [118, 120])
def test_at_its_end_it_has_no_rows_left_to_leave_out(rows):
    assert "shorten-body" not in keys(on_needles(some_progress(rows=rows))[1])


SHAPES = {
    "rectangle": Rectangle(1040, 400),
    "trapezoid": Trapezoid(1000, 1080, 400),
    "measured": Measured(1040, 1040, 400),
    "counted": Counted(229, 120),
    "a straight run last": Runs((Run(40, 200, 229), Run(80, 229, 229))),
    "a straight run first": Runs((Run(80, 229, 229), Run(40, 229, 200))),
    "a slope": Runs((Run(120, 200, 229),)),
}


@pytest.mark.parametrize("rows", [1, 30, 60, 100, 119])
@pytest.mark.parametrize("shape", SHAPES.values(), ids=SHAPES)
def test_no_way_out_touches_a_row_that_is_done(shape, rows):
    body = a_part(place="body", shape=shape)
    records = some_progress(rows=rows), some_progress("sleeves", rows=5, id="sleeve")
    book, found = on_needles(*records, body=body)
    done = {"body": rows, "sleeves": 5}
    for way in found:
        after = way.proposal.seen.in_book(book)
        for part_id, count in done.items():
            was, now = rows_of(book, part_id), rows_of(after, part_id)
            assert was[0][:count] == now[0][:count], way.proposal.key
            assert was[1:] == now[1:], way.proposal.key


def test_where_no_row_was_noted_what_is_knit_in_tells_what_is_begun():
    _, found = on_needles()
    assert "shorten-body" in keys(found)


def test_what_is_promised_is_what_is_reckoned_after_it():
    weighed = (
        a_weighing(mg=270_000, rows=0, id="first"),
        a_weighing(mg=150_000, rows=60, id="second"),
    )
    book, found = on_needles(some_progress(rows=60), *weighed)
    assert found
    for one in found:
        after = reckon(one.proposal.seen.in_book(book)).plan("pullover")
        assert after.odds == one.after.odds
        assert (
            way_out(book, reckon(book), "pullover", one.proposal.key).after.odds == one.after.odds
        )


def test_the_ways_follow_from_what_the_balls_really_took():
    """The same rows, but a heavier hand: more is short, and more must be spun."""
    light = a_weighing(mg=270_000, rows=0, id="a"), a_weighing(mg=162_000, rows=60, id="b")
    heavy = a_weighing(mg=270_000, rows=0, id="a"), a_weighing(mg=145_000, rows=60, id="b")
    spun = []
    for weighed in (light, heavy):
        _, found = on_needles(some_progress(rows=60), *weighed)
        (way,) = [one for one in found if one.proposal.key == "spin"]
        spun.append(way.proposal.seen.to_come[0].mm)
    assert spun[1] > spun[0]


def test_the_second_yarn_is_of_the_parts_not_begun():
    book, found = on_needles(
        some_progress(rows=120), some_progress("sleeves", rows=30, id="s"), metres=200
    )
    put = [p for one in found for p in one.proposal.change.put if isinstance(p, Part)]
    assert {one.id for one in put if one.yarns != book.part[one.id].yarns} == {"yoke"}
    assert GREY in {one.yarn_id for one in book.plan["pullover"].yarns}


HEAVY = a_weighing(mg=270_000, rows=0, id="a"), a_weighing(mg=145_000, rows=60, id="b")


def test_the_parts_add_up_to_what_the_rows_really_take():
    """Beside the need of the rows the plan has what no stitch holds."""
    book, _ = on_needles(some_progress(rows=60), *HEAVY)
    answer = reckon(book).plan("pullover")
    beside = sum(one.m for one in answer.allowances)
    parts = sum(one.need.value for one in answer.parts)
    assert parts == pytest.approx(answer.need.value - beside)
    planned = sum(one.need.value for one in reckon(on_needles()[0]).plan("pullover").parts)
    assert parts > planned


def test_rows_ticked_off_since_the_last_weighing_took_yarn_too():
    """The book still has all of the ball: what the rows took of it is not there twice."""
    before, after = (
        reckon(on_needles(*rows, metres=900)[0]).plan("pullover")
        for rows in ((), (some_progress(rows=60),))
    )
    assert after.need.value == pytest.approx(before.need.value, rel=0.01)


def test_with_a_heavy_hand_a_way_out_still_reaches_the_end():
    _, found = on_needles(some_progress(rows=60), *HEAVY)
    (spin,) = [one for one in found if one.proposal.key == "spin"]
    assert spin.after.enough
