"""On the needles: cast on, tick rows, weigh balls, rip back, finish; and no gram is lost by it."""

from datetime import date

import pytest
from sqlmodel import Session

from app.book.book import Book
from app.book.checks import check
from app.book.errors import HoldsTooLittle
from app.book.event import Balance
from app.book.gauge import Gauge
from app.book.person import Measure
from app.book.plan import Plan
from app.planning import reckon
from app.store.records import get, load_book, put
from app.work.knit_begin import begin_knitting
from app.work.knit_finish import Finished, Left, finish_knitting
from app.work.knit_rip import RipBack, rip_back
from app.work.knit_tick import Tap, tick
from app.work.knit_weigh import BallWeighed, Doubted, weigh_ball
from app.work.undo_records import remember, undo_change
from tests.books import a_promise

DAY = date(2026, 6, 1)
LATER = date(2026, 6, 20)


@pytest.fixture
def plan(writing: Session) -> Plan:
    """The pullover, cast on; G-1 (96 g, 213 m) is promised to its body."""
    found = get(writing, Plan, "pullover")
    assert found is not None
    return begin_knitting(writing, found, DAY)


def seen(rows: int, g: float, **other: object) -> BallWeighed:
    same = {"part_id": "body", "piece": 1, "holding_id": "G-1", "typed": f"{g:g}", "day": DAY}
    return BallWeighed(rows=rows, mg=round(g * 1000), scale_mg=1000, **same | other)


def rows(book: Book, part_id: str = "body", piece: int = 1) -> int:
    (found,) = (one for one in book.progress if (one.part_id, one.piece) == (part_id, piece))
    return found.rows


def worn(book: Book) -> Balance:
    (garment,) = (one for one in book.holdings if one.kind == "garment")
    return book.balances[garment.id]


def test_cast_on_settles_the_skeins_and_keeps_the_numbers(writing: Session, plan: Plan) -> None:
    book = load_book(writing)
    assert [one.state for one in book.promises] == ["settled"]
    assert plan.cast_on is not None
    assert plan.cast_on.day == DAY
    numbers = {one.name: one.value for one in plan.cast_on.numbers}
    assert numbers["yarn in a stitch, body"] == pytest.approx(1.8091, abs=1e-4)


def test_another_gauge_learned_later_changes_no_history(writing: Session, plan: Plan) -> None:
    before = reckon(load_book(writing)).plan("pullover").need
    put(writing, get(writing, Plan, "hat"))
    swapped = Plan(**{**_fields(plan), "gauge": Gauge(22.0, 30.0, washed=False)})
    put(writing, swapped)
    after = reckon(load_book(writing)).plan("pullover").need
    assert after.value == pytest.approx(before.value)
    assert after.u == pytest.approx(before.u)


def _fields(plan: Plan) -> dict[str, object]:
    return {name: getattr(plan, name) for name in plan.__dataclass_fields__}


def test_a_tap_is_counted_once(writing: Session, plan: Plan) -> None:
    taps = (Tap("a", "body", 1, 1), Tap("b", "body", 1, 1), Tap("a", "body", 1, 1))
    assert tick(writing, plan.id, taps, DAY) == 2
    assert tick(writing, plan.id, taps[:1], LATER) == 0
    assert rows(load_book(writing)) == 2


def test_taps_of_two_devices_come_together(writing: Session, plan: Plan) -> None:
    tick(writing, plan.id, (Tap("phone 1", "body", 1, 5),), DAY)
    tick(writing, plan.id, (Tap("laptop 1", "body", 1, 1), Tap("laptop 2", "body", 1, -1)), DAY)
    tick(writing, plan.id, (Tap("phone 2", "sleeves", 2, 3),), DAY)
    book = load_book(writing)
    assert (rows(book), rows(book, "sleeves", 2)) == (5, 3)


def test_no_piece_has_fewer_rows_than_none_or_more_than_it_is_long(
    writing: Session, plan: Plan
) -> None:
    tick(writing, plan.id, (Tap("a", "body", 1, -4),), DAY)
    assert rows(load_book(writing)) == 0
    tick(writing, plan.id, (Tap("b", "body", 1, 500),), DAY)
    assert rows(load_book(writing)) == 120


@pytest.mark.parametrize(("part", "piece"), [("gone", 1), ("crown", 1), ("body", 2), ("body", 0)])
def test_a_tap_for_a_piece_that_is_not_there_moves_nothing(
    writing: Session, plan: Plan, part: str, piece: int
) -> None:
    assert tick(writing, plan.id, (Tap("a", part, piece, 1),), DAY) == 1
    assert load_book(writing).progress == ()


def test_an_old_tap_is_forgotten_in_the_end(writing: Session, plan: Plan) -> None:
    tick(writing, plan.id, (Tap("a", "body", 1, 1),), date(2024, 1, 1))
    assert tick(writing, plan.id, (Tap("a", "body", 1, 1),), DAY) == 1


def test_what_a_ball_lost_is_in_the_garment(writing: Session, plan: Plan) -> None:
    """48 of 96 g left: 106.5 of 213 m went in, by hand; 100 m were promised, now none."""
    weigh_ball(writing, plan.id, seen(26, 48.0))
    book = load_book(writing)
    assert book.balances["G-1"] == Balance(48_000, 106_500)
    assert worn(book) == Balance(48_000, 0)
    assert rows(book) == 26
    assert book.promises == ()
    assert [(one.rows, one.mg, one.typed) for one in book.weighings] == [(26, 48_000, "48")]
    assert check(book) == []


def test_some_of_a_promise_stays(writing: Session, plan: Plan) -> None:
    weigh_ball(writing, plan.id, seen(12, 72.0))
    (promise,) = load_book(writing).promises
    assert promise.mm == 100_000 - 53_250


def test_a_heavier_ball_is_asked_about_and_then_taken_for_moisture(
    writing: Session, plan: Plan
) -> None:
    with pytest.raises(Doubted) as doubted:
        weigh_ball(writing, plan.id, seen(2, 104.0))
    assert doubted.value.doubt.what == "heavier"
    assert doubted.value.doubt.expected_g == 96.0
    assert load_book(writing).weighings == ()
    weigh_ball(writing, plan.id, seen(2, 104.0, sure=True))
    book = load_book(writing)
    assert book.balances["G-1"] == Balance(104_000, 213_000)
    assert check(book) == []


def test_a_ball_of_another_garment_is_asked_about(writing: Session, plan: Plan) -> None:
    with pytest.raises(Doubted) as doubted:
        weigh_ball(writing, plan.id, seen(2, 40.0, holding_id="W-1"))
    assert doubted.value.doubt.what == "wrong"


def test_a_ball_far_from_what_it_should_weigh_is_asked_about(writing: Session, plan: Plan) -> None:
    weigh_ball(writing, plan.id, seen(0, 96.0))
    weigh_ball(writing, plan.id, seen(10, 77.0))
    with pytest.raises(Doubted) as doubted:
        weigh_ball(writing, plan.id, seen(20, 12.0))
    assert doubted.value.doubt.what == "far"
    assert doubted.value.doubt.expected_g == pytest.approx(58.5, abs=1.5)
    weigh_ball(writing, plan.id, seen(20, 59.0))


def test_weighed_earlier_in_the_work_is_not_doubted(writing: Session, plan: Plan) -> None:
    """A weighing noted late, of a row already passed: the row order tells nothing odd."""
    weigh_ball(writing, plan.id, seen(20, 60.0))
    weigh_ball(writing, plan.id, seen(10, 60.0))
    assert rows(load_book(writing)) == 20


def test_a_weighing_noted_late_moves_nothing(writing: Session, plan: Plan) -> None:
    """96 g, 78 at row 10 and 60 at row 20, noted in the other order: 36 g are knit in."""
    weigh_ball(writing, plan.id, seen(20, 60.0))
    with pytest.raises(Doubted):
        weigh_ball(writing, plan.id, seen(10, 78.0))
    weigh_ball(writing, plan.id, seen(10, 78.0, sure=True))
    book = load_book(writing)
    assert (book.balances["G-1"].mg, worn(book).mg, rows(book)) == (60_000, 36_000, 20)
    assert check(book) == []


def test_a_ball_that_grew_further_on_took_up_moisture(writing: Session, plan: Plan) -> None:
    weigh_ball(writing, plan.id, seen(10, 60.0))
    weigh_ball(writing, plan.id, seen(12, 62.0, sure=True))
    book = load_book(writing)
    assert (book.balances["G-1"].mg, worn(book).mg) == (62_000, 36_000)


def test_what_a_wrong_weighing_took_is_taken_back(writing: Session, plan: Plan) -> None:
    """Another ball was on the scale at row 10: 12 g. At row 20 it is 60 g: 36 g are knit in, and
    the metres of the ball are those of its grist again. Of the 186.4 m that came back, 79.9 m are
    knit in and the rest is promised again."""
    weigh_ball(writing, plan.id, seen(10, 12.0))
    was = load_book(writing)
    weigh_ball(writing, plan.id, seen(20, 60.0, sure=True))
    book = load_book(writing)
    assert (book.balances["G-1"], worn(book).mg) == (Balance(60_000, 133_125), 36_000)
    assert reckon(book).plan("pullover").used_m == pytest.approx(79.9, abs=0.1)
    assert [one.mm for one in book.promises] == [106_500]
    assert check(book) == []
    key = remember(writing, was, "weighed")
    undo_change(writing, key, LATER)
    before = load_book(writing)
    assert (before.balances["G-1"].mg, worn(before).mg) == (12_000, 84_000)
    assert before.weighings == was.weighings
    assert before.promises == was.promises


def test_what_came_back_stays_with_another_garment_it_was_promised_to_since(
    writing: Session, plan: Plan
) -> None:
    weigh_ball(writing, plan.id, seen(10, 12.0))
    put(writing, a_promise("G-1", 213_000, plan_id="hat", part_id="crown"))
    weigh_ball(writing, plan.id, seen(20, 60.0, sure=True))
    assert [one.plan_id for one in load_book(writing).promises] == ["hat"]


def test_a_wrong_weighing_that_was_ripped_back_since_is_left_as_it_is(
    writing: Session, plan: Plan
) -> None:
    weigh_ball(writing, plan.id, seen(10, 12.0))
    rip_back(writing, plan.id, RipBack("body", 1, 0, 80_000, LATER))
    weigh_ball(writing, plan.id, seen(12, 60.0, sure=True))
    book = load_book(writing)
    assert (book.balances["G-1"].mg, worn(book).mg) == (60_000, 4_000)
    assert check(book) == []


def test_as_many_weighings_are_taken_back_as_were_wrong(writing: Session, plan: Plan) -> None:
    weigh_ball(writing, plan.id, seen(2, 92.0))
    weigh_ball(writing, plan.id, seen(10, 50.0, sure=True))
    weigh_ball(writing, plan.id, seen(11, 12.0, sure=True))
    weigh_ball(writing, plan.id, seen(20, 60.0, sure=True))
    book = load_book(writing)
    assert (book.balances["G-1"].mg, worn(book).mg) == (60_000, 36_000)
    undone = [one.undoes for one in book.events if one.undoes]
    assert len(undone) == 2


def test_a_ball_that_no_row_tells_of_grew(writing: Session, plan: Plan) -> None:
    """The crown is no part of this garment: no place tells which weighing came first."""
    weigh_ball(writing, plan.id, seen(10, 60.0, part_id="sleeves"))
    weigh_ball(writing, plan.id, seen(0, 70.0, part_id="crown", sure=True))
    assert load_book(writing).balances["G-1"].mg == 70_000


def test_ripped_yarn_is_a_holding_of_its_own_and_promised_again(
    writing: Session, plan: Plan
) -> None:
    weigh_ball(writing, plan.id, seen(0, 96.0))
    weigh_ball(writing, plan.id, seen(20, 60.0))
    (back,) = rip_back(writing, plan.id, RipBack("body", 1, 10, 17_500, LATER))
    book = load_book(writing)
    assert book.balances[back.id].mg == 17_500
    assert worn(book).mg == 36_000 - 17_500
    assert book.balances["G-1"].mg == 60_000
    assert rows(book) == 10
    assert back.code == "pullover, ripped back"
    assert {one.holding_id for one in book.promises} >= {back.id}
    assert check(book) == []


def test_ripped_yarn_that_nobody_weighed_is_what_the_rows_were_to_take(
    writing: Session, plan: Plan
) -> None:
    """Ten rows of the tube take 41.4 m: 18.6 g of this yarn."""
    weigh_ball(writing, plan.id, seen(20, 60.0))
    (back,) = rip_back(writing, plan.id, RipBack("body", 1, 10, None, LATER))
    held = load_book(writing).balances[back.id]
    assert held.mm == pytest.approx(41_428, abs=5)
    assert held.mg == pytest.approx(18_600, abs=200)


def test_no_more_comes_out_than_went_in(writing: Session, plan: Plan) -> None:
    weigh_ball(writing, plan.id, seen(20, 95.0, sure=True))
    (back,) = rip_back(writing, plan.id, RipBack("body", 1, 0, None, LATER))
    assert load_book(writing).balances[back.id].mg == 1_000
    weigh_ball(writing, plan.id, seen(20, 93.0, sure=True))
    with pytest.raises(HoldsTooLittle):
        rip_back(writing, plan.id, RipBack("body", 1, 0, 50_000, LATER))


def test_rows_that_are_not_done_give_no_yarn(writing: Session, plan: Plan) -> None:
    assert rip_back(writing, plan.id, RipBack("body", 1, 10, None, LATER)) == ()
    assert rows(load_book(writing)) == 10


def test_what_was_ripped_back_counts_as_knit_no_more(writing: Session, plan: Plan) -> None:
    weigh_ball(writing, plan.id, seen(20, 60.0))
    used = reckon(load_book(writing)).plan("pullover").used_m
    rip_back(writing, plan.id, RipBack("body", 1, 10, 18_000, LATER))
    assert reckon(load_book(writing)).plan("pullover").used_m < used * 0.55


def test_a_finished_garment_keeps_what_its_parts_took(writing: Session, plan: Plan) -> None:
    weigh_ball(writing, plan.id, seen(20, 60.0))
    told = Finished(
        LATER,
        left=(Left("G-1", 6_000),),
        garment_mg=91_000,
        mending_mm=5_000,
        mending_of="G-1",
        minutes=1_000,
        measured=(Measure("chest", 1050),),
        notes="knit the cuffs longer next time",
    )
    done = finish_knitting(writing, plan, told)
    book = load_book(writing)
    assert (done.state, done.finished_on) == ("finished", LATER)
    assert done.measured == told.measured
    assert done.notes.endswith("knit the cuffs longer next time")
    assert sum(one.mg for one in done.took) == pytest.approx(90_000, abs=2)
    assert sum(one.minutes for one in done.took) == pytest.approx(1_000, abs=2)
    assert {one.part_id for one in done.took} == {"body", "sleeves"}
    (mending,) = (one for one in book.holdings if one.place == "with the garment")
    assert book.balances[mending.id].mm == 5_000
    assert book.balances["G-1"].mg + book.balances[mending.id].mg == 6_000
    assert worn(book).mg == 91_000
    assert book.promises_of.get("pullover", []) == []
    assert check(book) == []


def test_what_weighs_more_than_before_is_moisture(writing: Session, plan: Plan) -> None:
    done = finish_knitting(writing, plan, Finished(LATER, left=(Left("G-1", 97_000),)))
    book = load_book(writing)
    assert book.balances["G-1"] == Balance(97_000, 213_000)
    assert done.took == ()
    assert check(book) == []


def test_no_yarn_for_mending_is_kept_from_an_empty_ball(writing: Session, plan: Plan) -> None:
    told = Finished(LATER, left=(Left("G-1", 0),), mending_mm=5_000, mending_of="G-1")
    finish_knitting(writing, plan, told)
    assert not [one for one in load_book(writing).holdings if one.place == "with the garment"]
