"""Shaping row by row is what the words of a run say."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.craft.shaped_rows import shaped_rows
from app.craft.shaping import shaping_text
from tests.craft.constructions.follow import changes


@pytest.mark.property
@given(
    st.integers(1, 150),
    st.integers(1, 300),
    st.integers(1, 300),
    st.booleans(),
    st.sampled_from((1, 2, 4)),
)
def test_as_the_words_tell(rows, stitches, stitches_to, in_round, ends):
    change = stitches_to - stitches
    found = shaped_rows(rows, change, rows * (stitches + stitches_to) / 2, in_round, ends)
    assert len(found) == rows
    assert sum(found) == change
    if change:
        where = {1: "at the neck edge of", 2: "", 4: "on each side of both side markers on"}[ends]
        told = shaping_text(rows, stitches, stitches_to, in_round, where, ends)
        gained, over = changes(told)
        assert over == rows
        assert list(found) == [gained.get(row, 0) for row in range(1, rows + 1)]


def test_by_hand():
    """Three pairs in six rounds; a pair and an odd one; four at a time in every second row."""
    assert shaped_rows(6, 6, 60, True) == (2, 0, 2, 0, 2, 0)
    assert shaped_rows(4, -3, 40, True) == (-3, 0, 0, 0)
    assert shaped_rows(5, -8, 60, False, 4) == (-4, 0, -4, 0, 0)


def test_no_rows():
    with pytest.raises(ValueError, match="at least one row"):
        shaped_rows(0, 2, 0, False)
