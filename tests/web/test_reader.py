"""Reading a form: faults in words, what was typed kept, nothing guessed."""

from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st
from starlette.datastructures import FormData, QueryParams

from app.book.settings import Settings
from app.web.forms.reader import MISSING, Reader


def read(settings: Settings | None = None, **values: str) -> Reader:
    return Reader(values, settings or Settings())


def test_amounts_take_her_unit_or_the_one_that_is_typed():
    ounces = Settings(length_unit="yd", mass_unit="oz")
    assert read(m="96").mass("m") == 96_000
    assert read(m="2×96 g").mass("m") == 192_000
    assert read(ounces, m="1").mass("m") == 28_350
    assert read(ounces, m="100 g").mass("m") == 100_000
    assert read(l="213").length("l") == 213_000
    assert read(ounces, l="10").length("l") == 9_144
    assert read(l="45").size("l") == 450
    assert read(ounces, l="3 1/2").size("l") == 89
    assert read(l="3", x="").length("l", unit="cm") == 30


def test_plain_numbers():
    assert read(Settings(decimal=","), n="1,5").number("n") == 1.5
    assert read(n="60 %").number("n", unit="%") == 60.0
    assert read(n="142").whole("n") == 142


def test_an_empty_field_is_nothing_and_no_fault_unless_it_is_needed():
    reader = read(m="  ")
    assert reader.mass("m") is None
    assert reader.text("t") == ""
    assert reader.day("d") is None
    assert reader.ok
    assert reader.mass("m", required=True) is None
    assert reader.text("t", required=True) == ""
    assert reader.errors == {"m": MISSING, "t": MISSING}


def test_a_fault_keeps_what_was_typed_and_the_first_message():
    reader = read(m="heavy", stamp="abc")
    assert reader.mass("m") is None
    reader.refuse("m", "something else")
    assert "is not a number" in reader.errors["m"]
    filled = reader.filled(extra="1")
    assert filled.values == {"m": "heavy", "stamp": "abc", "extra": "1"}
    assert (filled.errors, filled.stamp) == (reader.errors, "abc")
    assert not reader.ok


@pytest.mark.parametrize(
    ("value", "said"),
    [("0.5", "This must be 1\u202fg or more."), ("6", "This must be 5\u202fg or less.")],
)
def test_bounds_are_said_in_the_field_s_unit(value: str, said: str):
    reader = read(m=value)
    assert reader.mass("m", least=1000, most=5000) is None
    assert reader.errors["m"] == said


def test_bounds_of_lengths_sizes_and_numbers():
    reader = read(l="9", s="9", n="9", w="9")
    assert reader.length("l", most=8000) is None
    assert reader.size("s", most=80) is None
    assert reader.number("n", most=8.5) is None
    assert reader.whole("w", least=10) is None
    assert [text.replace("\u202f", " ") for text in reader.errors.values()] == [
        "This must be 8 m or less.",
        "This must be 8 cm or less.",
        "This must be 8.5 or less.",
        "This must be 10 or more.",
    ]


def test_days():
    reader = read(d="2026-03-01", late="2026-04-01", old="0026-03-01", bad="1 March")
    assert reader.day("d", until=date(2026, 3, 1)) == date(2026, 3, 1)
    assert reader.day("late", until=date(2026, 3, 1)) is None
    assert reader.day("old") is None
    assert reader.day("bad") is None
    assert set(reader.errors) == {"late", "old", "bad"}


def test_choices_and_flags():
    reader = read(c="b", f="1", off="0")
    assert reader.choice("c", ("a", "b")) == "b"
    assert reader.choice("none", ("a", "b"), default="a") == "a"
    assert (reader.flag("f"), reader.flag("off"), reader.flag("none")) == (True, False, False)
    assert reader.ok
    assert reader.choice("c", ("x",)) is None
    assert reader.choice("none", ("x",)) is None
    assert set(reader.errors) == {"c", "none"}


def test_colours():
    reader = read(c="#ECE3D0", c_known="1", d="#ece3d0", e="red", e_known="1")
    assert reader.colour("c") == "#ece3d0"
    assert reader.colour("d") == ""
    assert reader.colour("none") == ""
    assert reader.ok
    reader.colour("e")
    assert "e" in reader.errors


def test_fields_in_numbers_and_fields_sent_twice():
    form = FormData([("t-1", "10"), ("t-2", "12"), ("kind", "a"), ("kind", "b")])
    reader = Reader(form, Settings())
    assert [reader.whole(name) for name in reader.many("t-")] == [10, 12]
    assert reader.all("kind") == ["a", "b"]
    assert Reader(QueryParams("kind=a"), Settings()).all("kind") == ["a"]
    assert (read(kind="a").all("kind"), read().all("kind")) == (["a"], [])


def test_text_loses_control_signs_and_keeps_its_lines():
    reader = read(t=" one\r\ntwo\x00\x07\u202e\u00a0three\t ", u="x" * 11)
    assert reader.text("t") == "one\ntwo three"
    reader.text("u", longest=10)
    assert reader.errors["u"] == "This takes at most 10 signs; there are 11."


@pytest.mark.property
@given(st.text())
def test_no_text_breaks_a_field(typed: str):
    reader = read(x=typed)
    for ask in (reader.mass, reader.length, reader.size, reader.number, reader.whole, reader.day):
        ask("x")
    assert "\x00" not in reader.text("x")
    assert reader.values["x"] == typed
