import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.planning.picture_lengths import Ends, Length, Working, Yarn
from tests.books import a_book, a_skein, a_yarn

TWO = [Length("G-1", 10.0, done=True), Length("G-2", 5.0, at=3.0)]


def test_the_skein_that_knits_most_of_a_row_and_the_metre_it_is_at():
    found = Yarn([*TWO]).along([4.0, 4.0, 4.0, 4.0])
    assert found == [
        Working("G-1", True, 2.0),
        Working("G-1", True, 6.0),
        Working("G-1", True, 10.0),
        Working("G-2", False, 7.0),
    ]


def test_a_skein_knit_from_its_inside_goes_outwards():
    (first, second) = Yarn([Length("G-1", 10.0, at=10.0, inwards=False)]).along([4.0, 4.0])
    assert (first.at, second.at) == (8.0, 4.0)


def test_no_yarn_knits_no_row():
    assert Yarn().along([1.0]) == [Working(None)]


def test_what_is_parted_off_leaves_the_rest_where_it_ends():
    yarn = Yarn([*TWO])
    assert yarn.part_off(12.0) == [Length("G-1", 10.0, done=True), Length("G-2", 2.0, at=3.0)]
    assert yarn.lengths == [Length("G-2", 3.0, at=5.0)]
    assert yarn.part_off(9.0) == [Length("G-2", 3.0, at=5.0)]
    assert yarn.part_off(1.0) == []


def test_each_end_of_a_skein_is_knit_for_itself():
    """60 m now and 40 m that went into a garment: it was 100 m long."""
    book = a_book(a_yarn(), a_skein("G-1"), held={"G-1": (27, 60)})
    ends = Ends(book, [("cap", "G-1", 40.0)])
    assert ends.next("G-1", 40.0, True, False) == Length("G-1", 40.0, True, 0.0)
    assert ends.next("G-1", 10.0, False, False) == Length("G-1", 10.0, False, 40.0)
    assert ends.next("G-1", 10.0, False, True) == Length("G-1", 10.0, False, 100.0, False)
    assert ends.next("G-1", 10.0, False, True) == Length("G-1", 10.0, False, 90.0, False)


@pytest.mark.property
@given(st.lists(st.floats(0.1, 50), max_size=6), st.lists(st.floats(0, 20), max_size=30))
def test_skeins_are_knit_in_their_order_and_never_twice(lengths, rows):
    yarn = Yarn([Length(str(at), m) for at, m in enumerate(lengths)])
    held = [one.holding_id for one in yarn.along(rows) if one.holding_id is not None]
    assert held == sorted(held, key=int)
