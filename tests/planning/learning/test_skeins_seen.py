from datetime import date

import pytest

from app.book.woolbook import Portion, use, wind
from app.planning.learning.skeins_seen import grist_seen, shrink_seen
from tests.books import a_book, a_holding, a_reading, a_skein, a_yarn, an_event

SEPTEMBER = date(2026, 9, 1)


def length(holding, m, finished, **other):
    id = f"{holding} {m} {finished}"
    return a_reading(holding, round(1000 * m), id=id, kind="length", finished=finished, **other)


def test_a_skein_reeled_before_and_after():
    book = a_book(
        a_yarn(), a_skein(), length("G-1", 200, False), length("G-1", 184, True, day=SEPTEMBER)
    )
    (found,) = shrink_seen(book)
    assert (found.measured, found.usual) == (pytest.approx(0.92), pytest.approx(0.92))
    assert (found.key, found.day) == ("shrink G-1", SEPTEMBER)


@pytest.mark.published
def test_the_printed_shrinkages():
    """600 yd became 433 yd (a spinner's published measurement, 2014): 27.8 % shorter."""
    book = a_book(
        a_yarn(),
        a_skein(),
        length("G-1", 600 * 0.9144, False),
        length("G-1", 433 * 0.9144, True),
    )
    (found,) = shrink_seen(book)
    assert 1 - found.measured == pytest.approx(0.278, abs=0.0005)


@pytest.mark.parametrize(
    "readings",
    [
        (length("G-1", 200, False),),
        (length("G-1", 200, True),),
        (length("G-1", 200, False), length("G-1", 190, True, wool="damp")),
        (length("G-1", 0, False), length("G-1", 190, True)),
    ],
)
def test_one_length_or_a_damp_one_tells_nothing(readings):
    assert list(shrink_seen(a_book(a_yarn(), a_skein(), *readings))) == []


def spun(*more, held=(90, 200), **yarn):
    reeled = length("G-1", 200, True)
    records = (a_yarn(**{"target_tex": 430.0} | yarn), a_skein(), reeled, *more)
    return a_book(*records, held={"G-1": held})


def test_a_skein_against_the_grist_meant():
    (found,) = grist_seen(spun())
    assert found.measured == pytest.approx(450 / 430)
    assert found.names.yarn == "grey two-ply"


@pytest.mark.parametrize("yarn", [{"target_tex": None}, {"bought": True}])
def test_a_yarn_of_no_target_or_from_a_shop_tells_nothing(yarn):
    assert list(grist_seen(spun(**yarn))) == []


def test_a_skein_only_weighed_tells_nothing_of_its_grist():
    assert (
        list(grist_seen(a_book(a_yarn(target_tex=430.0), a_skein(), held={"G-1": (90, 200)}))) == []
    )
    assert list(grist_seen(spun(held=(90, 0)))) == []


def test_a_skein_that_was_used_tells_what_it_was():
    book = spun(a_holding("garment", "garment"))
    skein, garment = book.holding["G-1"], book.holding["garment"]
    taken = use(book.balances, [Portion(skein, 80_000, 120_000)], garment)
    used = spun(garment, an_event(9, taken))
    (found,) = grist_seen(used)
    assert found.measured == pytest.approx(450 / 430)


def test_a_skein_wound_off_and_undone_still_tells():
    book = spun(a_holding("ball", "ball"))
    skein, ball = book.holding["G-1"], book.holding["ball"]
    wound = wind(book.balances, Portion(skein, 45_000, 90_000), [Portion(ball, 45_000, 90_000)])
    back = wound._replace(kind="undo", lines=())
    (found,) = grist_seen(spun(ball, an_event(9, wound), an_event(10, back, undoes=9)))
    assert found.measured == pytest.approx(450 / 430)
