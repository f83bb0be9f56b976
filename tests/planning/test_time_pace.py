import pytest

from app.planning.learning import learn
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
