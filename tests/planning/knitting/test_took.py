"""What the parts of a garment took: all of it shared out, by what the balls told of each part."""

from datetime import date

import pytest

from app.book import woolbook
from app.book.plan import RoleYarn
from app.book.shape import Counted, Stated
from app.book.woolbook import Portion
from app.planning.knitting.took import took
from app.planning.used import grams_in, knitted_in
from tests.books import a_book, a_holding, a_part, a_plan, a_skein, a_weighing, a_yarn, an_event

WORN = a_holding("worn", "garment", plan_id="pullover")
SKEIN = a_skein()
ENDS = a_holding("ends", "left-over", yarn_id="grey two-ply", plan_id="pullover")
SLEEVES = a_part("sleeves", position=2, copies=2, shape=Counted(60, 100))
HELD = {"G-1": (200.0, 450.0)}


def knit_in(seq, mg, mm):
    return an_event(seq, woolbook.use(EVERYTHING, (Portion(SKEIN, mg, mm),), WORN))


EVERYTHING = a_book(SKEIN, held=HELD).balances


def the_book(*records):
    others = [a_yarn(), SKEIN, WORN, ENDS, a_plan(state="being knit"), a_part(), SLEEVES]
    return a_book(*others, *records, held=HELD)


def test_what_went_in_is_shared_out_as_it_was_planned():
    """Body 229 × 120, sleeves 2 × 60 × 100 stitches: 69.6 and 30.4 % of 100 g."""
    told = {one.part_id: one for one in took(the_book(knit_in(2, 100_000, 225_000)), "pullover")}
    assert told["body"].mg == pytest.approx(69_605, abs=2)
    assert told["sleeves"].mm == pytest.approx(225_000 - told["body"].mm, abs=1)
    assert sum(one.mg for one in told.values()) == pytest.approx(100_000, abs=1)


def at(part_id, rows, g, minute):
    where = {"part_id": part_id, "rows": rows, "minute": minute}
    return a_weighing(mg=round(g * 1000), id=f"{part_id} {rows}", **where)


def test_a_part_whose_balls_told_more_has_the_larger_share():
    """The body goes 20 % faster than planned, the sleeves as planned."""
    per_row = 497.13 / 120 * 200 / 450
    weighed = [at("body", 0, 200.0, 1), at("body", 40, 200.0 - 48 * per_row, 2)]
    told = {
        one.part_id: one
        for one in took(the_book(knit_in(2, 100_000, 225_000), *weighed), "pullover")
    }
    assert told["body"].mg == pytest.approx(69_605, abs=2)
    sleeve = 497.13 / 27_480 * 60 * 200 / 450
    weighed += [at("sleeves", 0, 90.0, 3), at("sleeves", 40, 90.0 - 40 * sleeve, 4)]
    told = {
        one.part_id: one
        for one in took(the_book(knit_in(2, 100_000, 225_000), *weighed), "pullover")
    }
    assert told["body"].mg == pytest.approx(
        100_000 * 1.2 * 27_480 / (1.2 * 27_480 + 12_000), rel=0.01
    )


def test_nothing_knit_tells_nothing():
    assert took(the_book(), "pullover") == ()


def test_yarn_of_another_kind_counts_for_the_first():
    other = a_skein("W-1", None)
    event = an_event(
        2,
        woolbook.use(
            a_book(other, held={"W-1": (50.0, 100.0)}).balances,
            (Portion(other, 50_000, 100_000),),
            WORN,
        ),
    )
    book = a_book(
        a_yarn(), SKEIN, other, WORN, a_plan(), a_part(), event, held=HELD | {"W-1": (50.0, 100.0)}
    )
    (told,) = took(book, "pullover")
    assert (told.part_id, told.mg, told.mm) == ("body", 50_000, 100_000)


def test_a_garment_without_parts_has_none_that_took_anything():
    book = a_book(a_yarn(), SKEIN, WORN, a_plan(), knit_in(2, 100_000, 225_000), held=HELD)
    assert took(book, "pullover") == ()
    assert grams_in(book, "pullover") == {"grey two-ply": 100.0}


def test_a_part_without_need_has_no_share():
    nothing = a_part(shape=Counted(229, 0))
    book = a_book(a_yarn(), SKEIN, WORN, a_plan(), nothing, knit_in(2, 100_000, 1), held=HELD)
    assert took(book, "pullover") == ()


def test_a_stated_part_has_its_share_too():
    cuffs = a_part(
        "cuffs", position=3, shape=Stated(50_000), yarns=(RoleYarn("main", "grey two-ply"),)
    )
    told = {one.part_id for one in took(the_book(cuffs, knit_in(2, 9_000, 20_000)), "pullover")}
    assert told == {"body", "sleeves", "cuffs"}


def test_what_was_ripped_back_comes_off_what_was_knit_last():
    first, second = knit_in(2, 40_000, 90_000), knit_in(3, 20_000, 45_000)
    held = {"worn": woolbook.Balance(60_000, 0)}
    out = woolbook.rip(held, Portion(WORN, 30_000), [Portion(ENDS, 30_000, 67_500)])
    book = the_book(first, second, an_event(4, out))
    assert list(knitted_in(book)) == [("pullover", "G-1", 67.5)]
    assert grams_in(book, "pullover") == {"grey two-ply": 30.0}


def test_undone_it_counts_again():
    first = knit_in(2, 40_000, 90_000)
    held = {"worn": woolbook.Balance(40_000, 0)}
    out = an_event(3, woolbook.rip(held, Portion(WORN, 30_000), [Portion(ENDS, 30_000, 67_500)]))
    back = an_event(4, woolbook.undo(out, [*the_book(first).events, out]), undoes=3)
    assert list(knitted_in(the_book(first, out, back))) == [("pullover", "G-1", 90.0)]
    assert back.day == date(2026, 4, 30)


def test_another_garment_and_one_of_no_plan_take_nothing_of_this_one():
    loan = a_holding("loan", "garment", plan_id="loan")
    gift = a_holding("gift", "garment")
    events = [
        an_event(seq, woolbook.use(EVERYTHING, (Portion(SKEIN, 10_000, 22_500),), into))
        for seq, into in ((2, loan), (3, gift), (4, WORN))
    ]
    book = the_book(loan, gift, a_plan("loan"), *events)
    assert grams_in(book, "pullover") == {"grey two-ply": 10.0}
    assert [plan for plan, *_ in knitted_in(book)] == ["loan", "pullover"]
