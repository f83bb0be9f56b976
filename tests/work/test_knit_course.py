"""Another needle, size or yarn from here on: only the rows to come are reckoned anew."""

from dataclasses import replace
from datetime import date

import pytest
from sqlmodel import Session

from app.book.checks import check
from app.book.gauge import Gauge
from app.book.plan import Plan
from app.book.sequence import Sequence, SequenceYarn
from app.planning import reckon
from app.planning.knitting.cast_on import LOOP
from app.planning.knitting.split import Otherwise
from app.store.records import get, load_book, put
from app.work.knit_begin import begin_knitting
from app.work.knit_course import CannotTurn, knit_otherwise, renew_cast_on
from app.work.knit_tick import Tap, tick
from app.work.knit_weigh import BallWeighed, weigh_ball
from app.work.part_save import add_part, change_part
from app.work.plan_save import change_plan
from tests.books import a_part, a_promise

DAY = date(2026, 6, 1)
TIGHT = Gauge(24.0, 33.0)


@pytest.fixture
def plan(writing: Session) -> Plan:
    """The pullover, 40 rows of its body knit from G-1 by two weighings as planned."""
    found = get(writing, Plan, "pullover")
    assert found is not None
    begun = begin_knitting(writing, found, DAY)
    weigh(writing, 0, 96.0)
    weigh(writing, 20, 58.8)
    weigh(writing, 40, 21.5)
    return begun


def weigh(writing: Session, rows: int, g: float) -> None:
    seen = BallWeighed("body", 1, rows, "G-1", round(g * 1000), f"{g}", 100, DAY, sure=True)
    weigh_ball(writing, "pullover", seen)


def need(writing: Session) -> float:
    return reckon(load_book(writing)).plan("pullover").need.value


def test_cut_and_left_alone_nothing_is_reckoned_otherwise(writing: Session, plan: Plan) -> None:
    before = need(writing)
    rest = knit_otherwise(writing, plan.id, "body", Otherwise())
    assert need(writing) == pytest.approx(before, rel=0.002)
    book = load_book(writing)
    assert [one.name for one in book.parts_of[plan.id]] == ["body", rest.name, "sleeves"]
    assert rest.name == "body, from round 41"
    assert check(book) == []


def test_another_gauge_counts_for_the_rows_to_come_only(writing: Session, plan: Plan) -> None:
    """80 rows of 229 stitches: at 24 × 33, 88 rows and yarn in a stitch of 1.6514 cm, for 1.8091:
    332.8 m for 331.4, and what is knit is what it was."""
    before = need(writing)
    rest = knit_otherwise(writing, plan.id, "body", Otherwise(TIGHT))
    assert rest.shape.runs[0].rows == 88
    assert need(writing) == pytest.approx(before + 1.4, abs=2.5)
    after = load_book(writing).plan["pullover"].cast_on
    numbers = {one.name: one.value for one in after.numbers}
    assert numbers[LOOP + "body"] == pytest.approx(1.8091, abs=1e-4)
    assert numbers[LOOP + rest.id] == pytest.approx(1.6514, abs=1e-4)


def test_what_is_promised_goes_to_the_rows_to_come(writing: Session, plan: Plan) -> None:
    put(writing, a_promise("G-2", 90_000))
    put(writing, a_promise("W-1", 90_000, part_id="sleeves"))
    rest = knit_otherwise(writing, plan.id, "body", Otherwise(rows=60))
    promised = {one.holding_id: one.part_id for one in load_book(writing).promises}
    assert promised == {"G-2": rest.id, "W-1": "sleeves"}


def test_another_yarn_frees_the_old_one(writing: Session, plan: Plan) -> None:
    put(writing, a_promise("G-2", 90_000))
    put(writing, a_promise("W-1", 20_000, role="trim"))
    rest = knit_otherwise(writing, plan.id, "body", Otherwise(yarn_id="white single"))
    assert rest.yarns[0].yarn_id == "white single"
    assert [(one.holding_id, one.part_id) for one in load_book(writing).promises] == [
        ("W-1", rest.id)
    ]


def test_pieces_at_different_rows(writing: Session, plan: Plan) -> None:
    tick(writing, plan.id, (Tap("a", "sleeves", 1, 10),), DAY)
    with pytest.raises(CannotTurn, match="different rows"):
        knit_otherwise(writing, plan.id, "sleeves", Otherwise())
    tick(writing, plan.id, (Tap("b", "sleeves", 2, 10),), DAY)
    assert knit_otherwise(writing, plan.id, "sleeves", Otherwise()).copies == 2


def test_a_part_that_is_not_begun(writing: Session, plan: Plan) -> None:
    with pytest.raises(CannotTurn, match="Nothing of it is knit"):
        knit_otherwise(writing, plan.id, "sleeves", Otherwise())


def test_yarns_that_take_turns(writing: Session, plan: Plan) -> None:
    turns = Sequence("alternate", (SequenceYarn("main", 0.5, 0.5), SequenceYarn("other", 0.5, 0.5)))
    put(writing, replace(load_book(writing).part["body"], sequence=turns))
    with pytest.raises(CannotTurn, match="take turns"):
        knit_otherwise(writing, plan.id, "body", Otherwise())


def test_a_gauge_changed_on_purpose_renews_its_number(writing: Session, plan: Plan) -> None:
    was = load_book(writing)
    change_part(writing, replace(was.part["sleeves"], gauge=TIGHT))
    kept = load_book(writing).plan[plan.id].cast_on
    numbers = {one.name: one.value for one in kept.numbers}
    assert numbers[LOOP + "sleeves"] == pytest.approx(1.6514, abs=1e-4)
    assert numbers[LOOP + "body"] == pytest.approx(1.8091, abs=1e-4)
    assert kept.day == DAY


def test_so_does_the_gauge_of_the_plan_and_a_new_part_has_its_own(
    writing: Session, plan: Plan
) -> None:
    change_plan(writing, replace(plan, gauge=TIGHT))
    add_part(writing, a_part("collar", gauge=Gauge(22.0, 30.0)))
    numbers = {one.name: one.value for one in load_book(writing).plan[plan.id].cast_on.numbers}
    assert numbers[LOOP + "body"] == pytest.approx(1.6514, abs=1e-4)
    assert numbers[LOOP + "collar"] == pytest.approx(1.8091, abs=1e-4)


@pytest.mark.parametrize("state", ["intended", "gone"])
def test_no_number_is_renewed_of_a_plan_off_the_needles(writing: Session, state: str) -> None:
    was = load_book(writing)
    renew_cast_on(writing, was, "hat" if state == "intended" else "gone")
    assert load_book(writing) == was


def test_nothing_changed_renews_nothing(writing: Session, plan: Plan) -> None:
    was = load_book(writing)
    renew_cast_on(writing, was, plan.id)
    assert load_book(writing) == was
