import pytest

from app.craft.ranges import ranges
from app.planning.learning import learn
from app.planning.learning.usual import PACES
from app.planning.time_pace import hours_of, pace_step
from tests.books import a_book, a_stint, a_yarn


def test_the_usual_pace_until_her_own_is_known():
    learnt = learn(a_book())
    assert hours_of(learnt, "card", 140).value == pytest.approx(2.0)
    assert hours_of(learnt, "spin", 0).value == 0.0
    step = pace_step(learnt, "card")
    assert (step.how, step.unit, step.standing) == ("nobody's own", "g/h", "practice")


def test_her_own_pace_takes_its_place():
    evenings = [
        a_stint(str(i), mg=None, mm=240_000, minutes=60, yarn_id="grey two-ply") for i in range(9)
    ]
    learnt = learn(a_book(a_yarn(), *evenings))
    hours = hours_of(learnt, "spin", 1000, "grey two-ply")
    assert 1000 / 240 < hours.value < 1000 / 228
    assert hours.u < 0.1 * hours.value
    step = pace_step(learnt, "spin", "grey two-ply")
    assert step.how == "learned from 9 of your own measurements; before: 180"
    assert step.standing == "measured"


def test_work_that_has_no_pace():
    with pytest.raises(KeyError):
        hours_of(learn(a_book()), "dry", 100)


@pytest.mark.published
@pytest.mark.parametrize("row", ranges("spinning_rates"), ids=lambda row: row.what)
def test_the_printed_rates_lie_within_what_is_thought_before_anything_is_measured(row):
    """32 g/h on a wheel (a spinner's published measurement) is 160 m/h of a 200 tex single; three
    spindles in print 12.5 to 26.2 g/h, of 175 tex; a contest of 2009: 329 to 336 m/h on a wheel,
    139 to 205 on a spindle; what is printed of the fastest drafting is no everyday pace."""
    spindle = "spindle" in row.what
    tex, work = (175, "spin on a spindle") if spindle else (200, "spin")
    metres = [1000 * one / tex if row.unit == "g/h" else one for one in (row.low, row.high)]
    times = learn(a_book()).pace(work)
    low, high = (PACES[work].per_hour * one for one in times.factor_range(0.98))
    if "as fast as an expert drafts" in row.what:
        assert metres[0] > PACES[work].per_hour
    else:
        assert low < metres[0] <= metres[1] < high
