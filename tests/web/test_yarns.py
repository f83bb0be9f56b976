"""Yarns in the browser: their totals, one with its skeins and garments, and yarns to be made."""

import re
from datetime import date

import pytest
from starlette.testclient import TestClient

from app.book.event import Line
from app.book.fleece import Fleece
from app.book.gauge import Gauge
from app.book.holding import Holding
from app.book.plan import Part, Plan, Promise, RoleYarn
from app.book.settings import Settings
from app.book.shape import Rectangle
from app.book.stamp import stamp
from app.book.yarn import Yarn
from app.store.engine import Store
from app.store.records import get, load_book, post, put
from tests.web.forms import shown_values

DAY = date(2026, 3, 1)
SPUN = {"name": "Grey two-ply", "fibre": "wool", "plies": "2", "twist": "S", "making": "spun"}


def words(html: str) -> str:
    """What a page says, without its markup and with plain blanks."""
    text = re.sub(r"<[^>]*>", " ", html)
    return re.sub(r"\s+", " ", text.replace("\u202f", " ").replace("\xa0", " "))


def fault(html: str, field: str) -> str:
    found = re.search(rf'<span class="fault" id="e-{field}">(.*?)</span>', html)
    return words(found[1]) if found else ""


def ash(store: Store) -> None:
    """A carded fleece of 500 g."""
    with store.writing() as session:
        put(session, Fleece("ash", "Ash", yield_pct=60.0))
        put(session, Holding("ash-wool", "fleece", "Ash", fleece_id="ash", state="carded"))
        post(session, "arrive", DAY, [Line("come in", -500_000), Line("ash-wool", 500_000)])


def skeins(store: Store, *amounts: tuple[int, int]) -> None:
    """Skeins of a grey yarn, each so many g and m."""
    with store.writing() as session:
        put(session, Yarn("grey", "Grey two-ply", plies=2))
        for n, (g, m) in enumerate(amounts):
            put(session, Holding(f"g{n}", "skein", f"G-{n}", yarn_id="grey"))
            lines = [Line("come in", -g * 1000), Line(f"g{n}", g * 1000, m * 1000)]
            post(session, "arrive", DAY, lines)


def only_yarn(store: Store) -> Yarn:
    with store.reading() as session:
        return load_book(session).yarns[0]


def test_no_yarn_yet_says_how_one_comes_into_being(client: TestClient) -> None:
    page = words(client.get("/yarns").text)
    assert "No yarn yet." in page
    assert "It comes into being with its first skein" in page


def test_totals_by_yarn(client: TestClient, store: Store) -> None:
    """96 g / 213 m and 100 g / 210 m: 196 g over 423 m is 463.4 tex, 215.8 m/100 g; the two stray
    by 18.0 tex, 3.9 %."""
    skeins(store, (96, 213), (100, 210))
    page = words(client.get("/yarns").text)
    assert "One yarn holds 423 m , 196 g." in page
    assert "216 m/100 g ± 4 %" in page
    assert "3 Light" in page
    assert "423 m 196 g 423 m" in page


def test_a_yarn_shows_its_skeins_and_how_alike_they_are(client: TestClient, store: Store) -> None:
    skeins(store, (96, 213), (100, 210))
    page = words(client.get("/yarns/grey").text)
    assert "Holds 423 m, 196 g in 2 skeins; 423 m free." in page
    assert "its skeins stray by 3.9 % from one another" in page
    assert page.index("G-0") < page.index("G-1")


def test_a_yarn_shows_the_garments_that_use_it(client: TestClient, store: Store) -> None:
    skeins(store, (96, 213))
    with store.writing() as session:
        put(session, Plan("vest", "Waistcoat", yarns=(RoleYarn("main", "grey"),)))
        put(session, Plan("hat", "Hat", gauge=Gauge(22, 30)))
        put(session, Part("crown", "hat", "crown", Rectangle(200, 200)))
        put(session, Promise("p", "hat", "crown", "g0", 50_000))
        put(session, Plan("other", "Something else"))
    page = client.get("/yarns/grey").text
    assert "/garments/vest" in page
    assert "/garments/hat" in page
    assert "Something else" not in page


def test_a_yarn_still_to_be_spun(client: TestClient, store: Store) -> None:
    """222 m/100 g aimed at; 500 g carded give 500·0.97·0.98 = 475 g, about 1 056 m."""
    ash(store)
    page = words(client.post("/yarns/new", data={**SPUN, "fleece": "ash", "target": "222"}).text)
    assert "Grey two-ply is written down." in page
    assert "Still to be spun: Ash could become" in page
    assert "222 m/100 g, aimed at" in page
    yarn = only_yarn(store)
    assert yarn.target_tex == pytest.approx(100_000 / 222)
    assert (yarn.fleece_id, yarn.bought, yarn.plies, yarn.twist) == ("ash", False, 2, "S")


def test_a_yarn_without_fleece_or_grist_says_what_is_missing(client: TestClient) -> None:
    page = words(client.post("/yarns/new", data=SPUN).text)
    assert "Choose its fleece and a grist" in page


def test_a_yarn_to_be_bought(client: TestClient, store: Store) -> None:
    sent = {**SPUN, "making": "bought", "ball_mass": "50", "ball_length": "125", "target": "222"}
    page = client.post("/yarns/new", data=sent).text
    assert "Still to be bought , in balls of 50 g, 125 m." in words(page)
    assert "/skeins/bought?yarn=" in page
    yarn = only_yarn(store)
    assert (yarn.ball_mg, yarn.ball_mm, yarn.target_tex) == (50_000, 125_000, None)


def test_a_bought_yarn_without_a_label(client: TestClient) -> None:
    page = words(client.post("/yarns/new", data={**SPUN, "making": "bought"}).text)
    assert "Still to be bought ." in page


def test_the_grist_may_be_in_her_own_unit(client: TestClient, store: Store) -> None:
    with store.writing() as session:
        put(session, Settings(grist_unit="yd/lb"))
    client.post("/yarns/new", data={**SPUN, "target": "1100"})
    assert only_yarn(store).target_tex == pytest.approx(450.95, abs=0.01)


@pytest.mark.parametrize(
    ("field", "typed", "message"),
    [
        ("name", "", "Give the yarn a name"),
        ("name", "x" * 81, "at most 80"),
        ("plies", "0", "1 or more"),
        ("twist", "Q", "Choose one"),
        ("making", "found", "Choose one"),
        ("fleece", "nowhere", "Choose one"),
        ("target", "0", "more than nothing"),
        ("target", "thin", "thin"),
    ],
)
def test_bad_input_is_said_beside_the_field_and_kept(
    client: TestClient, store: Store, field: str, typed: str, message: str
) -> None:
    answer = client.post("/yarns/new", data={**SPUN, field: typed, "colour_name": "ash grey"})
    assert answer.status_code == 422
    assert message in fault(answer.text, field)
    assert 'value="ash grey"' in answer.text
    with store.reading() as session:
        assert load_book(session).yarns == ()


def test_a_colour_that_is_none_is_refused(client: TestClient) -> None:
    sent = {**SPUN, "colour": 'red" onload="x', "colour_known": "1"}
    answer = client.post("/yarns/new", data=sent)
    assert answer.status_code == 422
    assert fault(answer.text, "colour")


def test_a_name_used_twice_is_refused(client: TestClient) -> None:
    client.post("/yarns/new", data=SPUN)
    answer = client.post("/yarns/new", data={**SPUN, "name": "GREY two-ply"})
    assert answer.status_code == 422
    assert "already a yarn" in fault(answer.text, "name")


def test_a_yarn_can_be_changed_and_keeps_its_own_name(client: TestClient, store: Store) -> None:
    client.post(
        "/yarns/new", data={**SPUN, "target": "222", "colour": "#777777", "colour_known": "1"}
    )
    yarn = only_yarn(store)
    form = client.get(f"/yarns/{yarn.id}/change").text
    assert 'value="222"' in form
    assert 'value="#777777"' in form
    sent = {**SPUN, "fibre": "wool and silk", "stamp": stamp(yarn)}
    page = words(client.post(f"/yarns/{yarn.id}/change", data=sent).text)
    assert "Grey two-ply is changed." in page
    with store.reading() as session:
        changed = get(session, Yarn, yarn.id)
    assert changed
    assert (changed.fibre, changed.colour) == ("wool and silk", "")


def test_a_stale_form_overwrites_nothing(client: TestClient, store: Store) -> None:
    client.post("/yarns/new", data=SPUN)
    yarn = only_yarn(store)
    client.post(f"/yarns/{yarn.id}/change", data={**SPUN, "notes": "first", "stamp": stamp(yarn)})
    late = {**SPUN, "notes": "second", "stamp": stamp(yarn)}
    assert client.post(f"/yarns/{yarn.id}/change", data=late).status_code == 409
    assert only_yarn(store).notes == "first"


def test_a_new_yarn_of_a_fleece_begins_with_that_fleece(client: TestClient, store: Store) -> None:
    ash(store)
    assert '<option value="ash" selected>' in client.get("/yarns/new?fleece=ash").text
    assert client.get("/yarns/new?fleece=none").status_code == 200


@pytest.mark.parametrize("path", ["/yarns/none", "/yarns/none/change"])
def test_a_yarn_that_is_not_there(client: TestClient, path: str) -> None:
    assert client.get(path).status_code == 404


def test_many_skeins_go_on_with_plain_links(client: TestClient, store: Store) -> None:
    skeins(store, *[(50, 125)] * 70)
    first = client.get("/yarns/grey").text
    assert "/yarns/grey?page=2" in first
    second = client.get("/yarns/grey?page=2").text
    assert second.count('href="/skeins/g') == 10
    assert client.get("/yarns/grey?page=x").status_code == 200


def test_names_are_text_and_never_markup(client: TestClient) -> None:
    nasty = "<img src=x onerror=alert(1)>"
    page = client.post(
        "/yarns/new", data={**SPUN, "name": nasty, "fibre": nasty, "notes": nasty}
    ).text
    assert "<img" not in page
    assert "<img" not in client.get("/yarns").text


def test_a_yarn_made_by_mistake_is_taken_out(client: TestClient) -> None:
    made = client.post("/yarns/new", data={"name": "Slip", "making": "spun"})
    url = str(made.url.path)
    form = shown_values(made.text, f"{url}/remove")
    assert client.post(f"{url}/remove", data={"stamp": "old"}).status_code == 409
    assert "Slip is taken out." in client.post(f"{url}/remove", data=form).text
    assert client.get(url).status_code == 404


def test_a_yarn_that_something_belongs_to_stays(client: TestClient, store: Store) -> None:
    with store.writing() as session:
        put(session, Yarn("meant", "Meant"))
        put(session, Plan("vest", "Vest", yarns=(RoleYarn("main", "meant"),)))
    assert "Take it out again" not in client.get("/yarns/meant").text
    answer = client.post("/yarns/meant/remove", data={"stamp": stamp(Yarn("meant", "Meant"))})
    assert answer.status_code == 409
    assert "Something belongs to Meant" in answer.text
    assert client.get("/yarns/meant").status_code == 200


def test_a_name_is_known_whatever_its_capitals(client: TestClient) -> None:
    client.post("/yarns/new", data={"name": "Ähre Öl", "making": "spun"})
    again = client.post("/yarns/new", data={"name": "ÄHRE ÖL", "making": "spun"})
    assert again.status_code == 422
