"""Skeins in the browser: a page of the maker's own notebook, typed in."""

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
from app.store.records import load_book, post, put
from app.store.skein_find import balance_of, readings_of
from tests.web.forms import shown_values

DAY = date(2026, 3, 1)
WORKED = {
    "girth": "1.5",
    "turns": "142",
    "mass": "96",
    "yarn": "new",
    "yarn_name": "Grey two-ply",
    "fibre": "wool",
    "plies": "2",
    "twist": "S",
    "fleece": "",
    "taken": "now",
    "day": "2026-03-01",
}


def words(html: str) -> str:
    """What a page says, without its markup and with plain blanks."""
    text = re.sub(r"<[^>]*>", " ", html)
    return re.sub(r"\s+", " ", text.replace("\u202f", " ").replace("\xa0", " "))


def add(client: TestClient, **changed: str) -> str:
    """Enter the worked skein, or one that differs from it, and follow to where it leads."""
    answer = client.post("/skeins/new", data={**WORKED, **changed})
    assert answer.status_code == 200, words(answer.text)
    return answer.text


def fault(html: str, field: str) -> str:
    """What stands beside a field."""
    found = re.search(rf'<span class="fault" id="e-{field}">(.*?)</span>', html)
    return words(found[1]) if found else ""


def only_skein(store: Store) -> Holding:
    with store.reading() as session:
        book = load_book(session)
    return next(one for one in book.holdings if one.kind in ("skein", "ball"))


def ash(store: Store, grams: int = 500) -> None:
    """A carded fleece called Ash."""
    with store.writing() as session:
        put(session, Fleece("ash", "Ash", yield_pct=60.0, colour="#6b6259"))
        put(session, Holding("ash-wool", "fleece", "Ash", fleece_id="ash", state="carded"))
        mg = grams * 1000
        post(session, "arrive", DAY, [Line("come in", -mg), Line("ash-wool", mg)])


def waistcoat(store: Store, yarn_id: str) -> None:
    """A plan for a yarn, with one part."""
    with store.writing() as session:
        yarns = (RoleYarn("main", yarn_id),)
        put(session, Plan("vest", "Waistcoat", gauge=Gauge(22, 30), yarns=yarns))
        put(session, Part("vest-back", "vest", "back", Rectangle(300, 300)))


def test_an_empty_shelf_says_what_to_do_first(client: TestClient) -> None:
    page = words(client.get("/skeins").text)
    assert "No skein yet." in page
    assert "count the turns, weigh it" in page


def test_the_worked_skein(client: TestClient) -> None:
    """1.5 m × 142 turns, 96 g → 213.0 m, 450.70 tex, 221.9 m/100 g."""
    page = words(add(client))
    assert "Holds 213 m, 96 g : 222 m/100 g; all of it free." in page
    assert "450.7 tex" in page
    assert "3 Light by its grist" in page
    assert "G-001" in page
    assert "142 turns of 1.5 m" in page


def test_a_girth_is_told_as_reels_are_made(client: TestClient) -> None:
    form = shown_values(client.get("/settings").text, "/settings")
    client.post("/settings", data=form | {"length_unit": "yd"})
    assert "142 turns of 1.5 m" in words(add(client, girth="1.5 m"))
    assert "142 turns of 2 yd" in words(add(client, girth="2 yd", yarn_name="Other"))


def test_what_was_saved_is_said_and_can_be_undone(client: TestClient, store: Store) -> None:
    page = add(client)
    assert "G-001 is on the shelf with 96 g." in words(page)
    undo = re.search(r'action="(/undo/\d+)"', page)
    assert undo
    client.post(undo[1], data={"back": "/skeins"})
    with store.reading() as session:
        assert balance_of(session, only_skein(store).id).mm == 0


def test_a_length_with_its_unit_and_a_sum_for_the_weight(client: TestClient, store: Store) -> None:
    add(client, turns="", length="250 yd", mass="2×48 g")
    with store.reading() as session:
        held = balance_of(session, only_skein(store).id)
    assert (held.mm, held.mg) == (228_600, 96_000)


def test_before_finishing_only_is_reckoned_shorter_and_said(client: TestClient) -> None:
    """213 m less the 12 % that yarn shrinks where nothing better is known: 187 m; /0.96 = 195."""
    page = words(add(client, turns="", turns_before="142"))
    assert "Holds about 187 m, 96 g" in page
    assert "It measured 213 m before finishing and is expected shorter" in page
    assert "about 195 m/100 g, expected once it is finished" in page


def test_measured_again_after_finishing_the_finished_length_counts(
    client: TestClient, store: Store
) -> None:
    add(client, turns="", turns_before="150")
    skein = only_skein(store)
    sent = {"girth": "1.5", "turns": "142", "wool": "dry", "stamp": stamp(skein)}
    page = words(client.post(f"/skeins/{skein.id}/weigh", data=sent).text)
    assert "Holds 213 m, 96 g" in page
    assert "the book follows it" in page


@pytest.mark.parametrize(
    ("field", "typed", "message"),
    [
        ("turns", "", "Say how long it is"),
        ("turns", "many", "many"),
        ("mass", "", "Say how much it weighs"),
        ("mass", "-3", ""),
        ("length", "213", "not both"),
        ("yarn_name", "", "Name the new yarn"),
        ("plies", "2.5", "whole number"),
        ("wraps", "900", "150 or less"),
        ("fleece", "no-such", "Choose one"),
        ("day", "yesterday", "year, month and day"),
        ("code", "x" * 31, "at most 30"),
    ],
)
def test_bad_input_is_said_beside_the_field_and_kept(
    client: TestClient, store: Store, field: str, typed: str, message: str
) -> None:
    sent = {**WORKED, field: typed, "place": "blue box"}
    answer = client.post("/skeins/new", data=sent)
    assert answer.status_code == 422
    assert message in fault(answer.text, field)
    assert fault(answer.text, field)
    assert 'value="blue box"' in answer.text
    with store.reading() as session:
        assert load_book(session).yarns == ()


def test_faults_on_top_stand_in_the_order_of_the_page(client: TestClient) -> None:
    answer = client.post("/skeins/new", data={**WORKED, "turns": "", "mass": "", "yarn_name": ""})
    faults = re.findall(r'<a href="#f-(\w+)">', answer.text)
    assert faults == ["turns", "mass", "yarn_name"]


def test_a_skein_needs_a_code(client: TestClient, store: Store) -> None:
    add(client)
    skein = only_skein(store)
    answer = client.post(f"/skeins/{skein.id}/change", data=change(skein, code=" "))
    assert "needs a code" in fault(answer.text, "code")


def test_a_code_in_use_is_said_beside_it_and_nothing_is_half_saved(
    client: TestClient, store: Store
) -> None:
    add(client, code="G-7")
    again = {**WORKED, "code": "G-7", "yarn_name": "Green"}
    answer = client.post("/skeins/new", data=again)
    assert answer.status_code == 422
    assert "G-7 is already in use" in fault(answer.text, "code")
    with store.reading() as session:
        assert [one.name for one in load_book(session).yarns] == ["Grey two-ply"]


def test_a_yarn_named_twice_is_said_beside_its_name(client: TestClient) -> None:
    add(client)
    answer = client.post("/skeins/new", data={**WORKED, "yarn_name": "grey TWO-ply"})
    assert "already a yarn" in fault(answer.text, "yarn_name")


def test_a_skein_takes_its_wool_off_the_fleece(client: TestClient, store: Store) -> None:
    ash(store)
    html = add(client, fleece="ash")
    assert "101 g were taken off the fleece for it" in words(html)
    assert '<a href="/fleeces/ash">Ash</a>' in html
    assert 'fill="#6b6259"' in html


def test_a_fleece_with_too_little_says_what_it_holds(client: TestClient, store: Store) -> None:
    ash(store, grams=50)
    answer = client.post("/skeins/new", data={**WORKED, "fleece": "ash"})
    assert answer.status_code == 422
    said = fault(answer.text, "fleece")
    assert "holds 50 g (carded)" in said
    assert "101 g" in said


def test_spun_before_the_weighing_it_simply_arrives(client: TestClient, store: Store) -> None:
    ash(store, grams=50)
    add(client, fleece="ash", taken="before")
    with store.reading() as session:
        assert balance_of(session, "ash-wool").mg == 50_000


def test_names_are_text_and_never_markup(client: TestClient) -> None:
    nasty = "<script>alert(1)</script>"
    page = add(client, yarn_name=nasty, notes=nasty, place=nasty, colour_name=nasty, code="<b>1")
    listed = client.get("/skeins").text
    for html in (page, listed, client.get("/yarns").text):
        assert "<script>alert" not in html
        assert "&lt;script&gt;" in html
    assert "&lt;b&gt;1" in listed


BALLS = {
    "count": "6",
    "mass": "50 g",
    "length": "125 m",
    "yarn": "new",
    "yarn_name": "Moss",
    "dye_lot": "214",
    "price": "4.20",
    "twist": "",
    "day": "2026-03-01",
}


def test_six_balls_alike(client: TestClient, store: Store) -> None:
    page = words(client.post("/skeins/bought", data=BALLS).text)
    assert "Six balls are on the shelf: M-001 to M-006." in page
    assert "Holds 750 m, 300 g in 6 skeins" in page
    ball = only_skein(store)
    assert (ball.dye_lot, ball.price) == ("214", "4.20")


def test_more_of_the_same_needs_no_label(client: TestClient, store: Store) -> None:
    client.post("/skeins/bought", data=BALLS)
    yarn = only_skein(store).yarn_id or ""
    more = {**BALLS, "count": "1", "mass": "", "length": "", "yarn": yarn}
    page = words(client.post("/skeins/bought", data=more).text)
    assert "M-007 is on the shelf." in page
    assert "Holds 125 m, 50 g" in page


@pytest.mark.parametrize(
    ("field", "typed"),
    [
        ("count", ""),
        ("count", "0"),
        ("count", "1000"),
        ("mass", ""),
        ("length", ""),
        ("length", "1,200 m"),
    ],
)
def test_a_label_at_fault(client: TestClient, field: str, typed: str) -> None:
    answer = client.post("/skeins/bought", data={**BALLS, field: typed})
    assert answer.status_code == 422
    assert fault(answer.text, field)


def test_a_code_in_use_refuses_all_balls(client: TestClient) -> None:
    client.post("/skeins/bought", data={**BALLS, "code": "M-3"})
    answer = client.post("/skeins/bought", data={**BALLS, "code": "M-1", "yarn_name": "Other"})
    assert "M-3 is already in use" in fault(answer.text, "code")


def test_a_damp_reading_is_kept_and_moves_nothing(client: TestClient, store: Store) -> None:
    add(client)
    skein = only_skein(store)
    sent = {"mass": "120", "wool": "damp", "girth": "1.5", "stamp": stamp(skein)}
    page = words(client.post(f"/skeins/{skein.id}/weigh", data=sent).text)
    assert "the book stays as it is" in page
    assert "Holds 213 m, 96 g" in page
    assert "damp" in page


def test_a_dry_weighing_moves_grams_and_metres(client: TestClient, store: Store) -> None:
    add(client)
    skein = only_skein(store)
    sent = {"mass": "48", "wool": "dry", "girth": "1.5", "wraps": "11", "stamp": stamp(skein)}
    page = words(client.post(f"/skeins/{skein.id}/weigh", data=sent).text)
    assert "Holds 107 m, 48 g" in page
    assert "11 wraps per inch, measured" in page


def test_nothing_measured_is_asked_about(client: TestClient, store: Store) -> None:
    add(client)
    skein = only_skein(store)
    answer = client.post(f"/skeins/{skein.id}/weigh", data={"girth": "1.5", "stamp": stamp(skein)})
    assert answer.status_code == 422
    assert "Fill in what you measured" in fault(answer.text, "mass")


def change(skein: Holding, **changed: str) -> dict[str, str]:
    kept = {"code": skein.code, "yarn": skein.yarn_id or "", "stamp": stamp(skein)}
    return {**kept, **changed}


def test_what_is_written_of_it_can_be_changed(client: TestClient, store: Store) -> None:
    add(client)
    skein = only_skein(store)
    sent = change(skein, code="Heron", place="drawer", colour="#777777", colour_known="1")
    page = words(client.post(f"/skeins/{skein.id}/change", data=sent).text)
    assert "Heron is changed." in page
    changed = only_skein(store)
    assert (changed.code, changed.place, changed.colour) == ("Heron", "drawer", "#777777")


def test_a_skein_is_looked_at_again_for_moth(client: TestClient, store: Store) -> None:
    add(client)
    skein = only_skein(store)
    sent = change(skein, look_again="2026-01-02", place="chest")
    page = words(client.post(f"/skeins/{skein.id}/change", data=sent).text)
    assert "Look again for moth 2 January 2026" in page
    assert f"{skein.code} : due, in chest." in words(client.get("/").text)
    form = client.get(f"/skeins/{skein.id}/change").text
    assert 'value="2026-01-02"' in form
    client.post(f"/wool-book/{skein.id}/looked")
    assert "due, in chest" not in words(client.get("/").text)


def test_a_stale_form_overwrites_nothing(client: TestClient, store: Store) -> None:
    add(client)
    skein = only_skein(store)
    client.post(f"/skeins/{skein.id}/change", data=change(skein, place="drawer"))
    for action in ("change", "weigh", "put-away"):
        sent = change(skein, place="box", going="given away", mass="3")
        answer = client.post(f"/skeins/{skein.id}/{action}", data=sent)
        assert answer.status_code == 409
    assert only_skein(store).place == "drawer"


def test_a_code_of_another_skein_is_refused(client: TestClient, store: Store) -> None:
    add(client)
    skein = only_skein(store)
    add(client, yarn_name="Green", code="X-1")
    answer = client.post(f"/skeins/{skein.id}/change", data=change(skein, code="X-1"))
    assert answer.status_code == 422
    assert "already in use" in fault(answer.text, "code")


def test_put_away_and_taken_back(client: TestClient, store: Store) -> None:
    add(client)
    skein = only_skein(store)
    sent = {"stamp": stamp(skein), "going": "given away", "day": "2026-04-01"}
    page = client.post(f"/skeins/{skein.id}/put-away", data=sent).text
    assert "Put away on 1 April 2026." in words(page)
    assert "G-001" in client.get("/skeins?state=put+away").text
    assert "G-001" not in client.get("/skeins").text
    back = re.findall(r'action="(/undo/\d+)"', page)[-1]
    page = words(client.post(back, data={"back": f"/skeins/{skein.id}"}).text)
    assert "Holds 213 m, 96 g" in page


def test_a_going_that_is_none_is_refused(client: TestClient, store: Store) -> None:
    add(client)
    skein = only_skein(store)
    sent = {"stamp": stamp(skein), "going": "flown"}
    answer = client.post(f"/skeins/{skein.id}/put-away", data=sent)
    assert answer.status_code == 422
    assert fault(answer.text, "going")


def test_its_page_says_where_it_is_promised_and_how_firm_it_knits(
    client: TestClient, store: Store
) -> None:
    add(client)
    skein = only_skein(store)
    waistcoat(store, skein.yarn_id or "")
    with store.writing() as session:
        put(session, Promise("p", "vest", "vest-back", skein.id, 100_000))
    html = client.get(f"/skeins/{skein.id}").text
    page = words(html)
    assert re.search(r"\d+ m free, 100 m promised to Waistcoat, [\d.]+ m in reserve\.", page)
    assert '<a href="/garments/vest">Waistcoat</a>' in html
    assert "11.7, ordinary, at the gauge of Waistcoat , 22 × 30 in 10 cm" in page
    assert "3 Light by its grist and its gauge" in page


def test_from_the_work_list_and_back_to_its_garment(client: TestClient, store: Store) -> None:
    ash(store)
    yarn = Yarn("grey", "Grey", fleece_id="ash")
    with store.writing() as session:
        put(session, yarn)
    waistcoat(store, "grey")
    form = client.get("/skeins/new?plan=vest&yarn=grey").text
    assert '<option value="grey" selected>' in form
    assert '<option value="ash" selected>' in form
    assert 'value="G-001"' in form
    sent = {**WORKED, "yarn": "grey", "fleece": "ash", "plan": "vest"}
    answer = client.post("/skeins/new", data=sent, follow_redirects=False)
    assert (answer.status_code, answer.headers["location"]) == (303, "/garments/vest")


def test_an_address_that_asks_for_what_is_gone_is_an_ordinary_form(client: TestClient) -> None:
    answer = client.get("/skeins/new?plan=x&yarn=y&fleece=z")
    assert answer.status_code == 200
    assert '<option value="new" selected>' in answer.text


@pytest.mark.parametrize("path", ["/skeins/none", "/skeins/none/weigh", "/skeins/waste"])
def test_a_skein_that_is_not_there(client: TestClient, path: str) -> None:
    assert client.get(path).status_code == 404


def test_in_ounces_and_yards_with_a_decimal_comma(client: TestClient, store: Store) -> None:
    with store.writing() as session:
        put(session, Settings(length_unit="yd", mass_unit="oz", grist_unit="yd/lb", decimal=","))
    page = words(add(client, girth="2", turns="125", mass="3,5"))
    assert "Holds 250 yd, 3,5 oz : 1 143 yd/lb" in page
    with store.reading() as session:
        readings = readings_of(session, only_skein(store).id)
    assert {(one.typed, one.unit) for one in readings} == {("125", "turns"), ("3,5", "oz")}


def test_the_list_filters_sorts_and_keeps_its_address(client: TestClient) -> None:
    add(client)
    add(client, yarn_name="Fine moss", turns="400", mass="50", colour_name="moss")
    page = client.get("/skeins").text
    assert page.index("F-001") < page.index("G-001")
    assert "2 skeins hold 813 m" in words(page)
    assert "F-001" not in client.get("/skeins?to=300").text
    assert "G-001" not in client.get("/skeins?colour=moss").text
    assert "G-001" not in client.get("/skeins?class=0").text
    assert "F-001" in client.get("/skeins?class=0").text
    code = client.get("/skeins?sort=metres&q=001").text
    assert code.index("F-001") < code.index("G-001")
    assert "No skein is like this." in words(client.get("/skeins?q=nowhere").text)


def test_a_filter_at_fault_is_said_and_the_rest_still_holds(client: TestClient) -> None:
    add(client)
    answer = client.get("/skeins?from=thin&q=grey")
    assert answer.status_code == 422
    assert fault(answer.text, "from")
    assert "G-001" in answer.text
    assert client.get("/skeins?from=-2").status_code == 422


def test_a_swap_brings_the_list_alone(client: TestClient) -> None:
    add(client)
    headers = {"hx-request": "true"}
    part = client.get("/skeins?state=free", headers=headers).text
    assert "G-001" in part
    assert "<html" not in part
    assert "<nav" not in part


def test_the_list_goes_on_with_plain_links(client: TestClient) -> None:
    client.post("/skeins/bought", data={**BALLS, "count": "70"})
    first = client.get("/skeins?sort=code&q=Moss").text
    assert "1 to 60 of 70" in words(first)
    assert "/skeins?q=Moss&amp;sort=code&amp;page=2" in first
    second = client.get("/skeins?sort=code&q=Moss&page=2").text
    assert "61 to 70 of 70" in words(second)
    assert "M-070" in second
    assert '/skeins?q=Moss&amp;sort=code"' in second


@pytest.mark.parametrize(
    ("action", "shows"),
    [("change", 'value="G-001"'), ("put-away", "given away or sold"), ("weigh", "still damp")],
)
def test_each_form_opens_with_what_is_known(
    client: TestClient, store: Store, action: str, shows: str
) -> None:
    add(client)
    skein = only_skein(store)
    html = client.get(f"/skeins/{skein.id}/{action}").text
    assert shows in html
    assert f'name="stamp" value="{stamp(skein)}"' in html


def test_bought_balls_of_a_known_yarn_begin_with_that_yarn(client: TestClient) -> None:
    client.post("/skeins/bought", data=BALLS)
    yarn = re.findall(r'href="/yarns/([^"]+)"', client.get("/skeins").text)[0]
    html = client.get(f"/skeins/bought?yarn={yarn}").text
    assert f'<option value="{yarn}" selected>' in html


def test_a_fleece_without_any_wool_says_so(client: TestClient, store: Store) -> None:
    with store.writing() as session:
        put(session, Fleece("bare", "Bare"))
    answer = client.post("/skeins/new", data={**WORKED, "fleece": "bare"})
    assert "holds no wool now" in fault(answer.text, "fleece")


def test_a_skein_used_up_holds_nothing_any_more(client: TestClient, store: Store) -> None:
    add(client)
    skein = only_skein(store)
    with store.writing() as session:
        post(session, "use", DAY, [Line(skein.id, -96_000, -213_000), Line("waste", 96_000)])
    page = words(client.get(f"/skeins/{skein.id}").text)
    assert "Holds nothing any more." in page
    assert "knit" in page
    assert "used up" in client.get("/skeins?state=put+away").text


def test_a_grist_range_in_tex(client: TestClient, store: Store) -> None:
    with store.writing() as session:
        put(session, Settings(grist_unit="tex"))
    add(client)
    assert "G-001" in client.get("/skeins?from=440&to=460").text
    assert "G-001" not in client.get("/skeins?from=460").text
    assert "G-001" not in client.get("/skeins?from=440&class=0").text


def test_a_filter_that_is_none_of_the_choices(client: TestClient) -> None:
    add(client)
    for asked in ("state=sold", "sort=luck", "class=99", "page=0"):
        answer = client.get(f"/skeins?{asked}")
        assert answer.status_code == 422
        assert "G-001" in answer.text


def test_undoing_a_spun_skein_gives_the_fleece_its_wool_back(
    client: TestClient, store: Store
) -> None:
    ash(store)
    undo = re.search(r'action="(/undo/\d+)"', add(client, fleece="ash"))
    assert undo
    client.post(undo[1], data={"back": "/skeins"})
    with store.reading() as session:
        assert balance_of(session, "ash-wool").mg == 500_000
    assert "G-001" not in client.get("/skeins").text


def test_a_yarn_that_wraps_thicker_than_its_grist_is_called_loftier(
    client: TestClient, store: Store
) -> None:
    """8 wraps per inch are (8/0.376)² = 453 yd/lb, 1 096 tex, against 450.7 tex by grist."""
    add(client, wraps="8")
    skein = only_skein(store)
    waistcoat(store, skein.yarn_id or "")
    page = words(client.get(f"/skeins/{skein.id}").text)
    assert "8 wraps per inch, measured 1 March 2026" in page
    assert "the yarn is loftier than usual for its grist" in page


@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ({"turns": "", "length": "12000", "mass": "9"}, "12 000 m in 9 g is 133 333 m/100 g"),
        ({"turns": "", "length": "3", "mass": "90"}, "no yarn is so thick"),
        ({"wraps": "45"}, "of which about 12 wraps are expected in an inch"),
    ],
)
def test_yarn_that_can_hardly_be_is_asked_about(
    client: TestClient, typed: dict[str, str], said: str
) -> None:
    answer = client.post("/skeins/new", data=WORKED | typed)
    assert answer.status_code == 422
    assert said in fault(answer.text, "sure")
    form = shown_values(answer.text, "/skeins/new")
    assert "sure" not in form
    assert client.post("/skeins/new", data=form | {"sure": "1"}).url.path != "/skeins/new"


def test_a_measurement_that_can_hardly_be_is_asked_about(client: TestClient, store: Store) -> None:
    add(client)
    skein = only_skein(store)
    sent = {"stamp": stamp(skein), "wool": "dry"}
    for typed in ({"length": "60000"}, {"wraps": "60"}, {"length": "2", "mass": "95"}):
        answer = client.post(f"/skeins/{skein.id}/weigh", data=sent | typed)
        assert answer.status_code == 422
        assert "tick this" in fault(answer.text, "sure")
    assert client.post(f"/skeins/{skein.id}/weigh", data=sent | {"mass": "9"}).status_code == 200


def test_a_label_that_can_hardly_be_is_asked_about(client: TestClient) -> None:
    label = {"count": "2", "mass": "50", "length": "12500 m", "yarn": "new", "yarn_name": "Moss"}
    answer = client.post("/skeins/bought", data=label)
    assert "no yarn is so thin" in fault(answer.text, "sure")


def test_a_damp_skein_comes_as_weighed_and_is_put_right_when_dry(
    client: TestClient, store: Store
) -> None:
    """Drying takes water and no metre."""
    page = words(add(client, mass="120", wool="damp"))
    assert "G-001 is on the shelf with 120 g, damp: weigh it again when it is dry." in page
    assert "Weighed damp." in page
    skein = only_skein(store)
    sent = {"stamp": stamp(skein), "mass": "96", "wool": "dry"}
    page = words(client.post(f"/skeins/{skein.id}/weigh", data=sent).text)
    assert "Holds 213 m, 96 g : 222 m/100 g" in page
    assert "Weighed damp." not in page
    client.post(f"/skeins/{skein.id}/weigh", data=sent | {"mass": "48"})
    with store.reading() as session:
        held = balance_of(session, skein.id)
    assert (held.mg, held.mm) == (48_000, 106_500)
