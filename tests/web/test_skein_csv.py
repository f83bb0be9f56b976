"""A table of skeins is looked at line by line, and brought in all at once or not at all."""

import re
from dataclasses import replace
from datetime import date

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from starlette.testclient import TestClient

from app.book.book import Book
from app.book.settings import Settings
from app.book.skein_csv import COLUMNS, read_skein_table, write_skein_table
from app.store.engine import Store
from app.store.records import load_book, put
from app.web.forms.skein_csv import read_skeins
from app.work.skein_csv import bring_in, skein_cells
from tests.books import a_fleece, a_yarn
from tests.web.forms import shown_values

ADDRESS = "/skeins/import"
GOOD = 'yarn,weight,length\nGrey,96 g,213 m\nGrey,"90,5",200 m\n'
NO_FILE = {"file": ("", b"", "application/octet-stream")}
quietly = settings(
    deadline=None, max_examples=60, suppress_health_check=[HealthCheck.function_scoped_fixture]
)


def look(client: TestClient, table: str = "", file: bytes = b"", **other: str):
    files = {"file": ("skeins.csv", file, "text/csv")} if file else NO_FILE
    return client.post(ADDRESS, data={"table": table, "do": "look"} | other, files=files)


def bring(client: TestClient, html: str, **other: str):
    values = shown_values(html, ADDRESS) | {"do": "bring in"} | other
    return client.post(ADDRESS, data=values, files=NO_FILE, follow_redirects=False)


def book_of(store: Store) -> Book:
    with store.reading() as session:
        return load_book(session)


def faults(html: str) -> list[tuple[str, str, str]]:
    """Line, column and what to do, of the table of what is wrong."""
    part = html.split('id="wrong"')[1].split("</table>")[0] if 'id="wrong"' in html else ""
    row = r'<td data-word="line">(\d+)</td>\s*<td data-word="column">(.*?)</td>\s*<td>(.*?)</td>'
    return re.findall(row, part)


def test_the_page_tells_the_columns_and_the_limits(client: TestClient) -> None:
    html = client.get(ADDRESS).text
    assert all(f"<dt>{name}</dt>" in html for name in COLUMNS)
    assert "5\u202f000 rows and 2 MiB" in html
    assert "bring in" in client.get("/skeins").text


def test_look_then_bring_in(client: TestClient, store: Store) -> None:
    seen = look(client, GOOD)
    assert seen.status_code == 200
    assert "2 skeins can be brought in" in seen.text
    assert "A new yarn: Grey." in seen.text
    assert "222\u202fm/100\u202fg" in seen.text
    assert book_of(store).yarns == ()
    answer = bring(client, seen.text)
    assert (answer.status_code, answer.headers["location"]) == (303, "/skeins")
    cells = list(skein_cells(book_of(store)))
    assert [(one["code"], one["weight"]) for one in cells] == [
        ("G-001", "96 g"),
        ("G-002", "90.5 g"),
    ]
    assert "2 skeins came to the shelf" in client.get("/skeins").text


def test_what_was_brought_in_in_one_day_can_be_undone(client: TestClient, store: Store) -> None:
    bring(client, look(client, GOOD).text)
    html = client.get("/skeins").text
    assert 'action="/undo/1"' in html
    client.post("/undo/1", data={"back": "/skeins"})
    assert list(skein_cells(book_of(store))) == []


def test_days_apart_are_several_events(client: TestClient, store: Store) -> None:
    table = "yarn,weight,length,day\nGrey,1,1,2026-03-01\nGrey,1,1,2.3.2026\n"
    bring(client, look(client, table).text)
    assert [one.day for one in book_of(store).events] == [date(2026, 3, 1), date(2026, 3, 2)]
    assert "/undo/" not in client.get("/skeins").text


HEAD = "code,yarn,plies,twist,weight,length,girth,turns,finished,wraps,fleece,bought,colour,day\n"
ODD_CELLS = f"""{HEAD}A,,2,S,96 g,213 m,,,yes,9,,no,#8a7f72,2026-03-01
B,Grey,two,Q,heavy,long,,,maybe,900,Nessie,perhaps,grey,1.13.2026
C,Grey,2,s,96 g,213 m,1.5,,no,,,,8A7F72,1/3/2026
D,Grey,2,,96 g,213 m,,142,,,,,,
D,Grey,3,,96 g,,,,no,,,,,
E,Grey,,,=1+1,"1,200 m",,,,,,,,
F,Grey,2,S,96 g,,,142,no,9,,no,,
"""


def test_every_cell_at_fault_is_told_and_none_hides_another(client: TestClient) -> None:
    answer = look(client, ODD_CELLS)
    assert answer.status_code == 422
    found = [(line, column) for line, column, _ in faults(answer.text)]
    assert found == [
        ("2", "yarn"),
        *(("3", one) for one in ("twist", "colour", "finished", "bought", "length")),
        *(("3", one) for one in ("weight", "wraps", "plies", "day")),
        *(("4", one) for one in ("girth", "day")),
        ("5", "length"),
        *(("6", one) for one in ("turns", "plies", "code")),
        *(("7", one) for one in ("length", "weight")),
    ]
    assert "1 good. Nothing is brought in yet." in answer.text
    assert "Bring them in" not in answer.text


def test_nothing_is_brought_in_while_a_line_is_at_fault(client: TestClient, store: Store) -> None:
    table = GOOD + "Grey,,213 m\n"
    html = look(client, table).text
    answer = bring(client, html, seen="")
    assert answer.status_code == 422
    assert shown_values(answer.text, ADDRESS)["table"] == table
    assert book_of(store).yarns == ()


def test_a_table_changed_after_it_was_looked_at_is_looked_at_again(
    client: TestClient, store: Store
) -> None:
    answer = bring(client, look(client, GOOD).text, table=GOOD + "White,1,1\n")
    assert answer.status_code == 422
    assert "You changed the table since you looked at it." in answer.text
    assert book_of(store).yarns == ()
    assert bring(client, answer.text).status_code == 303
    assert len(book_of(store).yarns) == 2


def test_a_code_taken_meanwhile_is_told(client: TestClient, store: Store) -> None:
    html = look(client, "code,yarn,weight,length\nG-1,Grey,1,1\n").text
    assert bring(client, html).status_code == 303
    answer = bring(client, html)
    assert answer.status_code == 422
    assert faults(answer.text)[0][:2] == ("2", "code")
    assert len(book_of(store).events) == 1


@pytest.mark.parametrize(
    ("codec", "name"),
    [("utf-8", "UTF-8"), ("utf-8-sig", "UTF-8"), ("utf-16", "UTF-16"), ("cp1252", "Windows-1252")],
)
def test_a_file_is_understood_and_how_is_said(client: TestClient, codec: str, name: str) -> None:
    table = "yarn;weight;length\nGrün;96,5;213\n"
    answer = look(client, "is replaced", file=table.encode(codec))
    assert f"Read as {name}, with semicolons between the cells." in answer.text
    assert shown_values(answer.text, ADDRESS)["table"] == table


@pytest.mark.parametrize(
    ("table", "file", "said"),
    [
        ("", b"", "Choose a file, or paste a table."),
        (" \n", b"", "Choose a file, or paste a table."),
        ("", b"PK\x03\x04\x00", "This file is not a table as text."),
        ("kept", b"\n", "Choose a file, or paste a table."),
        ("kept", b"grey;96", "the first line must name the columns"),
        ("", b"yarn,weight,length\n" + b"x" * (2 << 20), "The table is larger than 2 MiB."),
        ("yarn,weight,length\n" + "x" * (2 << 20), b"", "The table is larger than 2 MiB."),
        ("yarn,weight,length\n" + "x,1,1\n" * 5001, b"", "The table has more than 5000 rows."),
    ],
)
def test_what_is_no_table_is_told_beside_its_field(
    client: TestClient, table: str, file: bytes, said: str
) -> None:
    answer = look(client, table, file=file)
    field = "file" if file else "table"
    assert answer.status_code == 422
    assert said in re.search(f'id="e-{field}">(.*?)<', answer.text)[1]


def test_far_too_large_a_file_is_refused_before_it_is_read(client: TestClient) -> None:
    assert look(client, file=b"x" * (9 << 20)).status_code == 413


def test_fleeces_are_named_and_nothing_is_taken_off_them(client: TestClient, store: Store) -> None:
    with store.writing() as session:
        put(session, a_fleece("f1", name="Old Bramble", fibre="mohair"))
    html = look(client, "yarn,weight,turns,fleece\nGrey,96 g,142,old  bramble\n").text
    assert bring(client, html).status_code == 303
    (cells,) = skein_cells(book_of(store))
    assert (cells["fleece"], cells["fibre"]) == ("Old Bramble", "mohair")
    assert (cells["girth"], cells["turns"]) == ("1.5 m", "142")


FROM_ELSEWHERE = (
    "yarn,weight,length,fleece,notes\nGrey,96 g,213 m,Bramble,for cuffs\nGrey,90 g,200 m,bramble,\n"
    "Grey,90 g,200 m,,\nWhite,90 g,200 m,Old  Ash,\n"
)


def test_a_fleece_of_another_book_is_kept_in_the_notes(client: TestClient, store: Store) -> None:
    seen = look(client, FROM_ELSEWHERE)
    assert seen.status_code == 200
    assert "named “Bramble”, “bramble” and “Old Ash”." in seen.text
    assert "as “from Bramble”" in seen.text
    assert bring(client, seen.text).status_code == 303
    cells = list(skein_cells(book_of(store)))
    assert {one["fleece"] for one in cells} == {""}
    noted = ["for cuffs\nfrom Bramble", "from bramble", "", "from Old Ash"]
    assert [one["notes"] for one in cells] == noted


def test_many_fleeces_of_another_book_are_counted(client: TestClient) -> None:
    rows = "".join(f"Grey,90 g,200 m,Ewe {at}\n" for at in range(12))
    assert "“Ewe 9” and 2 more." in look(client, f"yarn,weight,length,fleece\n{rows}").text
    assert "a fleece named “Ewe”." in look(client, "yarn,weight,length,fleece\nG,1,1,Ewe\n").text


def test_a_yarn_of_this_book_is_not_said_to_be_of_a_fleece_it_has_not(
    client: TestClient, store: Store
) -> None:
    with store.writing() as session:
        put(session, a_fleece("f1", name="Ash"))
        put(session, a_yarn("grey", name="Grey", fleece_id="f1"))
    answer = look(client, "yarn,weight,length,fleece\nGrey,96 g,213 m,Bramble\n")
    assert [one[:2] for one in faults(answer.text)] == [("2", "fleece")]


def test_many_good_lines_are_counted_not_all_shown(client: TestClient) -> None:
    html = look(client, "yarn,weight,length\n" + "Grey,1,1\n" * 250).text
    assert "And 50 more good lines." in html


def test_a_formula_stays_text_and_is_guarded_when_saved(client: TestClient, store: Store) -> None:
    html = look(client, "yarn,weight,length,notes\nGrey,1,1,=HYPERLINK(1)\n").text
    bring(client, html)
    assert [one["notes"] for one in skein_cells(book_of(store))] == ["=HYPERLINK(1)"]
    saved = client.get("/skeins/csv")
    assert "'=HYPERLINK(1)" in saved.text
    assert saved.headers["content-type"] == "text/csv; charset=utf-8"
    assert saved.headers["content-disposition"].startswith('attachment; filename="skeins-')


# Whatever is sent


SIGNS = st.text(st.characters(exclude_categories=("C",)), max_size=20)
LINE = SIGNS.map(lambda text: " ".join(text.split()))
AMOUNT = st.integers(1, 2_000_000)
DAYS = st.dates(date(1990, 1, 1), date(2100, 1, 1)).map(date.isoformat)


YARNS = [("Grey", "2", "S", "no"), ("wéiß", "", "", "no"), ("Shop", "4", "Z", "yes")]


@st.composite
def rows(draw: st.DrawFn) -> dict[str, str]:
    """The cells of a skein of one of three yarns, as this program writes them."""
    name, plies, twist, bought = draw(
        st.sampled_from(
            [("Grey", "2", "S", "no"), ("wéiß", "", "", "no"), ("Shop", "4", "Z", "yes")]
        )
    )
    by_reel = {"girth": "1.5 m", "turns": str(draw(st.integers(1, 900)))}
    length = {"length": f"{draw(AMOUNT) / 1000:.4f} m"}
    colour = draw(st.sampled_from(["", "#8a7f72", "#000000"]))
    return {
        **{one: draw(LINE) for one in ("dye lot", "price", "colour name", "place")},
        "yarn": name,
        "plies": plies,
        "twist": twist,
        "bought": bought,
        "colour": colour,
        **(by_reel if draw(st.booleans()) else length),
        "weight": f"{draw(AMOUNT) / 1000:.4f} g",
        "day": draw(DAYS),
        "finished": draw(st.sampled_from(["yes", "no"])),
        "wraps": draw(st.sampled_from(["", "9", "9.1250", "14 1/2"])),
        "fleece": "" if bought == "yes" else draw(st.sampled_from(["", "Bramble", "-Ash"])),
        "notes": draw(st.lists(LINE, max_size=3).map("\n".join)).strip(),
    }


def brought(store: Store, table: str) -> tuple[str, list[dict[str, str]]]:
    """The table saved again and its cells, after it was brought into a book that keeps nothing."""
    with store.writing() as session:
        for name in ("Bramble", "-Ash"):
            put(session, a_fleece(name))
        read = read_skeins(read_skein_table(table), load_book(session))
        assert read.faults == ()
        bring_in(session, read.listed)
        cells = list(skein_cells(load_book(session)))
        session.rollback()
    return write_skein_table(cells), cells


@pytest.mark.property
@quietly
@given(table=st.lists(rows(), min_size=1, max_size=6), comma=st.booleans(), imperial=st.booleans())
def test_what_is_saved_brings_the_same_skeins_into_an_empty_book(
    store: Store, table: list[dict[str, str]], comma: bool, imperial: bool
) -> None:
    numbered = [row | {"code": f"={at}"} for at, row in enumerate(table)]
    first, cells = brought(store, write_skein_table(numbered))
    units = {"length_unit": "yd", "mass_unit": "oz"} if imperial else {}
    with store.writing() as session:
        put(session, replace(Settings(), decimal="," if comma else ".", **units))
    assert brought(store, first) == (first, cells)
    assert [_told(row) for row in cells] == [_told(row) for row in numbered]


def _told(row: dict[str, str]) -> tuple[list[str], list[float]]:
    """What a skein is, however its amounts are written."""
    amounts = [float(row[one].split()[0]) for one in ("weight", "length", "turns") if one in row]
    words = {"code", "yarn", "plies", "twist", "bought", "finished", "fleece", "colour", "day"}
    own = {"dye lot", "price", "place", "notes"}
    return [row[one] for one in sorted(words | own)], amounts


ODD = st.sampled_from(
    (
        *("", "0", "-1", "1e999", "9" * 80, "½", "1,200", "1/0", "4 oz", "nan", "\x00", "yes", "١"),
        *("S", "#fff", "2026-02-30", "31.2.2026", '"', "'=1", "=1", "🐑" * 90, "Grey", "waste"),
        "<gnat>",
    )
)
TABLES = st.one_of(
    st.binary(max_size=300),
    st.binary(max_size=300).map(HEAD.encode().__add__),
    st.text(max_size=200).map(lambda text: (HEAD + text).encode("utf-16")),
    st.lists(st.lists(ODD, min_size=1, max_size=14).map(",".join), max_size=5).map(
        lambda lines: (HEAD + "\n".join(lines)).encode()
    ),
)


@pytest.mark.property
@quietly
@given(file=TABLES)
def test_any_file(client: TestClient, store: Store, file: bytes) -> None:
    answer = look(client, file=file)
    assert answer.status_code in (200, 422)
    assert "<gnat>" not in answer.text
    before = book_of(store)
    if 'name="seen"' in answer.text:
        sent = bring(client, answer.text)
        after = book_of(store)
        assert sent.status_code in (303, 422)
        assert (sent.status_code == 303) == (after != before)
        assert all(sum(line.mg for line in event.lines) == 0 for event in after.events)


@pytest.mark.property
@quietly
@given(file=TABLES)
def test_any_bytes_pressed_straight_into_the_book_save_nothing_unseen(
    client: TestClient, store: Store, file: bytes
) -> None:
    before = book_of(store)
    data = {"do": "bring in", "seen": "0" * 16}
    files = {"file": ("skeins.csv", file or b" ", "text/csv")}
    assert client.post(ADDRESS, data=data, files=files).status_code == 422
    assert book_of(store) == before
