"""The page of labels: which, on what, from where on the sheet; and that their codes lead home."""

import re
from dataclasses import replace
from html import unescape

import pytest
from starlette.testclient import TestClient

from app.book.settings import Settings
from app.craft.label_sheets import SHEETS
from app.store.engine import Store
from app.store.fill import fill
from app.store.records import put
from app.web.forms import labels as form
from tests.books import a_book, a_fleece, a_holding, a_skein, a_yarn
from tests.qr_reader import matrix_of, read
from tests.web.forms import shown_values

CODE = re.compile(r'<article class="label">.*?<p class="code">(.*?)</p>', re.S)
PATH = re.compile(r'<svg viewBox="0 0 (\d+) \d+".*?<path d="([^"]+)"')


@pytest.fixture(autouse=True)
def shelf(store: Store) -> None:
    skeins = [a_skein(f"S-{number}") for number in range(1, 13)]
    book = a_book(
        a_fleece(name="<b>Bramble</b>"),
        a_yarn(name='Grey "two-ply" <script>'),
        a_holding(fleece_id="Bramble", state="carded"),
        *skeins,
        a_skein("L-1", place="loft"),
        held={"F-1": (900, 0), "L-1": (50, 100)} | {one.id: (96, 213) for one in skeins},
    )
    with store.writing() as session:
        fill(session, book)


def page(client: TestClient, query: str = "") -> str:
    answer = client.get(f"/labels{query}")
    assert answer.status_code == 200
    return answer.text


def codes(html: str) -> list[str]:
    return CODE.findall(html)


def words(html: str) -> str:
    text = unescape(re.sub(r"<[^>]+>", " ", re.sub(r"</?b\b[^>]*>", "", html)))
    return " ".join(text.split())


def test_all_skeins_by_their_codes(client: TestClient):
    html = page(client)
    assert codes(html) == ["L-1", *(f"S-{number}" for number in range(1, 13))]
    assert "13 labels on 1 sheet of A4." in words(html)
    assert "The codes lead to http://127.0.0.1:8765 , the program on this computer." in words(html)
    assert "96\u202fg · 213\u202fm" in html
    assert "100 % wool" in html


def test_only_what_the_list_was_asked_for(client: TestClient):
    assert codes(page(client, "?q=loft")) == ["L-1"]
    listed = client.get("/skeins?q=loft").text
    assert 'href="/labels?q=loft"' in listed
    assert 'href="/labels"' in client.get("/skeins").text
    assert 'href="/labels?holding=L-1"' in client.get("/skeins/L-1").text


def test_only_those_that_are_ticked_in_that_order(client: TestClient):
    assert codes(page(client, "?chosen=1&holding=S-9&holding=L-1&holding=S-9")) == ["S-9", "L-1"]
    assert "No label to print." in words(page(client, "?chosen=1"))


def test_the_bags_of_wool(client: TestClient):
    assert 'href="/labels?wool=1"' in client.get("/fleeces").text
    assert 'href="/labels?fleece=Bramble"' in client.get("/fleeces/Bramble").text
    assert codes(page(client, "?fleece=none")) == []
    assert codes(page(client, "?fleece=Bramble")) == ["F-1"]
    html = page(client, "?wool=1")
    assert codes(html) == ["F-1"]
    assert "900\u202fg · carded" in html
    assert '<a href="/fleeces">Fleeces</a>' in html


def test_every_code_leads_to_the_page_of_its_skein_on_this_machine(client: TestClient):
    html = page(client, "?wool=1") + page(client)
    found = [read(matrix_of(d, int(size), 4)) for size, d in PATH.findall(html)]
    assert len(found) == 14
    for address in found:
        assert address.startswith("http://127.0.0.1:8765/")
        assert client.get(address).status_code == 200


def test_names_are_printed_and_not_run(client: TestClient):
    html = page(client, "?wool=1") + page(client)
    assert "<script>" not in html.replace('<script src="', "")
    assert "&lt;b&gt;Bramble&lt;/b&gt;" in html


def test_a_used_sheet_begins_where_it_is_free(client: TestClient):
    html = page(client, "?sheet=a4-14&start=4")
    sheets = html.split('<section class="label-sheet')[1:]
    assert [one.count('class="label used"') for one in sheets] == [3, 0]
    assert [len(codes(one)) for one in sheets] == [11, 2]
    assert "13 labels on 2 sheets of A4, beginning at label 4." in words(html)


def test_the_form_keeps_what_was_chosen(client: TestClient):
    html = page(client, "?chosen=1&holding=S-1&sheet=letter-30&start=7")
    shown = shown_values(html, "/labels")
    assert shown == {"chosen": "1", "holding": "S-1", "sheet": "letter-30", "start": "7"}
    assert 'href="/labels/sheet/letter-30.css"' in html


@pytest.mark.parametrize(
    ("query", "field"),
    [
        ("?sheet=a4-8&start=9", "start"),
        ("?start=0", "start"),
        ("?start=many", "start"),
        ("?sheet=parchment", "sheet"),
        ("?sheet=../../etc", "sheet"),
    ],
)
def test_what_cannot_be_is_said_beside_its_field(client: TestClient, query: str, field: str):
    answer = client.get(f"/labels{query}")
    assert answer.status_code == 422
    assert f'id="e-{field}"' in answer.text


def test_her_own_paper_is_offered_first(client: TestClient, store: Store):
    with store.writing() as session:
        put(session, replace(Settings(), paper="Letter"))
    assert "of Letter." in words(page(client))


def test_at_most_so_many_at_a_time(client: TestClient, monkeypatch: pytest.MonkeyPatch):
    monkeypatch.setattr("app.web.routes.labels.MOST", 10)
    html = page(client)
    assert len(codes(html)) == 10
    assert "3 more are left out" in words(html)
    assert form.MOST == 200


def test_an_unknown_holding_is_passed_over(client: TestClient):
    assert codes(page(client, "?holding=none&holding=S-1")) == ["S-1"]


@pytest.mark.parametrize("sheet", SHEETS, ids=lambda sheet: sheet.key)
def test_the_measures_of_a_sheet(client: TestClient, sheet):
    answer = client.get(f"/labels/sheet/{sheet.key}.css")
    assert answer.headers["content-type"].startswith("text/css")
    assert f"size: {sheet.paper_mm[0]}mm {sheet.paper_mm[1]}mm" in answer.text
    assert f"width: {sheet.width_mm}mm; height: {sheet.height_mm}mm" in answer.text


def test_there_are_no_measures_of_another_sheet(client: TestClient):
    assert client.get("/labels/sheet/parchment.css").status_code == 404
