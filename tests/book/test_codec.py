"""Records to plain values and back."""

import json
from dataclasses import replace
from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.book.book import Book
from app.book.codec import LARGEST, from_plain, to_plain
from app.book.errors import Malformed
from app.book.gauge import Gauge
from app.book.shape import (
    Counted,
    Measured,
    Metres,
    Rectangle,
    Run,
    Runs,
    Stated,
    Strand,
    Trapezoid,
)
from tests.books import TABLES, a_part, a_plan, a_reading
from tests.random_books import anything

SHAPES = [
    Runs((Run(8, 40, 48, "1×1 rib", 3.25, (Strand("main", 0.5), Strand("contrast", 0.5, 2))),)),
    Counted(229, 120),
    Rectangle(1040, 400),
    Trapezoid(220, 360, 450),
    Measured(220, 360, 450, "moss stitch", (Strand("main", 0.6), Strand("contrast", 0.4))),
    Stated(1_100_000),
    Metres(300_000),
]


def faults(cls, value):
    with pytest.raises(Malformed) as caught:
        from_plain(cls, value, "here")
    return caught.value.problems


@pytest.mark.property
@given(st.data(), st.sampled_from([*TABLES, Book]))
def test_any_record_comes_back_as_it_went(data, cls):
    record = data.draw(anything(cls))
    through_json = json.loads(json.dumps(to_plain(record)))
    assert from_plain(cls, through_json) == record


@pytest.mark.parametrize("shape", SHAPES, ids=lambda shape: shape.way)
def test_a_shape_is_told_by_its_way(shape):
    part = a_part(shape=shape)
    plain = to_plain(part)
    assert plain["shape"]["way"] == shape.way
    assert from_plain(type(part), plain) == part


def test_a_record_as_plain_values():
    plain = to_plain(a_plan(wanted_by=date(2026, 10, 1)))
    assert list(plain)[:3] == ["id", "name", "person_id"]
    assert plain["wanted_by"] == "2026-10-01"
    assert list(plain["gauge"].items())[:3] == [
        ("stitches", 22.0),
        ("rows", 30.0),
        ("washed", True),
    ]
    assert plain["yarns"] == [{"role": "main", "yarn_id": "grey two-ply"}]


def test_a_whole_number_given_for_a_float_is_written_as_a_float():
    plain = to_plain(Gauge(22, 30, needle_mm=4))
    assert json.dumps(plain).startswith('{"stitches": 22.0, "rows": 30.0, "washed": true')
    assert type(plain["needle_mm"]) is float
    assert type(from_plain(Gauge, plain | {"stitches": 22}).stitches) is float


@pytest.mark.parametrize(
    ("field", "value", "what"),
    [
        ("value", 1.0, "expected a whole number"),
        ("value", True, "expected a whole number"),
        ("value", "96", "expected a whole number"),
        ("value", LARGEST + 1, "the number is too large"),
        ("turns", True, "expected a finite number"),
        ("turns", float("nan"), "expected a finite number"),
        ("turns", float("inf"), "expected a finite number"),
        ("turns", 10**400, "expected a finite number"),
        ("finished", 1, "expected true or false"),
        ("finished", None, "expected true or false"),
        ("typed", 96, "expected text"),
        ("typed", "\ud800", "expected text without broken characters"),
        ("kind", "weight", 'expected one of "mass", "length", "wraps", "grist"'),
        ("kind", ["mass"], 'expected one of "mass", "length", "wraps", "grist"'),
        ("day", "20260430", "expected a day like 2026-04-30"),
        ("day", "2026-W18-4", "expected a day like 2026-04-30"),
        ("day", "2026-02-30", "expected a day like 2026-04-30"),
        ("day", 20260430, "expected a day like 2026-04-30"),
        ("day", None, "expected a day like 2026-04-30"),
    ],
)
def test_a_wrong_value_is_named_by_its_place(field, value, what):
    reading = a_reading()
    plain = to_plain(reading) | {field: value}
    assert faults(type(reading), plain) == (f"here.{field}: {what}",)


def test_every_fault_is_named_at_once():
    plain = to_plain(a_plan())
    plain["gauge"]["washed"] = "yes"
    plain["yarns"].append({"role": "cuff"})
    del plain["notes"]
    plain["colour"] = "#ffffff"
    assert faults(type(a_plan()), plain) == (
        "here.colour: no such field",
        "here.gauge.washed: expected true or false",
        "here.yarns[1].yarn_id: missing",
        "here.notes: missing",
    )


def test_places_start_at_the_top_without_a_name():
    with pytest.raises(Malformed, match=r"^plans\[0\]: expected an object with named fields$"):
        from_plain(Book, to_plain(Book()) | {"plans": ["pullover"]})
    with pytest.raises(Malformed, match=r"^expected an object with named fields$"):
        from_plain(Book, [])


def test_lists_and_shapes_of_the_wrong_kind():
    part = a_part()
    plain = to_plain(part)
    assert faults(type(part), plain | {"yarns": {}}) == ("here.yarns: expected a list",)
    assert faults(type(part), plain | {"shape": None}) == (
        "here.shape: expected an object with named fields",
    )
    (found,) = faults(type(part), plain | {"shape": {"way": "circle"}})
    assert found.startswith('here.shape.way: expected one of "runs", "counted"')
    (found,) = faults(type(part), plain | {"shape": {"way": "stated", "mm": "far"}})
    assert found == "here.shape.mm: expected a whole number"


def test_none_only_where_a_field_may_be_empty():
    part = a_part(gauge=None)
    assert from_plain(type(part), to_plain(part)) == part
    (found,) = faults(type(part), to_plain(replace(part, name=None)))
    assert found == "here.name: expected text"
