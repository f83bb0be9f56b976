from typing import get_args

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.craft.ranges import Subject, fibres_of, flyer_rate, hours_for, ranges


@pytest.mark.parametrize("subject", get_args(Subject))
def test_every_row_has_its_unit_and_its_source(subject):
    rows = ranges(subject)
    assert len({row.what for row in rows}) == len(rows)
    for row in rows:
        assert row.low <= row.high
        assert row.unit
        assert row.source
        assert bool(row.printed) == (row.standing != "memory")


def test_which_fibres_are_so_fine():
    names = {row.what for row in fibres_of(15)}
    assert {"Cashmere", "Qiviut", "Vicuna"} <= names
    assert "Mohair" not in names
    assert fibres_of(60) == ()


def test_a_flyer_at_1200_turns_twists_152_m_of_12_turns_per_inch_in_an_hour():
    """1200/12 = 100 inches a minute."""
    assert flyer_rate(1200, 12) == pytest.approx(152.4)


def test_hours_at_a_pace():
    assert hours_for(915.3, 183.06) == pytest.approx(5)


@pytest.mark.property
@given(st.floats(1, 1e4), st.floats(0.5, 60))
def test_more_twist_is_slower(turns, per_inch):
    assert flyer_rate(turns, per_inch + 1) < flyer_rate(turns, per_inch)


@pytest.mark.parametrize(
    ("call", "words"),
    [
        (lambda: fibres_of(0), "diameter in µm must be more"),
        (lambda: flyer_rate(0, 12), "turns of the flyer per minute must be more"),
        (lambda: flyer_rate(1200, 0), "turns per inch must be more"),
        (lambda: hours_for(0, 100), "what is to be spun must be more"),
        (lambda: hours_for(100, 0), "the rate per hour must be more"),
    ],
)
def test_outside_the_domain(call, words):
    with pytest.raises(ValueError, match=words):
        call()
