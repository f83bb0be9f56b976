"""A garment made again, from the same yarn or another."""

import pytest

from app.book.gauge import Gauge
from app.book.plan import RoleYarn
from app.planning import reckon
from app.planning.again import again
from tests.books import a_book, a_part, a_person, a_plan, a_swatch, a_yarn
from tests.planning.learning.test_garments_seen import TUBE_M, book_of, old

SWATCH = a_swatch(yarn_id="grey two-ply")
GAUGE = Gauge(22.0, 30.0, needle_mm=4.0, swatch_id=SWATCH.id)


def shelf(*records, **plan):
    known = {"state": "finished", "gauge": GAUGE, "notes": "longer cuffs", "person_id": "Ines"}
    parts = records or (a_part(), a_part("sleeves", position=2, copies=2))
    return a_book(a_yarn(), a_yarn("brown"), a_person(), SWATCH, a_plan(**known | plan), *parts)


def made(book, yarn_id=None):
    return again(book, book.plan["pullover"], "new", yarn_id)


def test_it_is_a_new_plan_of_the_same_parts():
    book = shelf(measured=(), finished_on=None)
    plan, parts = made(book)
    assert (plan.id, plan.name, plan.state, plan.notes) == ("new", "pullover again", "intended", "")
    assert (plan.took, plan.cast_on, plan.finished_on) == ((), None, None)
    assert [(one.id, one.plan_id, one.copies) for one in parts] == [
        ("new-body", "new", 1),
        ("new-sleeves", "new", 2),
    ]
    assert plan.gauge == GAUGE


def test_another_yarn_takes_the_place_of_the_main_one_and_the_swatch_is_no_longer_its_own():
    contrast = RoleYarn("contrast", "grey two-ply")
    cuff = a_part("cuff", yarns=(RoleYarn("main", "grey two-ply"), contrast), gauge=GAUGE)
    plan, parts = made(shelf(a_part(yarns=(contrast,)), cuff), "brown")
    assert plan.yarns == (RoleYarn("main", "brown"),)
    assert (plan.gauge.swatch_id, plan.gauge.assumed_pct) == (None, 5.0)
    by_name = {one.name: one for one in parts}
    assert by_name["body"].yarns == (contrast,)
    assert by_name["cuff"].yarns == (RoleYarn("main", "brown"), contrast)
    assert by_name["cuff"].gauge.swatch_id is None


@pytest.mark.parametrize("gauge", [None, Gauge(22.0, 30.0)])
def test_a_gauge_without_a_swatch_stays(gauge):
    assert made(shelf(gauge=gauge), "brown")[0].gauge == gauge


def test_made_a_third_time_it_has_a_name_of_its_own():
    book = shelf(a_plan("other", name="pullover again"))
    assert made(book)[0].name == "pullover again, 2"


def test_parts_of_the_same_name_stay_two():
    pockets = a_part("one", name="pocket"), a_part("two", name="pocket", position=2)
    assert [one.id for one in made(shelf(*pockets))[1]] == ["new-pocket", "new-pocket-2"]


def test_it_is_reckoned_with_what_the_first_one_took():
    book = book_of(old(times=1.1))
    plan, parts = again(book, book.plan["old"], "new", None)
    need = reckon(book_of(old(times=1.1), plan, *parts)).plan("new").parts[0].need
    assert TUBE_M * 1.05 < need.value < TUBE_M * 1.1
