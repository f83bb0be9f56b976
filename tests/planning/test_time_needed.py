from datetime import date

import pytest

from app.book.settings import Settings
from app.book.shape import Metres
from app.book.spinning import Spinning
from app.planning import reckon
from app.planning.time_days import DRYING_DAYS, days
from app.planning.time_needed import jobs, time_needed
from tests.books import (
    DAY,
    a_book,
    a_fleece,
    a_holding,
    a_part,
    a_plan,
    a_reading,
    a_stint,
    a_yarn,
)

TODAY = date(2026, 5, 1)


def wanting(*more, state="carded", grams=5000.0, metres=400, settings=None, **yarn):
    """A garment of 400 m of a yarn whose fleece waits in that state."""
    made = a_yarn(**{"target_tex": 450.0, "fleece_id": "Bramble"} | yarn)
    wool = a_holding("F-1", fleece_id="Bramble", state=state)
    plan = a_plan(wanted_by=None) if not any(type(one).__name__ == "Plan" for one in more) else None
    part = a_part(shape=Metres(1000 * metres))
    records = [made, a_fleece(yield_pct=60.0), wool, part, *([plan] if plan else []), *more]
    return a_book(*records, held={"F-1": (grams, 0)}, settings=settings)


def job_of(book):
    (found,) = jobs(book, reckon(book))
    return {one.work: one.hours.value for one in found.tasks}, found


def test_the_hours_of_carded_wool_by_hand():
    """The line's metres m: plied m/0.92, singles twice m/0.92/0.95; 180 and 250 m an hour, and
    300 g of yarn an hour to finish."""
    book = wanting()
    (line,) = [one for one in reckon(book).work if one.kind == "spin"]
    hours, job = job_of(book)
    assert list(hours) == ["spin", "ply", "finish"]
    assert hours["spin"] == pytest.approx(2 * line.m / 0.92 / 0.95 / 180)
    assert hours["ply"] == pytest.approx(line.m / 0.92 / 250)
    assert hours["finish"] == pytest.approx(line.g / 300)
    assert job.hours.value == pytest.approx(sum(hours.values()))
    assert job.knit.value == pytest.approx(reckon(book).plan("pullover").need.value / 27)


@pytest.mark.parametrize(
    ("state", "works"),
    [
        ("raw", ["skirt", "scour", "card", "spin", "ply", "finish"]),
        ("skirted", ["scour", "card", "spin", "ply", "finish"]),
        ("drying", ["card", "spin", "ply", "finish"]),
        ("scoured", ["card", "spin", "ply", "finish"]),
        ("part spun", ["spin", "ply", "finish"]),
    ],
)
def test_every_step_that_lies_ahead_is_counted(state, works):
    assert list(job_of(wanting(state=state))[0]) == works


def test_a_yarn_of_combed_singles_is_combed_and_not_plied():
    book = wanting(state="scoured", plies=1, spinning=Spinning(preparation="combed"))
    assert list(job_of(book)[0]) == ["comb", "spin", "finish"]


def test_her_own_pace_shortens_the_list():
    quick = [
        a_stint(str(i), mg=None, mm=600_000, minutes=120, yarn_id="grey two-ply") for i in range(9)
    ]
    assert job_of(wanting(*quick))[0]["spin"] < 0.7 * job_of(wanting())[0]["spin"]


def test_nothing_to_spin_is_no_time():
    found = time_needed(a_book(), reckon(a_book()), TODAY)
    assert (found.turns, found.hours.value, found.evenings.value) == ((), 0.0, 0.0)
    bought = wanting(grams=0.0)
    assert jobs(bought, reckon(bought)) == []


def test_evenings_follow_from_the_settings():
    book = wanting(settings=Settings(evening_minutes=60))
    found = time_needed(book, reckon(book), TODAY)
    (turn,) = found.turns
    assert found.evenings.value == pytest.approx(found.hours.value)
    assert turn.begins == TODAY
    assert (turn.ready - TODAY).days == int(found.hours.value)
    assert turn.late_days == 0


def two(first=None, second=None):
    """A long garment and a short one of one yarn, each wanted by a day or by none."""
    scarf = a_plan("scarf", wanted_by=second, priority=2)
    more = a_part("all of it", "scarf", shape=Metres(100_000))
    return wanting(a_plan(wanted_by=first, priority=1), scarf, more, metres=900)


def order(book):
    found = time_needed(book, reckon(book), TODAY)
    return [one.job.plan.id for one in found.turns]


def test_the_short_one_first_unless_the_long_one_has_a_day():
    assert order(two()) == ["scarf", "pullover"]
    assert order(two(first=date(2026, 5, 2))) == ["pullover", "scarf"]
    assert order(two(first=date(2027, 5, 2))) == ["scarf", "pullover"]


def test_what_is_late_is_said():
    book = two(first=date(2026, 5, 2))
    turn = time_needed(book, reckon(book), TODAY).turns[0]
    assert turn.late_days == (turn.knit_by - date(2026, 5, 2)).days > 0


def test_the_days_of_the_calendar():
    drying = a_holding("F-2", fleece_id="Bramble", state="drying")
    damp = a_reading("F-2", 800_000, wool="damp", day=DAY)
    book = wanting(drying, damp)
    book = a_book(
        *book.yarns,
        *book.fleeces,
        *[one for one in book.holdings if one.id in ("F-1", "F-2")],
        *book.plans,
        *book.parts,
        damp,
        held={"F-1": (5000, 0), "F-2": (800, 0)},
    )
    found = {one.uid: one for one in days(book, reckon(book), TODAY)}
    assert found["dry-F-2"].first.toordinal() == DAY.toordinal() + DRYING_DAYS
    assert found["dry-F-2"].title == "Weigh F-2: is it dry?"
    work = found["wool-pullover"]
    assert (work.title, work.first) == ("Wool for pullover", TODAY)
    assert work.about.startswith("spin grey two-ply: ")
    assert work.last > TODAY
