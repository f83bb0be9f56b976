"""A pasted table of sizes is looked at line by line, and kept whole or not at all."""

import re

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from starlette.testclient import TestClient

from app.book.pattern import PatternSize, Share, SizePart
from app.book.settings import Settings
from app.store.engine import Store
from app.store.records import put
from app.web.forms.pattern_table import read_table, separator_of
from app.web.pages.pattern_table import size_table
from app.web.shown import Shown
from tests.patterns import five_sizes
from tests.web.forms import shown_values
from tests.web.garden import book_of, page, stamp_of, words

ADDRESS = "/patterns/yoke pattern/paste"
GOOD = """size\tS\tM
chest\t96\t104
yarn\t1180\t1310
cast on body\t212\t229
length body\t40\t40
cast on sleeves\t48\t50
widest sleeve\t76\t80
rounds sleeve\t135\t–
"""
M = PatternSize(
    "M",
    1040,
    1_310_000,
    (
        SizePart("Body", cast_on=229, length_mm=400),
        SizePart("Sleeves", copies=2, cast_on=50, widest=80),
    ),
)


def told(table: str, **own: str):
    return read_table(table, Settings(**own))


def faults(table: str):
    return [(one.line, one.what, one.text) for one in told(table).faults]


AS_PRINTED = """Sizes: S (M)
Chest: 96 (104) cm
Yarn: 1180 (1310) m
Cast on body: 212 (229) stitches.
Length body (cm) 40 (40)
Cast on sleeves 48 (50)
Copies sleeves: 2
Widest sleeve: 76 (80) sts
Rounds sleeve: 135 (–)
"""


def test_a_table_as_a_pattern_prints_it_is_the_same_table():
    assert told(AS_PRINTED) == told(GOOD)


def test_inches_and_fractions_as_they_are_printed():
    found = told("Sizes: S (M)\nChest: 36 1/2 (40) in\nwhat is this")
    assert [one.line for one in found.faults] == [3]
    assert told("Sizes: S (M)\nChest: 36 1/2 (40) in").sizes[0].width_mm == 927


@pytest.fixture
def bare(store: Store):
    with store.writing() as session:
        put(session, five_sizes(sizes=()))


def post(client: TestClient, store: Store, table: str, **other: str):
    data = {"table": table, "do": "look", "stamp": stamp_of(store, "pattern", "yoke pattern")}
    return client.post(ADDRESS, data=data | other, follow_redirects=False)


def test_the_sizes_of_a_table():
    assert told(GOOD).faults == []
    assert told(GOOD).sizes[1] == M


@pytest.mark.parametrize(("between", "decimal"), [(",", "."), (";", ","), ("\t", ",")])
def test_what_stands_between_the_cells(between, decimal):
    half = f"96{decimal}5"
    table = f"size\tS\tM\nchest\t{half}\t104\n".replace("\t", between)
    assert separator_of(table) == between
    assert [one.width_mm for one in told(table, decimal=decimal).sizes] == [965, 1040]


def test_units_balls_copies_and_shares():
    table = (
        "\tS\tM\nfinished chest (in)\t38\t41 in\nballs of 115 m\t9\t10\n"
        "cast on front\t100\t110\ncopies front\t2\nshare front\t40\t\nlength front (cm)\t50\t52\n"
    )
    read = told(table)
    assert read.faults == []
    assert [one.width_mm for one in read.sizes] == [965, 1041]
    assert [one.stated_mm for one in read.sizes] == [1_035_000, 1_150_000]
    assert read.sizes[0].parts == (SizePart("Front", copies=2, cast_on=100, length_mm=500),)
    assert read.shares == (Share("Front", 40.0),)
    yards = told("\tS\nwidth\t96\nyards\t1000\n")
    assert yards.sizes[0].stated_mm == 914_400


def test_a_place_is_told_and_printed_and_told_again():
    sizes = told("\tS\tM\nwidth\t96\t104\ncast on Rumpf\t200\t220\nplace Rumpf\tbody\n").sizes
    assert {part.place for size in sizes for part in size.parts} == {"body"}
    printed = size_table(sizes, (), Shown(Settings()))
    assert ("Rumpf: place", ("body", "body")) in printed.rows
    (fault,) = told("\tS\nwidth\t96\nplace Rumpf\tattic\n").faults
    assert (fault.line, fault.what) == (3, "place Rumpf")


@pytest.mark.parametrize("own", [{}, {"decimal": ","}])
def test_the_table_a_page_prints_can_be_pasted(own):
    sizes, shares = told(GOOD + "share body\t52.5\n").sizes, (Share("Body", 52.5),)
    printed = size_table(sizes, shares, Shown(Settings(**own)))
    rows = [("", printed.sizes), *((words, cells) for words, cells in printed.rows)]
    again = told("\n".join("\t".join((words, *cells)) for words, cells in rows), **own)
    assert again.faults == []
    assert again.shares == shares
    assert [one.parts for one in again.sizes] == [one.parts for one in sizes]
    assert [one.width_mm for one in again.sizes] == [one.width_mm for one in sizes]


def test_copies_beside_a_name_must_agree():
    table = "\tS\nchest\t96\nSleeve × 2: cast on\t48\nsleeve×3: Rows\t90\n"
    assert (4, "sleeve×3: Rows", "This stands in the table twice.") in faults(table)
    (size,) = told(table.replace("×3", "×2")).sizes
    assert size.parts == (SizePart("Sleeve", copies=2, cast_on=48, rows=90),)


@pytest.mark.parametrize(
    ("table", "line", "what", "text"),
    [
        ("", 1, "", "Paste a table"),
        ('"', 1, "", "Paste a table"),
        ("size\nchest\n", 1, "", "it names 0"),
        ("size" + "\tX" * 13 + "\n", 1, "", "it names 13"),
        ("s\tS\nchest\t96\t98\n", 2, "chest", "There are only 1 sizes"),
        ("s\tS\nchest\t96\ncolour\tgrey\n", 3, "colour", "What is this?"),
        ("s\tS\nchest\t96\nchest\t98\n", 3, "chest", "This stands in the table twice."),
        ("s\tS\nchest\twide\n", 2, "chest", "Width, size S: "),
        ("s\tS\nyarn\t900\n", 1, "", "Width, size S: This is needed."),
        ("s\tS\tS\nchest\t1\t2\n", 1, "sizes", "Two sizes have this name."),
        ("s\tS\t\tL\nchest\t96\t104\t112\n", 1, "sizes", "Give the size in column 2 a name."),
        ('s\tS\nchest\t96\nrows body\t"9\n', 3, "", "The quotation marks"),
        ("s\tS\nchest\t96\nrows body\t6o\n", 3, "rows body", "Body, rows, size S: "),
    ],
)
def test_a_fault_names_its_line(table, line, what, text):
    found = faults(table)
    assert any((one[0], one[1]) == (line, what) and text in one[2] for one in found), found


def test_too_many_parts():
    rows = "".join(f"rows part{i}x\t9\n" for i in range(13))
    assert "at most 12 parts" in str(faults(f"s\tS\nchest\t96\n{rows}"))


@pytest.mark.usefixtures("bare")
def test_every_fault_is_told_and_none_hides_another(client: TestClient, store: Store):
    answer = post(client, store, "s\tS\tM\nchest\t96\twide\nfoo\t1\t2\nrows body\t9\tx\n")
    assert answer.status_code == 422
    assert re.findall(r'data-word="line">(\d+)<', answer.text) == ["2", "3", "4"]
    assert "3 lines are to be put right." in words(answer.text)
    assert "Keep these sizes" not in answer.text
    assert book_of(store).pattern["yoke pattern"].sizes == ()


@pytest.mark.usefixtures("bare")
def test_look_then_keep(client: TestClient, store: Store):
    assert "Paste a table of sizes." in words(page(client, ADDRESS))
    seen = post(client, store, GOOD)
    assert seen.status_code == 200
    assert "Two sizes can be kept." in words(seen.text)
    assert book_of(store).pattern["yoke pattern"].sizes == ()
    form = shown_values(seen.text, ADDRESS)
    answer = post(client, store, form["table"], do="keep", seen=form["seen"])
    assert answer.headers["location"] == "/patterns/yoke%20pattern"
    assert book_of(store).pattern["yoke pattern"].sizes[1] == M
    again = post(client, store, GOOD)
    assert "They take the place of the 2 it has." in words(again.text)


@pytest.mark.usefixtures("bare")
def test_a_table_changed_since_it_was_looked_at_is_looked_at_again(
    client: TestClient, store: Store
):
    form = shown_values(post(client, store, GOOD).text, ADDRESS)
    answer = post(client, store, GOOD.replace("229", "231"), do="keep", seen=form["seen"])
    assert answer.status_code == 422
    assert "You changed the table since you looked at it." in words(answer.text)
    assert book_of(store).pattern["yoke pattern"].sizes == ()


@pytest.mark.usefixtures("bare")
def test_a_bad_table_is_never_kept(client: TestClient, store: Store):
    bad = GOOD.replace("104", "wide")
    html = post(client, store, bad).text
    assert 'name="seen"' not in html
    assert post(client, store, bad, do="keep").status_code == 422
    assert book_of(store).pattern["yoke pattern"].sizes == ()


@pytest.mark.property
@settings(
    max_examples=80, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)
@given(st.text(max_size=200) | st.lists(st.text('aS\t;,"\n9xchest', max_size=30)).map("\n".join))
def test_any_text_is_a_table_or_has_its_faults(table: str):
    read = told(table)
    assert read.faults or read.sizes
