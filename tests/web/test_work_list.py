"""The work list: what to spin, wash, card and buy, own lines, paper and a table."""

import csv
import io
import re
from html import unescape
from math import ceil

import pytest
from starlette.testclient import TestClient

from app.book.settings import Settings
from app.planning.answers import WorkLine
from app.store.engine import Store
from app.store.fill import fill
from app.store.records import put
from app.web.pages.work_list import work_groups, work_row
from tests.books import a_book, a_fleece, a_holding, a_part, a_plan, a_skein, a_yarn, an_errand
from tests.web.forms import shown_values
from tests.web.garden import book_of, page, undo_of, words


@pytest.fixture
def short(store: Store) -> None:
    """A pullover short of grey, which Bramble, raw, can partly give."""
    book = a_book(
        a_fleece(),
        a_holding("F-1", fleece_id="Bramble", state="raw"),
        a_yarn(fleece_id="Bramble"),
        a_skein(),
        a_plan(),
        a_part(),
        held={"F-1": (800.0, 0.0), "G-1": (96.0, 213.0)},
    )
    with store.writing() as session:
        fill(session, book)


@pytest.mark.usefixtures("short")
def test_what_is_short_is_to_be_spun_from_its_fleece(client: TestClient) -> None:
    said = words(page(client, "/work-list"))
    assert "To spin" in said
    assert "Spin grey two-ply from Bramble" in said
    assert "of prepared fibre" in said
    assert "g raw of Bramble" in said
    assert "For pullover : body" in said
    assert "Skirt and wash Bramble" in said


@pytest.mark.usefixtures("short")
def test_ticking_leads_to_entering_the_skein(client: TestClient) -> None:
    html = page(client, "/work-list")
    assert "/skeins/finish?plan=pullover&amp;yarn=grey+two-ply&amp;fleece=Bramble" in html
    assert "/fleeces/Bramble/weigh" in html


@pytest.mark.usefixtures("short")
def test_a_line_to_spin_says_metres_grams_and_skeins(client: TestClient) -> None:
    """The only skein of the yarn holds 213 m: that is a usual one."""
    said = words(page(client, "/work-list"))
    line = re.search(
        r"Spin grey two-ply from Bramble : ([\d ]+) m, \d+ g finished, (\d+) skein", said
    )
    assert line is not None
    assert int(line[2]) == ceil(int(line[1].replace(" ", "")) / 213)


def test_an_empty_list_says_what_it_is_for(client: TestClient) -> None:
    said = words(page(client, "/work-list"))
    assert "Nothing to do: no garment waits for wool." in said
    assert "with metres, grams and the fleece it comes from" in said


@pytest.mark.parametrize(
    ("line", "url"),
    [
        (
            WorkLine("buy", "Buy grey", plan_id="hat", yarn_id="grey"),
            "/skeins/bought?plan=hat&yarn=grey",
        ),
        (WorkLine("buy", "Choose a yarn"), "/skeins/bought"),
        (WorkLine("card", "Card it", fleece_id="ash"), "/fleeces/ash/weigh"),
        (WorkLine("spin", "Spin it", yarn_id="a&b"), "/skeins/finish?yarn=a%26b"),
        (WorkLine("other", "soap", errand_id="e"), "/work-list/e/tick"),
        (WorkLine("other", "soap", errand_id="e", done=True), "/work-list/e/untick"),
    ],
)
def test_where_a_tick_leads(line: WorkLine, url: str) -> None:
    assert work_row(line).tick_url == url


def test_headings_with_nothing_under_them_are_left_out() -> None:
    lines = [WorkLine("other", "soap", errand_id="e"), WorkLine("wash", "Wash it")]
    assert [one.title for one in work_groups(lines)] == ["To wash and card", "Your own lines"]


def test_a_line_of_her_own_spun_or_bought_still_stands_among_her_own() -> None:
    (group,) = work_groups([WorkLine("spin", "sample skein", errand_id="e")])
    assert group.title == "Your own lines"


def test_a_line_of_her_own_is_added(client: TestClient, store: Store) -> None:
    with store.writing() as session:
        put(session, a_plan("hat", yarns=()))
    answer = client.post("/work-list", data={"text": "Order soap", "plan_id": "hat"})
    assert "Added to the list." in words(answer.text)
    (errand,) = book_of(store).errands
    assert (errand.text, errand.plan_id, errand.done) == ("Order soap", "hat", None)


@pytest.mark.parametrize(
    ("told", "field"),
    [
        ({"text": " ", "plan_id": ""}, "text"),
        ({"text": "x" * 201, "plan_id": ""}, "text"),
        ({"text": "Order soap", "plan_id": "no such"}, "plan_id"),
    ],
)
def test_a_fault_stands_beside_its_field(
    client: TestClient, store: Store, told: dict[str, str], field: str
) -> None:
    answer = client.post("/work-list", data=told)
    assert answer.status_code == 422
    assert f'id="e-{field}"' in answer.text
    assert book_of(store).errands == ()


def test_ticked_and_unticked(client: TestClient, store: Store) -> None:
    with store.writing() as session:
        put(session, an_errand())
    said = words(client.post("/work-list/soap/tick").text)
    assert "Done: buy soap" in said
    assert "Not done yet : buy soap" in said
    assert book_of(store).errands[0].done is not None
    client.post("/work-list/soap/untick")
    assert book_of(store).errands[0].done is None


@pytest.mark.usefixtures("short")
@pytest.mark.parametrize("url", ["/", "/work-list"])
def test_the_box_itself_is_what_is_ticked(client: TestClient, store: Store, url: str) -> None:
    with store.writing() as session:
        put(session, an_errand())
    html = page(client, url)
    boxes = re.findall(r'<a class="button box" href="([^"]*)"><svg [^>]*aria-hidden', html)
    led_to = {unescape(one).split("?")[0] for one in boxes}
    assert led_to == {"/fleeces/Bramble/weigh", "/skeins/finish"}
    assert 'aria-label="to do"' not in html
    assert shown_values(html, "/work-list/soap/tick") == {"back": url}


def test_ticked_on_today_it_stays_on_today(client: TestClient, store: Store) -> None:
    with store.writing() as session:
        put(session, an_errand())
    assert client.post("/work-list/soap/tick", data={"back": "/"}).url.path == "/"
    assert client.post("/work-list/soap/untick", data={"back": "//x"}).url.path == "/work-list"


def test_taken_out_it_can_be_put_back(client: TestClient, store: Store) -> None:
    with store.writing() as session:
        put(session, an_errand(text="<b>soap</b> & oil"))
    html = client.post("/work-list/soap/remove").text
    assert book_of(store).errands == ()
    assert "Taken out: &lt;b&gt;soap&lt;/b&gt; &amp; oil." in html
    later = page(client, "/work-list")
    assert "Changed last: Taken out: <b>soap</b> & oil." in unescape(later)
    client.post(undo_of(later), data={"back": "/work-list"})
    assert [one.text for one in book_of(store).errands] == ["<b>soap</b> & oil"]


@pytest.mark.parametrize("what", ["tick", "untick", "remove"])
def test_a_line_that_is_not_there(client: TestClient, what: str) -> None:
    assert client.post(f"/work-list/soap/{what}").status_code == 404


def test_markup_in_a_line_is_only_text(client: TestClient) -> None:
    client.post("/work-list", data={"text": "<img src=x>", "plan_id": ""})
    for url in ("/work-list", "/work-list/print", "/"):
        assert "<img" not in page(client, url)


@pytest.mark.usefixtures("short")
@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_the_list_on_paper(client: TestClient, store: Store, paper: str) -> None:
    with store.writing() as session:
        put(session, Settings(paper=paper))
    html = page(client, "/work-list/print")
    assert f'class="whole sheet {paper.lower()}"' in html
    assert html.count('aria-label="to do"') == 2
    assert "<form" not in html.split("<main")[1]


@pytest.mark.usefixtures("short")
def test_the_list_as_a_table(client: TestClient, store: Store) -> None:
    with store.writing() as session:
        put(session, an_errand(text="=1+1"))
    answer = client.get("/work-list.csv")
    assert answer.headers["content-type"] == "text/csv; charset=utf-8"
    assert "attachment" in answer.headers["content-disposition"]
    assert answer.content.startswith(b"\xef\xbb\xbf")
    rows = list(csv.DictReader(io.StringIO(answer.content.decode("utf-8-sig"))))
    assert [row["kind"] for row in rows] == ["wash", "spin", "other"]
    assert rows[1]["fleece"] == "Bramble"
    assert rows[2]["what"] == "'=1+1"


def test_the_columns_of_the_table_are_explained_on_the_page(client: TestClient) -> None:
    said = words(page(client, "/work-list"))
    assert "raw_g grams of raw fleece to start from" in said
