"""Lines of a table compared with each other and with the book."""

from datetime import date
from typing import Any

from app.book.yarn import Yarn
from app.work.skein_add import NewSkein
from app.work.skein_csv import ListedSkein
from app.work.skein_csv_check import Row, SaidOfYarn, code_faults, with_yarns
from app.work.skein_readings import Length, Weight
from tests.books import a_book, a_skein, a_yarn

DAY = date(2026, 3, 1)
EMPTY = a_book()


def row(line: int, name: str = "Grey", said: dict[str, str] | None = None, **new: Any) -> Row:
    plies = int((said or {}).get("plies", 0)) or None
    yarn = Yarn(id=f"yarn of {line}", name=name, plies=plies)
    skein = NewSkein(yarn, Weight(1000, "1", "g"), (Length(1000, "1", "m"),), DAY, **new)
    return ListedSkein(line, skein), SaidOfYarn(name, said or {})


def told(rows: list[Row], *records: Any) -> list[tuple[int, str]]:
    _, faults = with_yarns(rows, a_book(*records))
    return [(one.line, one.column) for one in faults]


def test_lines_of_one_yarn_share_it_whatever_its_capitals() -> None:
    listed, faults = with_yarns([row(2), row(3, "GREY", {"plies": "2"}), row(4, "white")], EMPTY)
    grey, also_grey, white = (one.new.yarn for one in listed)
    assert grey == also_grey != white
    assert (grey.name, grey.plies) == ("Grey", 2)
    assert faults == []


def test_a_yarn_of_the_book_is_taken_as_it_is() -> None:
    known = a_yarn("Grey", twist="S")
    same = {"plies": "2", "twist": "S", "fibre": "Wool", "bought": "no"}
    listed, faults = with_yarns([row(2, "grey", same), row(3)], a_book(known))
    assert [one.new.yarn for one in listed] == [known, known]
    assert faults == []


def test_what_the_book_says_otherwise_of_a_yarn_is_told() -> None:
    said = {"plies": "3", "bought": "yes", "twist": "Z"}
    _, faults = with_yarns([row(2, said=said)], a_book(a_yarn("Grey")))
    assert [(one.column, one.text.split(" for ")[0]) for one in faults] == [
        ("plies", "Your book says “2” here"),
        ("bought", "Your book says “no” here"),
        ("twist", "Your book says nothing here"),
    ]


def test_lines_that_say_different_things_of_a_new_yarn_are_told() -> None:
    rows = [row(2), row(3, said={"plies": "2"}), row(4, said={"plies": "3", "fibre": "silk"})]
    _, faults = with_yarns(rows, EMPTY)
    assert [(one.line, one.column) for one in faults] == [(4, "plies")]
    assert "Line 3 says “2” of the yarn Grey." in faults[0].text


def test_lines_without_a_yarn_are_not_compared() -> None:
    assert told([row(2, "", {"plies": "2"}), row(3, "", {"plies": "3"})]) == []


def test_a_new_yarn_has_what_its_lines_share() -> None:
    rows = [
        row(2, fleece_id="Ash", colour="#111111", colour_name="coal"),
        row(3, fleece_id="Ash", colour="#222222", colour_name="coal"),
    ]
    yarn = with_yarns(rows, EMPTY)[0][0].new.yarn
    assert (yarn.fleece_id, yarn.colour, yarn.colour_name) == ("Ash", "", "coal")


def test_a_bought_yarn_has_no_fleece() -> None:
    assert told([row(2, said={"bought": "yes"}, fleece_id="Ash")]) == [(2, "fleece")]
    assert told([row(2, fleece_id="Ash")], a_yarn("Grey", bought=True)) == [(2, "fleece")]


def test_a_code_in_use_and_a_code_twice_are_told() -> None:
    lines = [row(2, code="G-1"), row(3, code="A"), row(4), row(5, code="A"), row(6, code="waste")]
    faults = list(code_faults([one for one, _ in lines], a_book(a_yarn(), a_skein("G-1"))))
    assert [one.line for one in faults] == [2, 5, 6]
    assert faults[1].text == "Line 3 has the code A too. Give each its own."
