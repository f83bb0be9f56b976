"""The room of tables: found by discovery, asked by an address, every row with its source."""

import re
from collections.abc import Iterator
from html import unescape
from pathlib import Path
from urllib.parse import urlencode

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from starlette.testclient import TestClient

from app.book.settings import Settings
from app.store.engine import open_store
from app.web.forms.reader import Reader
from app.web.pages import tables
from app.web.pages.table import GROUPS, Table
from app.web.pages.table_page import answer_to
from app.web.pages.table_rows import printed
from app.web.pages.tables import all_tables
from app.web.server import create_app
from app.web.shown import Shown
from tests.web.forms import shown_values

FRAGMENT = {"hx-request": "true", "hx-request-type": "partial"}
HOME = "http://127.0.0.1:8765"
YARDS = Settings(length_unit="yd", mass_unit="oz", decimal=",")
EVERY = list(all_tables().values())


@pytest.fixture(scope="module")
def client(empty_folder: Path) -> Iterator[TestClient]:
    """One program for all of these tests: tables only read."""
    store = open_store(empty_folder)
    with TestClient(create_app(store), base_url=HOME) as browser:
        yield browser
    store.close()


def word(table: Table) -> str:
    return table.word


def answered(table: Table, values: dict[str, str], asked_in: Settings | None = None) -> str:
    """The sentence that answers a question typed into a table's blanks."""
    reader = Reader(values, asked_in or Settings())
    answer = answer_to(table, reader, Shown(reader.settings))
    assert answer is not None, reader.errors
    return answer.sentence


# Every table


@pytest.mark.golden
@pytest.mark.parametrize("table", EVERY, ids=word)
def test_the_worked_example_is_what_the_table_works_out(table: Table):
    assert answered(table, dict(table.example.values)) == table.example.gives


@pytest.mark.parametrize("table", EVERY, ids=word)
def test_a_page_opens_with_its_example_and_the_link_of_it_says_the_same(
    client: TestClient, table: Table
):
    page = client.get(f"/tables/{table.word}")
    link = re.search(rf'href="(/tables/{table.word}\?[^"]*)"', page.text)
    assert link is not None
    asked = client.get(unescape(link[1]))
    for answer in (page, asked):
        assert answer.status_code == 200
        assert f'<span id="says">{table.example.gives}</span>' in unescape(answer.text)


@pytest.mark.parametrize("table", EVERY, ids=word)
def test_what_the_form_shows_can_be_sent_as_it_is(client: TestClient, table: Table):
    address = f"/tables/{table.word}"
    form = shown_values(client.get(address).text, address)
    assert set(form) == {one.name for one in table.fields}
    again = client.get(address, params=form)
    assert f'<span id="says">{table.example.gives}</span>' in unescape(again.text)


@pytest.mark.parametrize("table", EVERY, ids=word)
def test_an_example_is_understood_in_yards_and_ounces(table: Table):
    assert answered(table, dict(table.example.values), YARDS)


@pytest.mark.parametrize("asked_in", [Settings(), YARDS], ids=["metric", "imperial"])
@pytest.mark.parametrize("table", EVERY, ids=word)
def test_every_row_has_its_cells_its_standing_and_its_source(table: Table, asked_in: Settings):
    found = printed(table, asked_in)
    letters = {source.letter: source for source in found.sources}
    rows = [(sheet, row) for sheet in found.sheets for row in sheet.rows]
    assert rows
    assert len({row.id for _, row in rows}) == len(rows)
    for sheet, row in rows:
        assert row.word
        assert len(row.cells) == len(sheet.columns)
        assert row.source
        assert letters[row.letter].text == row.source
        assert letters[row.letter].standing == row.standing
        assert row.standing in {"published", "derived", "practice", "from memory", "assumed"}


@pytest.mark.parametrize("table", EVERY, ids=word)
def test_a_table_says_what_it_is_for(table: Table):
    assert re.fullmatch(r"[a-z]+(-[a-z]+)*", table.word)
    assert table.answers.endswith("?")
    assert table.group in GROUPS
    assert table.example.gives.endswith(".")


@pytest.mark.parametrize("table", EVERY, ids=word)
def test_nothing_typed_is_said_beside_the_blanks(client: TestClient, table: Table):
    empty = dict.fromkeys((one.name for one in table.fields if one.kind != "choice"), "")
    answer = client.get(f"/tables/{table.word}", params=empty)
    assert answer.status_code == 422
    assert "This is needed." in answer.text
    assert 'id="says"' not in answer.text


ODD = st.one_of(
    st.text(max_size=40),
    st.sampled_from(["", "0", "0.0001", "999999", "1/0", "½", "-1", "2×", "<gnat>", "\x00", "1e9"]),
)


@pytest.mark.property
@pytest.mark.parametrize("table", EVERY, ids=word)
@settings(max_examples=12, deadline=None)
@given(data=st.data())
def test_any_question_is_an_answer_or_a_fault_in_words(
    client: TestClient, table: Table, data: st.DataObject
):
    asked = dict(table.example.values)
    for one in table.fields:
        if data.draw(st.booleans()):
            asked[one.name] = data.draw(ODD)
    answer = client.get(f"/tables/{table.word}", params=asked)
    assert answer.status_code in (200, 422)
    assert "<gnat>" not in answer.text


@pytest.mark.parametrize("table", EVERY, ids=word)
def test_the_ends_of_what_a_blank_takes_are_an_answer_or_a_fault_in_words(
    client: TestClient, table: Table
):
    for one in table.fields:
        for end in (one.least, one.most):
            asked = {**table.example.values, one.name: f"{end:.6f}".rstrip("0").rstrip(".")}
            answer = client.get(f"/tables/{table.word}", params=asked)
            assert answer.status_code in (200, 422), (one.name, end)


@pytest.mark.parametrize("table", EVERY, ids=word)
def test_each_option_of_a_choice_is_understood(client: TestClient, table: Table):
    for one in table.fields:
        for option in one.options if one.kind == "choice" else ():
            answer = client.get(
                f"/tables/{table.word}", params={**table.example.values, one.name: option}
            )
            assert answer.status_code in (200, 422), (one.name, option)


# The room


def test_the_list_has_every_table_with_what_it_answers(client: TestClient):
    page = unescape(client.get("/tables").text)
    assert '<a href="/tables" aria-current="page">Tables</a>' in page
    for table in EVERY:
        assert f'<a href="/tables/{table.word}">{table.title}</a>' in page
        assert table.answers in page


def test_a_table_that_is_not_there(client: TestClient):
    answer = client.get("/tables/moonlight")
    assert answer.status_code == 404
    assert "This table is not in the book." in answer.text


@pytest.fixture
def a_new_table(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[None]:
    """A table that is one more file in the folder of tables, and nothing else."""
    file = tmp_path / "laps_of_a_spool.py"
    file.write_text(NEW_TABLE, encoding="utf-8")
    monkeypatch.setattr(tables, "__path__", [*tables.__path__, str(tmp_path)])
    all_tables.cache_clear()
    yield
    all_tables.cache_clear()


NEW_TABLE = '''
"""Laps of a spool."""

from app.web.forms.table_fields import Field
from app.web.pages.table import Answer, Example, Row, Sheet, Table

TABLE = Table(
    word="laps",
    title="Laps of a spool",
    group="Yarn",
    place=99,
    answers="How often does it go round?",
    fields=(Field("laps", "Laps", "whole"),),
    ask=lambda asked, shown: Answer(f"{asked.whole('laps')} times."),
    example=Example({"laps": "3"}, "three laps", "3 times."),
    sheets=lambda shown: (
        Sheet("Spools", "Spool", ("laps",), (Row("pine", ("3",), "memory", "an old shepherd"),)),
    ),
)
'''


@pytest.mark.usefixtures("a_new_table")
def test_a_new_table_is_one_file_and_no_change_elsewhere(client: TestClient):
    assert '<a href="/tables/laps">Laps of a spool</a>' in client.get("/tables").text
    assert '<span id="says">7 times.</span>' in client.get("/tables/laps?laps=7").text
    assert "an old shepherd" in client.get("/tables/laps").text
    assert 'href="/tables/laps#r-pine"' in client.get("/tables?q=shepherd").text


# Searching


def found(client: TestClient, q: str) -> str:
    return unescape(client.get(f"/tables?{urlencode({'q': q})}", headers=FRAGMENT).text)


def test_a_search_finds_a_word_of_a_row_and_links_to_it(client: TestClient):
    page = found(client, "Corriedale")
    assert "“Corriedale” is in 2 tables." in page
    row = re.search(r'href="/tables/breeds#([^"]+)">Corriedale</a>', page)
    assert row is not None
    assert f'id="{row[1]}"' in client.get("/tables/breeds").text


def test_conflicting_sources_are_both_found(client: TestClient):
    page = found(client, "corriedale")
    assert "Oklahoma State University" in page
    assert "Held, Weaving" in page


def test_a_search_finds_a_source_a_name_and_a_standing(client: TestClient):
    assert 'href="/tables/regain#r-wool-all-forms"' in found(client, "ASTM D1909-13")
    assert '<a href="/tables/skein">Skein and grist</a>' in found(client, "niddy-noddy")
    assert 'href="/tables/counts#r-woollen-run"' in found(client, "counts from memory")


@pytest.mark.parametrize(
    ("q", "row"),
    [
        ("lea", "linen"),
        ("decitex", "dtex"),
        ("hank", "worsted"),
        ("linen", "linen"),
        ("300 yd", "linen"),
        ("galash", "galashiels-cut"),
    ],
)
def test_a_count_is_found_by_its_other_words_and_by_a_part_of_one(
    client: TestClient, q: str, row: str
):
    assert f'href="/tables/counts#r-{row}"' in found(client, q)


def test_every_word_must_be_there_in_any_letter_case(client: TestClient):
    assert 'href="/tables/breeds#r-merino-australian-medium"' in found(client, "AUSTRALIAN merino")
    assert "No table, row or source has “merino tractor”." in found(client, "merino tractor")


def test_a_long_list_is_cut_and_says_so(client: TestClient):
    assert re.search(r"And \d+ more rows in the table\.", found(client, "breeds published"))


def test_a_search_is_escaped_and_kept(client: TestClient):
    page = client.get("/tables", params={"q": '"><gnat>'})
    assert page.status_code == 200
    assert "<gnat>" not in page.text
    assert 'value="&#34;&gt;&lt;gnat&gt;"' in page.text


# What is typed


def test_htmx_gets_the_calculator_alone_and_it_is_that_of_the_page(client: TestClient):
    address = "/tables/skein?girth=1.5&turns=142&mass=96"
    part = client.get(address, headers=FRAGMENT).text
    assert 'class="printed' not in part
    assert part.strip() in client.get(address).text


def test_numbers_are_typed_as_people_type_them(client: TestClient):
    asked = {"girth": "60 in", "turns": "2×71", "mass": "3 1/2 oz"}
    page = client.get("/tables/skein", params=asked).text
    assert '<span id="says">216.4 m, 458.5 tex.</span>' in page
    assert 'value="3 1/2 oz"' in page


def test_a_fault_stands_beside_its_field_and_what_was_typed_is_kept(client: TestClient):
    answer = client.get("/tables/skein?girth=1.5&turns=many&mass=96")
    assert answer.status_code == 422
    assert '<span class="fault" id="e-turns">“many” is not a number.</span>' in unescape(
        answer.text
    )
    assert 'value="many"' in answer.text
    assert 'value="96"' in answer.text


def test_a_weight_is_no_length(client: TestClient):
    answer = client.get("/tables/skein?girth=1.5+g&turns=142")
    assert answer.status_code == 422
    assert "a length is wanted here" in answer.text


def test_a_folded_number_is_not_taken_for_a_fraction(client: TestClient):
    answer = client.get("/tables/counts?count=2/40&system=cotton")
    assert answer.status_code == 422
    assert "This is the number of a folded yarn: see the table of plied yarns." in answer.text


def test_a_decimal_comma_is_shown_where_it_is_used():
    table = all_tables()["counts"]
    said = answered(table, {"count": "29,5", "system": "cotton"}, YARDS)
    assert said == "20,02 tex, 4995 m/100 g, 24780 yd/lb."


def test_a_choice_that_is_none_is_refused(client: TestClient):
    answer = client.get("/tables/counts?count=20&system=furlongs")
    assert answer.status_code == 422
    assert "Choose one of these." in answer.text
