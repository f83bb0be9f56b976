"""A size of a pattern is asked for and taken into a plan; a part of the same name stays it."""

from dataclasses import replace

import pytest

from app.book.checks import check
from app.book.pattern import PatternSize, SizePart
from app.book.shape import Runs, Stated
from app.craft.sizes import EASES
from app.planning.reckoning import reckon
from app.store.records import load_book, put
from app.work.pattern_take import SizeAsked, ask_size, take_size
from app.work.refusal import Refusal
from tests.patterns import five_sizes

INES = {"chest": 96.0}
STANDARD = next(one for one in EASES if one.name == "standard")


@pytest.fixture
def pattern(writing):
    put(writing, five_sizes())
    return five_sizes()


@pytest.fixture
def plan(writing):
    return load_book(writing).plan["pullover"]


def take(writing, plan, pattern, size="3", case="stitches", by="counts"):
    done = take_size(writing, plan, pattern, size, case, by)
    return done, load_book(writing)


def test_the_size_becomes_the_parts_of_the_plan(writing, plan, pattern):
    done, book = take(writing, plan, pattern)
    parts = book.parts_of["pullover"]
    assert [(one.name, one.copies) for one in parts] == [("Body", 1), ("Sleeves", 2), ("Yoke", 1)]
    assert all(isinstance(one.shape, Runs) for one in parts)
    kept = book.plan["pullover"]
    assert (kept.pattern_id, kept.size, kept.follows) == (pattern.id, "3", "stitches")
    assert kept.design is None
    assert check(book) == []
    assert done.freed == ()


def test_what_was_promised_to_a_part_of_the_same_name_stays(writing, plan, pattern):
    before = load_book(writing).promises_of["pullover"]
    _, book = take(writing, plan, pattern)
    (promise,) = book.promises_of["pullover"]
    assert promise.mm == before[0].mm
    assert book.part[promise.part_id].name == "Body"


def test_another_size_afterwards_takes_its_place(writing, plan, pattern):
    take(writing, plan, pattern)
    again = load_book(writing).plan["pullover"]
    done, book = take(writing, again, pattern, "5", "size", "stated")
    assert [one.name for one in book.parts_of["pullover"]] == ["Body", "Sleeves", "Yoke"]
    assert all(isinstance(one.shape, Stated) for one in done.parts)
    assert book.plan["pullover"].size == "5"
    assert len(book.promises_of["pullover"]) == 1


def test_parts_the_pattern_does_not_have_go_and_free_their_yarn(writing, plan):
    vest = PatternSize("M", 1040, None, (SizePart("Back", cast_on=110, rows=150),))
    pattern = five_sizes(sizes=(vest,))
    put(writing, pattern)
    done, book = take(writing, plan, pattern, "M")
    assert [one.name for one in book.parts_of["pullover"]] == ["Back"]
    assert {one.name for one in done.gone} == {"body", "sleeves"}
    assert book.promises_of.get("pullover", []) == []


def test_the_metres_of_the_answer_are_those_the_plan_will_have(writing, plan, pattern):
    asked = SizeAsked(pattern, "stitches", INES, STANDARD)
    best = ask_size(load_book(writing), plan, asked).best
    _, book = take(writing, plan, pattern, best.size.name)
    assert reckon(book).plan("pullover").need.value == pytest.approx(
        best.yarn.need.value, rel=0.005
    )


@pytest.mark.parametrize(
    ("measures", "words"),
    [({}, "Say what the chest measures."), ({"chest": 5.0}, "A chest must lie between 30")],
)
def test_a_body_that_is_not_known_is_asked_for(writing, plan, pattern, measures, words):
    with pytest.raises(Refusal, match=words) as refused:
        ask_size(load_book(writing), plan, SizeAsked(pattern, "size", measures, STANDARD))
    assert refused.value.field == "body"


@pytest.mark.parametrize(
    ("size", "by", "words"),
    [
        ("9", "counts", "Choose one of the sizes."),
        ("bare", "counts", "does not give stitches with rows or lengths for bare"),
        ("bare", "stated", "does not give an amount of yarn for bare"),
    ],
)
def test_a_size_that_does_not_say_enough(writing, plan, size, by, words):
    pattern = five_sizes(sizes=(PatternSize("bare", 1000),))
    put(writing, pattern)
    before = load_book(writing)
    with pytest.raises(Refusal, match=words):
        take_size(writing, plan, pattern, size, "stitches", by)
    assert load_book(writing) == before


def test_a_plan_without_a_gauge_takes_no_size(writing, plan, pattern):
    with pytest.raises(Refusal):
        take_size(writing, replace(plan, gauge=None), pattern, "3", "size", "counts")
