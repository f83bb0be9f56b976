"""The work list as a table: every cell is text, none a formula."""

import csv
import io

import pytest

from app.book.table_cells import MARK
from app.planning.answers import WorkLine
from app.work.work_list_csv import COLUMNS, work_list_csv

LINE = WorkLine(
    kind="spin",
    text="Spin grey",
    yarn="grey two-ply",
    m=400,
    g=180,
    prepared_g=186,
    raw_g=405,
    fleece="Bramble",
    plan="pullover",
    parts=("body", "sleeves"),
)


def rows(text: str) -> list[dict[str, str]]:
    return list(csv.DictReader(io.StringIO(text.removeprefix(MARK), newline="")))


def test_a_line_cell_by_cell() -> None:
    assert rows(work_list_csv([LINE])) == [
        {
            "kind": "spin",
            "what": "Spin grey",
            "yarn": "grey two-ply",
            "m": "400",
            "g": "180",
            "balls": "",
            "prepared_g": "186",
            "raw_g": "405",
            "fleece": "Bramble",
            "plan": "pullover",
            "parts": "body; sleeves",
            "done": "",
        }
    ]


def test_it_begins_with_the_mark_of_utf_8_and_the_documented_columns() -> None:
    text = work_list_csv([])
    assert text.encode().startswith(b"\xef\xbb\xbf")
    assert text == MARK + ",".join(name for name, _ in COLUMNS) + "\r\n"


def test_what_was_ticked_off_says_so() -> None:
    assert rows(work_list_csv([WorkLine("other", "buy soap", done=True)]))[0]["done"] == "yes"


@pytest.mark.parametrize("sign", ["=", "+", "-", "@", "\t", "\r", "\n"])
def test_a_formula_is_made_harmless(sign: str) -> None:
    nasty = f"{sign}HYPERLINK(1)"
    (row,) = rows(work_list_csv([WorkLine("other", nasty, plan=nasty)]))
    assert row["what"] == row["plan"] == f"'{nasty}"
