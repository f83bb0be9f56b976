"""No cell of ours is a formula, and every text comes back as it was."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.book.table_cells import harmless, told_back


def test_a_blank_before_the_formula_does_not_help_it() -> None:
    assert harmless("  =1+1") == "'  =1+1"


def test_nothing_is_an_empty_cell() -> None:
    assert harmless(None) == ""


@pytest.mark.parametrize(
    ("cell", "text"),
    [
        ("'=1+1", "=1+1"),
        ("'-5", "-5"),
        ("''tis grey", "'tis grey"),
        ("'tis grey", "'tis grey"),
        ("=1+1", "=1+1"),
        ("'", "'"),
        ("", ""),
    ],
)
def test_only_an_apostrophe_of_ours_is_taken_off(cell: str, text: str) -> None:
    assert told_back(cell) == text


@pytest.mark.property
@given(st.text() | st.text("'=+-@ \t\n\ra", max_size=6))
def test_no_cell_begins_as_a_formula_and_every_cell_can_be_told_back(text: str) -> None:
    cell = harmless(text)
    assert not cell.lstrip(" ").startswith(("=", "+", "-", "@", "\t", "\r", "\n"))
    assert told_back(cell) == text
