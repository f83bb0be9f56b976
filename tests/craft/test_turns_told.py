import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.craft.turns_told import LONGEST, Repeat, told


def test_no_rows_say_nothing():
    assert told("") == ()


def test_one_yarn_is_one_stretch():
    assert told("mmmm") == (Repeat(1, 4, ((4, "m"),)),)


def test_what_follows_again_and_again_is_told_once():
    assert told("mmwmmwmmw") == (Repeat(1, 9, ((2, "m"), (1, "w")), 3),)


def test_a_fade_is_told_in_stretches_and_repeats():
    assert told("mmmmm" + "wmm" * 2 + "wm" * 3 + "ww") == (
        Repeat(1, 5, ((5, "m"),)),
        Repeat(6, 11, ((1, "w"), (2, "m")), 2),
        Repeat(12, 17, ((1, "w"), (1, "m")), 3),
        Repeat(18, 19, ((2, "w"),)),
    )


@pytest.mark.property
@given(st.text(alphabet="mwg", max_size=120))
def test_read_back_it_is_the_same_rows(rows):
    found = told(rows)
    back = "".join(yarn * count for one in found for count, yarn in one.rows * one.times)
    assert back == rows
    assert all(len(one.rows) <= LONGEST for one in found)
    assert [one.last - one.first + 1 for one in found] == [
        one.times * sum(count for count, _ in one.rows) for one in found
    ]
