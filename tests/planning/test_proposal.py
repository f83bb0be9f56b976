"""A greedy proposal: sensible, explained, and never more than is free."""

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from app.book.plan import RoleYarn
from app.book.shape import Metres
from app.planning import reckon
from app.planning.proposal import propose
from tests.books import a_book, a_part, a_plan, a_promise, a_skein, a_yarn

GREY = "grey two-ply"


def shelf(lengths, yarn=GREY):
    return [a_yarn(yarn), *(a_skein(code, yarn) for code in lengths)]


def held(lengths, tex=450):
    return {code: (metres * tex / 1000, metres) for code, metres in lengths.items()}


def asking(lengths, *parts, plan=None, promises=(), tex=450):
    plan = plan or a_plan()
    return a_book(*shelf(lengths), plan, *parts, *promises, held=held(lengths, tex))


def proposed(book):
    promises = propose(book, reckon(book), "pullover")
    return {(one.part_id, one.holding_id): one.mm / 1000 for one in promises}


def part(metres, name="body", **other):
    return a_part(name, shape=Metres(metres * 1000), **other)


def test_the_skein_that_fits_best_is_taken():
    assert proposed(asking({"G-1": 400, "G-2": 120, "G-3": 110}, part(100))) == {
        ("body", "G-3"): 100
    }


def test_where_none_is_enough_the_largest_comes_first():
    assert proposed(asking({"G-1": 60, "G-2": 100, "G-3": 30}, part(150))) == {
        ("body", "G-2"): 100,
        ("body", "G-1"): 50,
    }


def test_the_largest_part_is_served_first():
    found = proposed(asking({"G-1": 300}, part(80, "cuff"), part(250)))
    assert found == {("body", "G-1"): 250, ("cuff", "G-1"): 50}


def test_each_choice_has_its_reason_and_is_only_proposed():
    book = asking({"G-1": 60, "G-2": 100}, part(150))
    promises = propose(book, reckon(book), "pullover")
    assert all(one.why and one.state == "proposed" for one in promises)
    assert len({one.id for one in promises}) == len(promises)


def test_what_is_promised_already_stays():
    book = asking({"G-1": 200, "G-2": 90}, part(150), promises=[a_promise("G-1", 100_000)])
    assert proposed(book) == {("body", "G-2"): 50}


def test_a_promise_in_full_leaves_nothing_to_propose():
    assert proposed(asking({"G-1": 200}, part(150), promises=[a_promise("G-1", 150_000)])) == {}


def test_the_plans_own_reserve_may_be_promised():
    book = asking({"G-1": 520}, a_part(), promises=[a_promise("G-1", 400_000)])
    assert proposed(book)[("body", "G-1")] == pytest.approx(97.1, abs=0.1)


def test_yarn_of_another_plan_is_not_touched():
    book = asking({"G-1": 200}, part(150))
    scarf, strip = a_plan("scarf"), a_part("strip", "scarf", shape=Metres(120_000))
    taken = a_promise("G-1", 120_000, plan_id="scarf", part_id="strip")
    book = replace(book, plans=(*book.plans, scarf), parts=(*book.parts, strip), promises=(taken,))
    reserve = reckon(book).plan("scarf").reserved_m
    assert reserve > 15
    assert proposed(book)[("body", "G-1")] == pytest.approx(80 - reserve, abs=0.002)


def test_without_a_yarn_chosen_one_that_suits_is_found():
    """Firmness √tex/l at 22 × 30: 450 tex gives 11.7, ordinary; 60 tex 4.3, open."""
    fine = [a_yarn("cobweb"), a_skein("C-1", "cobweb")]
    plan = a_plan(yarns=())
    grey = {"G-1": 300, "G-2": 300}
    book = a_book(*shelf(grey), *fine, plan, a_part(), held=held(grey) | held({"C-1": 900}, 60))
    assert {holding for _, holding in proposed(book)} == {"G-1", "G-2"}


def test_without_a_yarn_the_one_with_least_left_over_is_chosen():
    small, large = {"S-1": 510}, {"L-1": 900}
    book = a_book(
        *shelf(small, "small lot"), *shelf(large, "large lot"), a_plan(yarns=()), a_part(),
        held=held(small) | held(large),
    )  # fmt: skip
    assert {holding for _, holding in proposed(book)} == {"S-1"}


def test_without_a_yarn_that_is_enough_the_most_is_taken():
    small, large = {"S-1": 100}, {"L-1": 200}
    book = a_book(
        *shelf(small, "small lot"), *shelf(large, "large lot"), a_plan(yarns=()), a_part(),
        held=held(small) | held(large),
    )  # fmt: skip
    assert {holding for _, holding in proposed(book)} == {"L-1"}


def test_without_any_suitable_yarn_there_is_no_proposal():
    plan = a_plan(yarns=())
    assert proposed(asking({"G-1": 900}, a_part(), plan=plan, tex=60)) == {}


def test_a_part_with_a_yarn_of_its_own_gets_that():
    cream = {"C-1": 90}
    cuff = part(40, "cuff", yarns=(RoleYarn("main", "cream"),))
    grey = {"G-1": 300}
    book = a_book(
        *shelf(grey), *shelf(cream, "cream"), a_plan(), part(200), cuff,
        held=held(grey) | held(cream),
    )  # fmt: skip
    assert proposed(book) == {("body", "G-1"): 200, ("cuff", "C-1"): 40}


@pytest.mark.property
@settings(max_examples=60, deadline=None)
@given(
    st.lists(st.integers(1, 300), min_size=1, max_size=6),
    st.lists(st.integers(0, 400), min_size=1, max_size=4),
)
def test_never_more_than_is_free_nor_than_is_missing(lengths, needs):
    skeins = {f"G-{i}": metres for i, metres in enumerate(lengths)}
    parts = [part(metres, f"part {i}", position=i) for i, metres in enumerate(needs)]
    book = asking(skeins, *parts)
    found = proposed(book)
    for code, metres in skeins.items():
        assert sum(m for (_, holding), m in found.items() if holding == code) <= metres + 1e-6
    for one in parts:
        taken = sum(m for (name, _), m in found.items() if name == one.id)
        assert taken <= one.shape.mm / 1000 + 1e-6
    assert sum(found.values()) >= min(sum(lengths), sum(needs)) - 0.6 * len(needs) - 1
