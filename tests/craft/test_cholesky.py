"""The root of a matrix, multiplied out again, is the matrix."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.craft.cholesky import forward, lower

rows = st.lists(st.lists(st.floats(-3, 3), min_size=4, max_size=4), min_size=4, max_size=4)


def product(a, b):
    return [[sum(x * y for x, y in zip(row, other, strict=True)) for other in b] for row in a]


@pytest.mark.property
@given(rows)
def test_the_root_times_itself_is_the_matrix(drawn):
    spread = product(drawn, drawn)
    for i in range(4):
        spread[i][i] += 1.0
    root = lower(spread)
    again = product(root, root)
    for row, other in zip(again, spread, strict=True):
        assert row == pytest.approx(other, abs=1e-8)


@pytest.mark.property
@given(rows, st.lists(st.floats(-10, 10), min_size=4, max_size=4))
def test_forward_solves_with_the_root(drawn, right):
    spread = product(drawn, drawn)
    for i in range(4):
        spread[i][i] += 1.0
    root = lower(spread)
    found = forward(root, right)
    made = [sum(x * y for x, y in zip(row, found, strict=True)) for row in root]
    assert made == pytest.approx(right, abs=1e-8)


def test_a_worked_root():
    """4 12 -16; 12 37 -43; -16 -43 98 has the root 2; 6 1; -8 5 3 (by hand)."""
    assert lower([[4, 12, -16], [12, 37, -43], [-16, -43, 98]]) == [
        [2, 0, 0],
        [6, 1, 0],
        [-8, 5, 3],
    ]


def test_what_follows_from_another_has_no_rest():
    assert lower([[1.0, 1.0], [1.0, 1.0]]) == [[1.0, 0.0], [1.0, 0.0]]
    assert lower([[0.0, 0.0], [0.0, 4.0]]) == [[0.0, 0.0], [0.0, 2.0]]
