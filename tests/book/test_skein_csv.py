"""The shape of a table of skeins: its columns found in any order, its faults told in words."""

import re
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.book.skein_csv import (
    COLUMNS,
    MOST_BYTES,
    MOST_ROWS,
    NoTable,
    read_skein_table,
    write_skein_table,
)

DEVELOPERS = Path(__file__).parents[2] / "DEVELOPERS.md"


def cells(text: str) -> list[dict[str, str]]:
    return [dict(row.cells) for row in read_skein_table(text).rows]


def refusal(text: str) -> str:
    with pytest.raises(NoTable) as met:
        read_skein_table(text)
    return str(met.value)


@pytest.mark.parametrize("separator", [",", ";", "\t"])
def test_columns_stand_in_any_order_and_any_case(separator: str) -> None:
    table = "Weight,YARN, Dye_Lot ,Length\n96 g,grey,7,213 m\n".replace(",", separator)
    read = read_skein_table(table)
    assert read.separator == separator
    assert cells(table) == [{"weight": "96 g", "yarn": "grey", "dye lot": "7", "length": "213 m"}]


def test_a_decimal_comma_stands_between_semicolons() -> None:
    assert cells("yarn;weight;length\ngrey;96,5;213")[0]["weight"] == "96,5"


def test_a_row_knows_the_line_it_begins_in() -> None:
    read = read_skein_table('yarn,weight,length,notes\n\ngrey,1,2,"a\nb"\ngrey,3,4,c\n')
    assert [row.line for row in read.rows] == [3, 5]


def test_a_short_row_and_columns_without_a_name_are_understood() -> None:
    assert cells("yarn,weight,length,,\ngrey,96\ngrey,96,213,,\n") == [
        {"yarn": "grey", "weight": "96"},
        {"yarn": "grey", "weight": "96", "length": "213"},
    ]


def test_rows_without_the_shape_of_the_table_hide_no_other() -> None:
    read = read_skein_table('yarn,weight,length\ngrey,96,5,213\ngrey,"96,213\ngrey,96,213\n')
    assert [row.line for row in read.rows] == [4]
    assert [(one.line, one.column) for one in read.faults] == [(2, ""), (3, "")]
    assert "more in this line than there are columns" in read.faults[0].text
    assert "quotation marks do not match" in read.faults[1].text


def test_an_apostrophe_against_formulas_is_taken_off_and_a_formula_is_text() -> None:
    table = "yarn,weight,length,notes\n'=grey,96,213,=1+1\n"
    assert cells(table) == [{"yarn": "=grey", "weight": "96", "length": "213", "notes": "=1+1"}]


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("", "There is nothing in it."),
        ("\n , \n", "There is nothing in it."),
        ("yarn,weight,length\n", "There is no skein under the names of the columns."),
        ("grey,96 g,213 m", "Line 1: the first line must name the columns"),
        ("a," * 100 + "yarn", "Line 1: the first line must name the columns"),
        ("yarn,wieght,length", "“wieght” is no column here (is it “weight”?)"),
        ("yarn,weight,length,hours", "“hours” is no column here: rename it or take it out."),
        ("yarn,weight,Weight,length", "“weight” is there more than once"),
        ("code,length", "the column “yarn” is missing. the column “weight” is missing."),
        ("yarn,weight,girth", "a column “length” or “turns” is missing."),
    ],
)
def test_what_is_no_table_is_told_in_words(text: str, said: str) -> None:
    assert said in refusal(text)


def test_a_name_that_is_no_column_is_told_briefly() -> None:
    assert len(refusal("yarn,weight,length," + "x" * 10_000)) < 200


def test_too_much_is_told_in_words() -> None:
    head, row = "yarn,weight,length\n", "g,1,2\n"
    assert len(read_skein_table(head + row * MOST_ROWS).rows) == MOST_ROWS
    assert "more than 5000 rows" in refusal(head + row * (MOST_ROWS + 1))
    assert "larger than 2 MiB" in refusal(head + "é" * (MOST_BYTES // 2))


def test_a_table_is_written_with_all_its_columns() -> None:
    text = write_skein_table([{"code": "G-1", "notes": "=1+1, and more"}])
    head, row, end = text.removeprefix("\ufeff").split("\r\n")
    assert (head, end) == (",".join(COLUMNS), "")
    assert row == "G-1" + "," * (len(COLUMNS) - 1) + '"\'=1+1, and more"'


@pytest.mark.property
@given(st.lists(st.fixed_dictionaries({"yarn": st.text(), "notes": st.text()}), min_size=1))
def test_what_is_written_is_read_back(rows: list[dict[str, str]]) -> None:
    plain = [
        {column: cell.replace("\r", "").strip() for column, cell in row.items()} | {"weight": "1"}
        for row in rows
    ]
    found = [
        {column: cell for column, cell in row.items() if column in plain[0]}
        for row in cells(write_skein_table(plain))
    ]
    assert found == plain


@pytest.mark.property
@given(st.text() | st.text('"\n,;\t', max_size=20).map("yarn,weight,length\n".__add__))
def test_any_text_is_a_table_or_refused(text: str) -> None:
    try:
        read = read_skein_table(text)
    except NoTable:
        return
    lines = [one.line for one in (*read.rows, *read.faults)]
    assert len(lines) == len(set(lines)) > 0


def test_the_columns_are_documented() -> None:
    part = DEVELOPERS.read_text(encoding="utf-8").split("## Skeins as a table\n")[1]
    rows = re.findall(r"^\| `(.+?)` \| (.+?) \|$", part.split("\n## ")[0], re.MULTILINE)
    assert [name for name, _ in rows] == list(COLUMNS)
    assert {name: what for name, what in rows if COLUMNS[name] != what} == {}
