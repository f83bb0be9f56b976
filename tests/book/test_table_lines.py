"""Rows and cells, with the line each begins in; one bad line never hides the next."""

import csv
import io
from itertools import islice

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.book.table_lines import SEPARATORS, TableLine, table_lines


def rows(text: str, separator: str = ",") -> list[tuple[int, tuple[str, ...] | None]]:
    return [(one.number, one.cells) for one in table_lines(text, separator)]


def test_cells_between_commas() -> None:
    assert rows("a,b\n1, 2\n") == [(1, ("a", "b")), (2, ("1", "2"))]


def test_a_quoted_cell_may_hold_anything() -> None:
    assert rows('a;"b;""c""\nd";e\nf;g;h', ";") == [(1, ("a", 'b;"c"\nd', "e")), (3, tuple("fgh"))]


def test_lines_without_text_are_left_out_but_counted() -> None:
    assert rows("\na,b\n\n,\n1,2\n") == [(2, ("a", "b")), (5, ("1", "2"))]


def test_an_inch_sign_is_no_quotation_mark() -> None:
    assert rows('a,b\n60",1\n2,3') == [(1, ("a", "b")), (2, ('60"', "1")), (3, ("2", "3"))]


def test_a_quotation_mark_inside_a_quoted_cell_must_be_doubled() -> None:
    assert rows('a,b\n"60"x,1\n2,3') == [(1, ("a", "b")), (2, None), (3, ("2", "3"))]


def test_an_open_quotation_mark_hides_no_other_line() -> None:
    text = 'a,b\n"open,1\n2,3\n4,5\n'
    assert rows(text) == [(1, ("a", "b")), (2, None), (3, ("2", "3")), (4, ("4", "5"))]


def test_a_cell_without_end_is_told_and_the_rest_is_read() -> None:
    assert rows("a\n" + "x" * 200_000 + "\nb") == [(1, ("a",)), (2, None), (3, ("b",))]


def test_many_open_quotation_marks_take_no_longer_than_one() -> None:
    lines = list(islice(table_lines('x","\n' * 300_000, ","), 5_000))
    assert {one.cells for one in lines} == {None}


@pytest.mark.property
@given(st.lists(st.lists(st.text(), min_size=2), min_size=1), st.sampled_from(sorted(SEPARATORS)))
def test_what_is_written_as_a_table_is_read_back(table: list[list[str]], separator: str) -> None:
    plain = [[cell.replace("\r", "").strip() for cell in row] for row in table]
    page = io.StringIO()
    csv.writer(page, delimiter=separator, lineterminator="\n", quoting=csv.QUOTE_ALL).writerows(
        plain
    )
    said = [one.cells for one in table_lines(page.getvalue(), separator)]
    assert said == [tuple(row) for row in plain if any(row)]


@pytest.mark.property
@given(st.text('",;a\n ', max_size=40), st.sampled_from(sorted(SEPARATORS)))
def test_any_text_has_lines_in_order(text: str, separator: str) -> None:
    lines: list[TableLine] = list(table_lines(text, separator))
    numbers = [one.number for one in lines]
    assert numbers == sorted(set(numbers))
    assert len(lines) <= text.count("\n") + 1
