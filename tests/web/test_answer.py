"""The answer in words: short, waiting, enough, nothing to reckon yet, done."""

from dataclasses import replace

import pytest

from app.book.book import Book
from app.book.plan import RoleYarn
from app.book.settings import Settings
from app.book.shape import Counted, Metres
from app.planning import reckon
from app.web.pages.answer import (
    Sentence,
    answer_in_short,
    answer_sentence,
    counted,
    done_sentence,
    listed,
)
from app.web.pages.budget_bar import NEED_AT, budget_bar
from app.web.pages.garments import shelf_sentence
from app.web.pages.plan_line import plan_lines
from app.web.shown import Shown
from tests.books import a_book, a_part, a_plan, a_promise, a_skein, a_yarn

SHOWN = Shown(Settings())


def said(book: Book, plan_id: str = "pullover") -> Sentence:
    return answer_sentence(reckon(book).plan(plan_id), book, SHOWN)


def plain(sentence: Sentence) -> str:
    return f"{sentence.lead}{sentence.rest}".replace("\u202f", " ")


def small(*more: object, rows: int = 20, held_m: float = 213.0) -> Book:
    """A cowl of 100 stitches × `rows`, 1.8091 cm a stitch: 36.2 m for 20 rows."""
    cowl = a_part(shape=Counted(100, rows))
    return a_book(a_yarn(), a_skein(), a_plan(), cowl, *more, held={"G-1": (96.0, held_m)})


def test_enough_says_how_surely_and_what_is_left() -> None:
    sentence = said(small(a_promise(mm=60_000)))
    assert sentence.tone == "enough"
    assert plain(sentence).startswith("Enough: it reaches the end ")
    assert "will be left" in plain(sentence)


def test_not_promised_yet_says_how_much_would_do() -> None:
    sentence = said(small())
    assert sentence.tone == "waiting"
    assert plain(sentence).startswith("Not promised yet: ")
    assert "of grey two-ply (about " in plain(sentence)
    assert "and the shelf has it free." in plain(sentence)


def test_short_says_metres_grams_and_skeins() -> None:
    sentence = said(small(rows=200))
    assert sentence.tone == "short"
    text = plain(sentence)
    assert text.startswith("Short by ")
    assert " m of grey two-ply: about " in text
    assert " g of yarn, one skein. Another 213 m is free" in text
    assert text.endswith("you asked for 18 times in 20.")


def test_in_a_list_a_short_plan_still_says_what_is_missing() -> None:
    book = small(rows=200)
    sentence = answer_in_short(reckon(book).plan("pullover"), book, SHOWN)
    assert " g of yarn, one skein." in plain(sentence)
    assert "you asked for" not in plain(sentence)


def test_in_a_list_enough_is_said_without_the_left_over() -> None:
    book = small(a_promise(mm=60_000))
    sentence = answer_in_short(reckon(book).plan("pullover"), book, SHOWN)
    assert "left" not in plain(sentence)


def test_short_of_two_yarns_names_both() -> None:
    band = a_part("band", shape=Metres(90_000), yarns=(RoleYarn("main", "white"),))
    text = plain(said(small(a_yarn("white"), band, rows=200)))
    assert " m of grey two-ply (about " in text
    assert " m of white and " in text


def test_a_yarn_to_be_chosen_is_named_so() -> None:
    book = a_book(a_plan(yarns=()), a_part())
    assert " m of a yarn still to be chosen." in plain(said(book))


@pytest.mark.parametrize(
    ("parts", "words"),
    [
        ((), "add the first part of it."),
        (
            (a_part(), a_part("fringe", position=2, shape=Metres(9_000))),
            "say what gauge body will be knit to, or choose the yarn.",
        ),
        ((a_part(),), "say what gauge body will be knit to, or choose the yarn."),
        (
            (a_part(), a_part("sleeves", position=2)),
            "say what gauge body and sleeves will be knit to, or choose the yarn.",
        ),
    ],
)
def test_what_is_missing_before_anything_can_be_reckoned(
    parts: tuple[object, ...], words: str
) -> None:
    book = a_book(a_plan(gauge=None, yarns=()), *parts)
    assert plain(said(book)) == f"Nothing to reckon yet: {words}"
    in_short = answer_in_short(reckon(book).plan("pullover"), book, SHOWN)
    assert in_short.tone == "idle"


def test_a_plan_that_is_done_wants_nothing() -> None:
    plan = a_plan(state="put away")
    assert plain(done_sentence(plan, a_book(plan), SHOWN)) == "Put away."


@pytest.mark.parametrize(
    ("names", "words"),
    [([], ""), (["a"], "a"), (["a", "b"], "a and b"), (["a", "b", "c"], "a, b and c")],
)
def test_words_in_a_row(names: list[str], words: str) -> None:
    assert listed(names) == words


@pytest.mark.parametrize(
    ("count", "words"), [(0, "no skeins"), (1, "one skein"), (2, "two skeins"), (14, "14 skeins")]
)
def test_counted_in_words(count: int, words: str) -> None:
    assert counted(count, "skein") == words


def test_every_garment_covered() -> None:
    book = small(a_promise(mm=60_000))
    lines = plan_lines(book, reckon(book), SHOWN)
    assert shelf_sentence(lines) == "Every garment is covered."


def test_the_only_garment_is_not_covered() -> None:
    book = small()
    lines = plan_lines(book, reckon(book), SHOWN)
    assert shelf_sentence(lines).endswith("No garment is covered yet.")


def test_one_of_two_garments_covered() -> None:
    book = small(a_promise(mm=60_000), a_plan("hat", priority=2, yarns=()))
    lines = plan_lines(book, reckon(book), SHOWN)
    assert shelf_sentence(lines) == "One of two garments is covered."


def test_the_garments_of_one_person() -> None:
    book = small(a_plan("hat", priority=2))
    assert [one.name for one in plan_lines(book, reckon(book), SHOWN)] == ["pullover", "hat"]
    assert plan_lines(book, reckon(book), SHOWN, person_id="Ines") == ()


def test_the_bar_of_a_covered_part_is_firm_to_its_end() -> None:
    (part,) = reckon(small(a_promise(mm=200_000))).plan("pullover").parts
    bar = budget_bar(part)
    assert (bar.end, bar.soft) == (100.0, 0.0)


def test_the_bar_of_a_short_part_ends_softly_before_the_need() -> None:
    (part,) = reckon(small(a_promise(mm=18_000))).plan("pullover").parts
    bar = budget_bar(part)
    assert bar.end == pytest.approx(NEED_AT * 18 / part.need.value, abs=0.2)
    assert bar.soft == pytest.approx(2 * NEED_AT * part.need.u / part.need.value, abs=0.1)


def test_the_bar_of_a_part_without_a_need_is_empty() -> None:
    (part,) = reckon(small(a_promise())).plan("pullover").parts
    nothing = replace(part, need=part.need.scaled(0.0))
    assert budget_bar(nothing).end == 0.0


def test_where_something_is_sure_to_be_left_it_says_at_least_how_much() -> None:
    text = plain(said(small(a_promise(mm=200_000))))
    assert text.startswith("Enough: it reaches the end practically every time, and about ")
    assert " m will be left, at least 1" in text
