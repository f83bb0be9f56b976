"""Yarn knitted in counts for the garment; remarks say how a yarn suits."""

from dataclasses import replace

import pytest

from app.book import woolbook
from app.book.plan import RoleYarn
from app.book.shape import Metres
from app.planning import reckon
from tests.books import (
    a_book,
    a_holding,
    a_part,
    a_plan,
    a_promise,
    a_skein,
    a_yarn,
    an_event,
)

GREY = "grey two-ply"
DAY_TWO = 9


def knitted(metres=100, undone=False):
    """A pullover on the needles: 150 m wanted, so many m of a skein of 213 m knitted in."""
    skein, garment = a_skein("G-1"), a_holding("P-1", "garment", plan_id="pullover")
    plan = a_plan(state="being knit")
    part = a_part(shape=Metres(150_000))
    book = a_book(a_yarn(), skein, garment, plan, part, held={"G-1": (96, 213)})
    lines = (
        woolbook.Line("G-1", -45_000, -metres * 1000),
        woolbook.Line("P-1", 45_000),
    )
    use = an_event(DAY_TWO, woolbook.Entry("use", lines))
    events = [*book.events, use]
    if undone:
        back = tuple(woolbook.Line(one.holding_id, -one.mg, -one.mm) for one in lines)
        events.append(an_event(DAY_TWO + 1, woolbook.Entry("undo", back), undoes=DAY_TWO))
    return replace(book, events=tuple(events))


def test_what_is_knitted_in_needs_no_promise():
    answer = reckon(knitted()).plan("pullover")
    assert answer.used_m == answer.parts[0].used_m == pytest.approx(100)
    assert answer.parts[0].short_m == pytest.approx(50)
    assert answer.groups[0].supply.value == pytest.approx(100)


def test_it_may_be_more_than_the_part_was_thought_to_take():
    answer = reckon(knitted(200)).plan("pullover")
    assert answer.parts[0].used_m == 150
    assert answer.parts[0].short_m == 0
    assert answer.enough


def test_what_was_undone_was_not_knitted():
    assert reckon(knitted(undone=True)).plan("pullover").used_m == 0


def test_yarn_of_no_part_counts_for_the_first():
    book = knitted()
    meant = replace(book.plan["pullover"], yarns=(RoleYarn("main", "cream"),))
    book = replace(book, plans=(meant,), yarns=(*book.yarns, a_yarn("cream")))
    assert reckon(book).plan("pullover").groups[0].used_m == pytest.approx(100)


def test_a_garment_without_parts_or_plan_counts_for_none():
    book = knitted()
    assert reckon(replace(book, parts=())).plan("pullover").used_m == 0
    nobodys = tuple(replace(one, plan_id=None) for one in book.holdings)
    assert reckon(replace(book, holdings=nobodys)).plan("pullover").used_m == 0


def remarks(tex=450.0, **yarn):
    """Remarks on a cream skein of that grist in a part meant for grey."""
    cream = a_yarn("cream", **yarn)
    book = a_book(
        a_yarn(colour_name="grey"), a_skein("G-1"), cream, a_skein("C-1", "cream"),
        a_plan(), a_part(), a_promise("C-1", 100_000),
        held={"G-1": (96, 213), "C-1": (tex / 5, 200)},
    )  # fmt: skip
    (part,) = reckon(book).plan("pullover").parts
    return {one.text: one.doubt for one in part.remarks}


@pytest.mark.parametrize(
    ("tex", "word", "doubt"),
    [(450.0, "ordinary", False), (60.0, "open", True), (900.0, "firm", True)],
)
def test_firmness_is_said_with_its_number(tex, word, doubt):
    """√tex/l with l 1.809 cm: 11.7, 4.3 and 16.6."""
    found = remarks(tex, colour_name="grey")
    (text,) = found
    assert f": {word} in cream" in text
    assert found[text] is doubt


def test_another_fibre_or_colour_is_said():
    found = remarks(fibre="alpaca", colour_name="cream")
    assert found["cream is alpaca, grey two-ply is wool"] is True
    assert found["cream is another colour than grey two-ply"] is True


def test_the_yarn_that_is_meant_is_spoken_of_before_any_is_promised():
    book = a_book(a_yarn(), a_skein("G-1"), a_plan(), a_part(), held={"G-1": (96, 213)})
    (part,) = reckon(book).plan("pullover").parts
    assert [one.text[:8] for one in part.remarks] == ["Firmness"]


def test_nothing_is_said_of_a_yarn_nobody_knows():
    book = a_book(a_plan(yarns=()), a_part())
    (part,) = reckon(book).plan("pullover").parts
    assert part.remarks == ()


def test_what_came_back_as_a_left_over_was_not_knitted_in():
    book = knitted(100)
    end = a_holding("G-1 end", "left-over", yarn_id=GREY)
    lines = (
        woolbook.Line("G-1", -20_000, -44_000),
        woolbook.Line("P-1", 15_000),
        woolbook.Line("G-1 end", 5_000, 11_000),
    )
    more = an_event(DAY_TWO + 1, woolbook.Entry("use", lines))
    book = replace(book, holdings=(*book.holdings, end), events=(*book.events, more))
    assert reckon(book).plan("pullover").used_m == pytest.approx(133)
