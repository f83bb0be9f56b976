"""The fleeces' pages, as a maker uses them in a browser without JavaScript."""

import re
from datetime import date, timedelta

import pytest
from starlette.testclient import TestClient

from app.planning.answers import WorkLine
from app.store.engine import Store
from app.store.records import load_book, remove
from app.web.pages.work_list import work_row
from app.web.shown import THIN
from tests.web.forms import shown_values

BRAMBLE = {
    "name": "Bramble 2026",
    "breed": "Cheviot",
    "fibre": "wool",
    "weight": "1,64 kg",
    "state": "raw",
    "day": "2026-03-01",
}
FRAGMENT = {"hx-request": "true", "hx-request-type": "partial"}


def plain(text: str) -> str:
    return text.replace(THIN, " ").replace("\u00a0", " ")


def added(client: TestClient, **changed: str) -> str:
    """The address of a fleece that was added."""
    answer = client.post("/fleeces/new", data=BRAMBLE | changed)
    assert answer.status_code == 200, answer.text
    return str(answer.url.path)


def weighed(client: TestClient, address: str, **typed: str):
    form = shown_values(client.get(f"{address}/weigh").text, f"{address}/weigh")
    return client.post(f"{address}/weigh", data=form | typed)


def held_g(store: Store, holding_kind: str = "fleece") -> float:
    with store.reading() as session:
        book = load_book(session)
        found = [one for one in book.holdings if one.kind == holding_kind]
        return sum(book.balances[one.id].mg for one in found if one.id in book.balances) / 1000


def test_an_empty_shelf_says_what_to_do_first(client: TestClient):
    page = client.get("/fleeces").text
    assert "No fleece yet." in page
    assert 'href="/fleeces/new"' in page


def test_a_fleece_is_added_and_answers_what_it_can_become(client: TestClient):
    page = plain(client.get(added(client)).text)
    assert "1 640 g raw:" in page
    assert (
        "about 540 to 820 g of yarn" in page
    )  # 1640 × 0.85 × 0.55 × 0.93 × 0.97 × 0.98 = 678 ± 80
    assert "55 ± 5 %, printed of Cheviot (published: a printed breed table)" in page
    assert "1 640 g" in plain(client.get("/fleeces").text)


def test_the_grist_is_a_question_in_the_address(client: TestClient):
    address = added(client, state="scoured", weight="1000 g")
    page = plain(client.get(address, params={"grist": "200"}).text)
    # 1000 g × 0.93 × 0.97 × 0.98 = 884 ± 42.5 g; 2 m/g; 1.645 u either way
    assert "at 200 m/100 g that is 1 620 to 1 920 m" in page
    part = plain(client.get(address, params={"grist": "200"}, headers=FRAGMENT).text)
    assert part.strip().startswith('<p class="answer"')
    assert "1 620 to 1 920 m" in part


@pytest.mark.parametrize("typed", ["thick", "0", "1e9", "-3"])
def test_a_grist_that_cannot_be_is_said_and_kept(client: TestClient, typed: str):
    address = added(client)
    answer = client.get(address, params={"grist": typed})
    assert answer.status_code == 422
    assert f'value="{typed}"' in answer.text
    assert 'id="e-grist"' in answer.text


def test_what_is_wrong_stands_beside_its_field_and_what_was_typed_is_kept(client: TestClient):
    typed = BRAMBLE | {"name": "", "weight": "about two kilos", "yield_pct": "150", "notes": "moth"}
    answer = client.post("/fleeces/new", data=typed)
    assert answer.status_code == 422
    assert 'href="#f-name"' in answer.text
    assert 'aria-describedby="h-name e-name"' in answer.text
    assert 'value="about two kilos"' in answer.text
    assert "This must be 100 or less." in answer.text
    assert "moth" in answer.text
    assert "No fleece yet." in client.get("/fleeces").text


@pytest.mark.parametrize(
    ("field", "typed", "said"),
    [
        ("day", (date.today() + timedelta(days=2)).isoformat(), "has not come yet"),
        ("day", "yesterday", "as in 2026-03-01"),
        ("day", "", "This is needed."),
        ("state", "felted", "Choose one of these."),
        ("damp", "1", "Wool that is damp does not move the book"),
        ("micron", "400", "This must be 60 or less."),
        ("staple_mm", "0,2", "This must be 1 cm or more."),
        ("name", "x" * 81, "This takes at most 80 signs"),
    ],
)
def test_a_fault_is_said_in_the_field_s_own_words(
    client: TestClient, field: str, typed: str, said: str
):
    answer = client.post("/fleeces/new", data=BRAMBLE | {field: typed})
    assert answer.status_code == 422
    assert said in plain(answer.text)


def test_a_name_is_given_once(client: TestClient):
    added(client)
    answer = client.post("/fleeces/new", data=BRAMBLE)
    assert answer.status_code == 422
    assert "Something else is called Bramble 2026 already." in answer.text


def test_markup_in_a_name_is_only_text(client: TestClient):
    name = '<script>alert("x")</script>'
    page = client.get(added(client, name=name, notes="<img src=x onerror=alert(1)>")).text
    assert "<script>alert" not in page
    assert "<img" not in page
    assert "&lt;script&gt;" in page
    assert "<script>alert" not in client.get("/fleeces").text


def test_a_change_keeps_what_was_not_touched(client: TestClient, store: Store):
    address = added(client, colour="#ece3d0", colour_known="1", staple_mm="11,5")
    form = shown_values(client.get(f"{address}/change").text, f"{address}/change")
    assert client.post(f"{address}/change", data=form | {"yield_pct": "58 %"}).status_code == 200
    with store.reading() as session:
        fleece = load_book(session).fleeces[0]
    assert (fleece.yield_pct, fleece.staple_mm, fleece.colour) == (58.0, 115, "#ece3d0")
    assert "58 %, your own" in plain(client.get(address).text)


def test_a_colour_is_dropped_by_its_box(client: TestClient, store: Store):
    address = added(client, colour="#ece3d0", colour_known="1")
    form = shown_values(client.get(f"{address}/change").text, f"{address}/change")
    del form["colour_known"]
    client.post(f"{address}/change", data=form)
    with store.reading() as session:
        assert load_book(session).fleeces[0].colour == ""


def test_a_change_with_a_fault_shows_the_form_again(client: TestClient):
    address = added(client)
    form = shown_values(client.get(f"{address}/change").text, f"{address}/change")
    answer = client.post(f"{address}/change", data=form | {"name": " "})
    assert answer.status_code == 422
    added(client, name="Nettle")
    answer = client.post(f"{address}/change", data=form | {"name": "Nettle"})
    assert answer.status_code == 422
    assert "Something else is called Nettle already." in answer.text


def test_a_stale_form_overwrites_nothing(client: TestClient):
    address = added(client)
    first = shown_values(client.get(f"{address}/change").text, f"{address}/change")
    client.post(f"{address}/change", data=first | {"source": "a neighbour"})
    answer = client.post(f"{address}/change", data=first | {"source": "the fair"})
    assert answer.status_code == 409
    assert "changed meanwhile" in answer.text
    page = client.get(address).text
    assert "a neighbour" in page
    assert "the fair" not in page


@pytest.mark.parametrize("action", ["weigh", "put-away"])
def test_a_stale_weighing_or_leaving_is_refused(client: TestClient, action: str):
    address = added(client)
    weigh = shown_values(client.get(f"{address}/weigh").text, f"{address}/weigh")
    weighed(client, address, state="skirted", weight="1400")
    answer = client.post(f"{address}/{action}", data=weigh | {"weight": "1300"})
    assert answer.status_code == 409
    assert "1 400 g skirted" in plain(client.get(address).text)


def test_a_step_forward_sends_what_it_took_to_waste_and_can_be_undone(
    client: TestClient, store: Store
):
    address = added(client)
    said = plain(weighed(client, address, state="skirted", weight="1400").text)
    assert "skirted: 240 g went on the way, 15 % of it; 7 to 23 % is usual." in said
    assert held_g(store, "waste") == 240
    undone = client.post("/undo/2", data={"back": address})
    assert undone.url.path == address
    assert "1 640 g raw:" in plain(undone.text)
    assert held_g(store, "waste") == 0


def test_weighing_again_is_put_right_by_weighing_and_moisture(client: TestClient, store: Store):
    address = added(client)
    said = plain(weighed(client, address, weight="1600").text)
    assert "Bramble 2026 is weighed: 40 g less than the book had." in said
    assert (held_g(store, "waste"), held_g(store, "weighing and moisture")) == (0, 40)


def test_damp_wool_moves_nothing_until_it_is_dry(client: TestClient, store: Store):
    address = added(client)
    said = weighed(client, address, state="drying", weight="1500", damp="1").text
    assert "Bramble 2026 is now drying. It was damp, so the book waits for it to dry." in said
    assert held_g(store) == 1640
    said = weighed(client, address, weight="1200", state="drying")
    assert "It was damp, so the book waits for it to dry." in said.text
    assert held_g(store) == 1640
    page = plain(client.get(address).text)
    assert "It lost 20 % between the last two weighings: still drying." in page
    dry = plain(weighed(client, address, weight="800", state="scoured").text)
    assert "is now scoured: 840 g went on the way, 51 % of it; 45 to 62 % is usual." in dry
    assert (held_g(store, "waste"), held_g(store, "weighing and moisture")) == (840, 0)


def test_the_work_list_leads_to_washing_a_part_and_not_to_losing_the_fleece(
    client: TestClient, store: Store
):
    address = added(client, weight="1842")
    with store.reading() as session:
        wool = next(one for one in load_book(session).holdings if one.kind == "fleece")
    row = work_row(WorkLine("wash", "", g=590, fleece_id=wool.fleece_id, holding_id=wool.id))
    form = shown_values(client.get(row.tick_url).text, f"{address}/weigh")
    assert (form["done"], form["taken"], form["state"]) == ("part", "590 g", "scoured")
    page = plain(client.post(f"{address}/weigh", data=form | {"weight": "310"}).text)
    assert "A part of Bramble 2026 is now scoured: 280 g went on the way, 47 % of it; 4" in page
    assert "1 252 g stay as they were." in page
    assert "1 252 g raw, 310 g scoured:" in page
    assert "590 g of it from raw to scoured" in page
    assert (held_g(store), held_g(store, "fibre"), held_g(store, "waste")) == (1252, 310, 280)
    assert "raw, scoured" in client.get("/fleeces").text


def test_each_part_is_weighed_and_all_are_put_away_together(client: TestClient, store: Store):
    address = added(client, weight="1842")
    weighed(client, address, done="part", taken="590", state="scoured", weight="310")
    page = client.get(address).text
    for url, state in re.findall(r'href="([^"]+)">Weigh the [\d\s ]+g (\w+)<', page):
        assert f"</b>, {state}." in client.get(url).text
    url = re.search(r'href="([^"]+)">Weigh the 310', page)
    assert url
    form = shown_values(client.get(url[1]).text, f"{address}/weigh")
    client.post(f"{address}/weigh", data=form | {"state": "carded", "weight": "290"})
    assert (held_g(store), held_g(store, "fibre")) == (1252, 290)
    away = shown_values(client.get(address).text, f"{address}/put-away")
    client.post(f"{address}/put-away", data=away | {"going": "given away"})
    assert held_g(store, "given away") == 1542
    client.post("/undo/4", data={"back": address})
    assert "1 252 g raw, 290 g carded:" in plain(client.get(address).text)


@pytest.mark.parametrize(
    ("before", "typed", "said"),
    [
        ("raw", {"state": "scoured", "weight": "310"}, "310 g of 1 640 g: 81 % would be gone"),
        ("raw", {"state": "scoured", "weight": "310"}, "If only a part of it was done, say so"),
        ("raw", {"state": "raw", "weight": "300"}, "82 % would be gone."),
        ("scoured", {"state": "raw", "weight": "1640"}, "This goes back from scoured to raw."),
        ("scoured", {"state": "carded", "weight": "1700"}, "1 700 g is more than the 1 640 g"),
    ],
)
def test_what_can_hardly_be_is_asked_about(
    client: TestClient, store: Store, before: str, typed: dict[str, str], said: str
):
    address = added(client, state=before)
    form = shown_values(client.get(f"{address}/weigh").text, f"{address}/weigh") | typed
    assert "sure" not in form
    asked = client.post(f"{address}/weigh", data=form)
    assert asked.status_code == 422
    assert said in plain(asked.text)
    assert 'id="e-sure"' in asked.text
    assert held_g(store) == 1640
    again = shown_values(asked.text, f"{address}/weigh")
    assert again["weight"] == typed["weight"]
    client.post(f"{address}/weigh", data=again | {"sure": "1"})
    assert held_g(store) == float(typed["weight"])


@pytest.mark.parametrize(
    ("typed", "field"),
    [
        ({"done": "part", "taken": "", "state": "scoured"}, "taken"),
        ({"done": "part", "taken": "2 kg", "state": "scoured"}, "taken"),
        ({"done": "part", "taken": "500", "state": "raw"}, "state"),
    ],
)
def test_a_part_says_how_much_of_it_and_what_it_became(
    client: TestClient, typed: dict[str, str], field: str
):
    answer = weighed(client, added(client), weight="300", **typed)
    assert answer.status_code == 422
    assert f'id="e-{field}"' in answer.text


def test_a_part_of_everything_is_everything(client: TestClient, store: Store):
    address = added(client)
    weighed(client, address, done="part", taken="1640", state="scoured", weight="800")
    assert (held_g(store), held_g(store, "fibre")) == (800, 0)


@pytest.mark.parametrize("taken", ["lots", "99999 g", "0", ""])
def test_an_address_that_proposes_no_part_proposes_all(client: TestClient, taken: str):
    address = added(client)
    form = shown_values(client.get(f"{address}/weigh?taken={taken}").text, f"{address}/weigh")
    assert (form["done"], form["taken"]) == ("all", "")


def test_a_weighing_with_a_fault_keeps_what_was_typed(client: TestClient):
    address = added(client)
    answer = weighed(client, address, weight="lots", damp="1")
    assert answer.status_code == 422
    assert 'value="lots"' in answer.text
    assert 'id="e-damp"' in answer.text
    assert "1 640 g raw" in plain(client.get(address).text)


def test_a_fleece_put_away_is_off_the_shelf_and_comes_back_by_undo(
    client: TestClient, store: Store
):
    address = added(client)
    form = shown_values(client.get(address).text, f"{address}/put-away")
    answer = client.post(f"{address}/put-away", data=form | {"going": "given away"})
    assert "Bramble 2026 is put away." in answer.text
    assert "Put away: 1" in answer.text
    assert held_g(store, "given away") == 1640
    assert client.get(f"{address}/weigh").status_code == 409
    assert "Put away" in client.get(address).text
    client.post("/undo/2", data={"back": "/fleeces"})
    assert "1 640 g raw" in plain(client.get(address).text)


def test_cautions_stand_where_the_state_makes_them_matter(client: TestClient):
    assert "wear a mask" in client.get(added(client)).text
    combed = client.get(added(client, name="Top", state="combed")).text
    assert "Take care." not in combed


def test_the_form_asks_the_table_of_breeds(client: TestClient):
    form = client.get("/fleeces/new").text
    assert 'hx-get="/tables/breeds"' in form
    assert 'hx-select="#says"' in form
    part = client.get("/tables/breeds?breed=Corriedale", headers=FRAGMENT).text
    assert '<span id="says">Corriedale: yield' in part
    assert 'id="says"' not in client.get("/tables/breeds?breed=", headers=FRAGMENT).text


def test_the_old_address_of_the_breeds_leads_to_their_table(client: TestClient):
    answer = client.get("/fleeces/breeds?breed=Cheviot", follow_redirects=False)
    assert answer.status_code == 308
    assert answer.headers["location"].endswith("/tables/breeds?breed=Cheviot")


def test_yards_and_ounces_are_shown_and_read_back(client: TestClient, store: Store):
    form = shown_values(client.get("/settings").text, "/settings")
    client.post("/settings", data=form | {"length_unit": "yd", "mass_unit": "oz"})
    address = added(client, weight="58", staple_mm="4 1/2")
    assert "3 lb 10 oz raw" in plain(client.get(address).text)
    with store.reading() as session:
        assert load_book(session).fleeces[0].staple_mm == 114
    assert round(held_g(store), 3) == 1644.272


# Drying


def lying_wet(client: TestClient) -> str:
    address = added(client, weight="1000", state="skirted", yield_pct="60")
    weighed(client, address, state="drying", weight="1500", damp="1", day=BRAMBLE["day"])
    return address


def as_it_dries(client: TestClient, address: str, weight: str, day: str, time: str):
    form = shown_values(client.get(f"{address}/dry").text, f"{address}/dry")
    return client.post(f"{address}/dry", data=form | {"weight": weight, "day": day, "time": time})


def test_drying_wool_is_weighed_until_it_agrees_and_then_entered(client, store):
    address = lying_wet(client)
    page = plain(client.get(f"{address}/dry").text)
    assert "Weigh it again tomorrow." in page
    # 1000 g skirted at 60 ± 3 %, and 2 % for the wetting: 600 ± 32
    assert "Dry, it will weigh about 540 to 660 g." in page
    said = plain(as_it_dries(client, address, "700", "2026-03-02", "18:00").text)
    assert "It lost 53.3 % between the last two weighings: still drying." in said
    assert "It is dry: enter" not in said
    assert held_g(store) == 1000
    as_it_dries(client, address, "612", "2026-03-03", "8:05")
    said = plain(as_it_dries(client, address, "610", "2026-03-03", "18:00").text)
    assert "It is dry: the last two weighings agree." in said
    assert "3 March 2026, 8:05" in said
    form = shown_values(said, f"{address}/dry/done")
    done = plain(client.post(f"{address}/dry/done", data=form).text)
    assert "Bramble 2026 is now scoured: 390 g went on the way, 39 % of it;" in done
    assert (held_g(store), held_g(store, "waste")) == (610, 390)
    with store.reading() as session:
        event = load_book(session).events[-1]
    assert (event.kind, event.step) == ("prepare", "dry")
    undone = client.post(f"/undo/{event.seq}", data={"back": address})
    assert "still drying" not in undone.text
    assert held_g(store) == 1000


def test_dry_wool_that_can_hardly_be_is_asked_about(client, store):
    address = lying_wet(client)
    as_it_dries(client, address, "301", "2026-03-03", "8:00")
    page = as_it_dries(client, address, "300", "2026-03-03", "18:00").text
    form = shown_values(page, f"{address}/dry/done")
    asked = client.post(f"{address}/dry/done", data=form)
    assert asked.status_code == 422
    assert "300 g of 1 000 g: 70 % would be gone. Tick this" in plain(asked.text)
    client.post(f"{address}/dry/done", data=form | {"sure": "1"})
    assert held_g(store) == 300


def test_dry_wool_that_gained_is_asked_about(client):
    address = lying_wet(client)
    as_it_dries(client, address, "1101", "2026-03-03", "8:00")
    page = as_it_dries(client, address, "1100", "2026-03-03", "18:00").text
    form = shown_values(page, f"{address}/dry/done")
    asked = client.post(f"{address}/dry/done", data=form)
    assert "1 100 g, and 1 000 g before the wash." in plain(asked.text)


def test_wool_that_came_in_wet_is_entered_as_it_dried(client, store):
    address = added(client, state="drying", weight="1000")
    as_it_dries(client, address, "701", "2026-03-03", "8:00")
    page = as_it_dries(client, address, "700", "2026-03-03", "18:00").text
    client.post(f"{address}/dry/done", data=shown_values(page, f"{address}/dry/done"))
    assert (held_g(store), held_g(store, "weighing and moisture")) == (700, 300)


def test_wool_that_gained_water_is_told(client):
    address = lying_wet(client)
    as_it_dries(client, address, "900", "2026-03-03", "8:00")
    said = plain(as_it_dries(client, address, "990", "2026-03-03", "18:00").text)
    assert "It gained 10 % between the last two weighings." in said


@pytest.mark.parametrize(
    ("typed", "field"),
    [({"weight": ""}, "weight"), ({"weight": "0"}, "weight"), ({"time": "25:00"}, "time")],
)
def test_a_weighing_of_drying_wool_with_a_fault_is_kept_as_typed(client, typed, field):
    address = lying_wet(client)
    form = shown_values(client.get(f"{address}/dry").text, f"{address}/dry") | {"weight": "800"}
    answer = client.post(f"{address}/dry", data=form | typed)
    assert answer.status_code == 422
    assert f'id="e-{field}"' in answer.text


def test_the_time_may_be_left_empty(client, store):
    address = lying_wet(client)
    as_it_dries(client, address, "800", "2026-03-03", "")
    with store.reading() as session:
        found = [one for one in load_book(session).readings if one.value == 800_000]
    assert [one.minute for one in found] == [None]


def test_what_does_not_dry_cannot_be_weighed_as_drying(client):
    address = added(client)
    answer = client.get(f"{address}/dry")
    assert answer.status_code == 409
    assert "Nothing of Bramble 2026 lies drying." in answer.text
    assert client.post(f"{address}/dry/done", data={}).status_code == 409


def test_what_was_never_weighed_damp_cannot_be_dry(client, store):
    address = added(client, state="drying", weight="1000")
    with store.writing() as session:
        for one in load_book(session).readings:
            remove(session, one)
    form = shown_values(client.get(f"{address}/dry").text, f"{address}/dry")
    answer = client.post(f"{address}/dry/done", data=form)
    assert answer.status_code == 409
    assert "Weigh it first." in answer.text


# Work that leaves the state as it was


def test_picked_wool_stays_scoured_and_what_fell_out_is_waste(client, store):
    address = added(client, state="scoured", weight="600")
    said = plain(weighed(client, address, weight="585", step="pick").text)
    assert "Bramble 2026 is picked: 15 g went on the way, 2 % of it." in said
    assert (held_g(store), held_g(store, "waste")) == (585, 15)
    assert "<td>picked</td>" in plain(client.get(address).text)


def test_passes_are_kept_with_the_carding(client, store):
    address = added(client, state="scoured", weight="600")
    weighed(client, address, state="carded", weight="560", passes="3")
    with store.reading() as session:
        event = load_book(session).events[-1]
    assert (event.step, event.passes) == ("card", 3)
    assert "from scoured to carded, 3 passes" in plain(client.get(address).text)


def test_a_weight_before_the_work_puts_the_book_right_first(client, store):
    address = added(client, state="scoured", weight="600")
    weighed(client, address, state="carded", weight="560", before="590", reason="damp weather")
    assert (held_g(store), held_g(store, "waste")) == (560, 30)
    assert held_g(store, "weighing and moisture") == 10
    assert "put right: damp weather" in plain(client.get(address).text)


def test_a_weight_before_that_agrees_changes_nothing(client, store):
    address = added(client, state="scoured", weight="600")
    weighed(client, address, state="carded", weight="560", before="600")
    assert held_g(store, "weighing and moisture") == 0


@pytest.mark.parametrize(
    ("state", "typed"),
    [("scoured", {"done": "part", "taken": "100", "state": "carded"}), ("drying", {})],
)
def test_a_weight_before_is_of_all_of_it_and_dry(client, state, typed):
    address = added(client, state=state, weight="600")
    answer = weighed(client, address, weight="90", before="500", **typed)
    assert answer.status_code == 422
    assert 'id="e-before"' in answer.text


def test_a_part_that_was_dyed_is_said_to_be_dyed(client):
    address = added(client, state="combed", weight="200")
    said = plain(weighed(client, address, done="part", taken="100", weight="99", step="dye").text)
    assert "A part of Bramble 2026 is dyed: 1 g went on the way, 1 % of it. 100 g stay" in said


def test_dry_top_that_weighs_twice_as_much_is_asked_about(client, store):
    address = added(client, state="combed", weight="200")
    answer = weighed(client, address, done="part", taken="100", weight="201", step="dye")
    assert answer.status_code == 422
    assert "201 g is more than the 100 g that were taken." in plain(answer.text)
    assert held_g(store) == 200


def test_wool_that_dries_weighs_no_more_dry_than_it_does_now(client):
    """590 g were washed, 413 ± 30 g are expected of Shetland: it weighs 398 g, and still dries."""
    address = added(client, state="skirted", weight="590", breed="Shetland")
    weighed(client, address, state="drying", weight="410", damp="1", day="2026-05-02")
    (wool,) = set(re.findall(r"/dry\?wool=([0-9a-z]+)", client.get(address).text))
    dry = f"{address}/dry?wool={wool}"
    for grams, clock in (("398", "20:00"), ("397.5", "21:30")):
        page = client.get(dry).text
        assert "Dry, it will weigh about" in plain(page)
        form = shown_values(page, f"{address}/dry") | {"weight": grams, "time": clock}
        form["day"] = "2026-05-02"
        client.post(f"{address}/dry", data=form)
        if grams == "398":
            assert " to 398 g." in plain(client.get(dry).text)
    done = plain(client.get(dry).text)
    assert "the last two weighings agree." in done
    assert "Dry, it will weigh" not in done


def test_a_part_that_was_picked_lies_apart(client, store):
    address = added(client, state="scoured", weight="600")
    weighed(client, address, done="part", taken="100", weight="97", step="pick")
    assert (held_g(store), held_g(store, "fibre"), held_g(store, "waste")) == (500, 97, 3)


def test_new_wool_is_kept_apart_until_it_was_looked_at(client):
    form = shown_values(client.get("/fleeces/new").text, "/fleeces/new")
    assert form["apart"] == "1"
    assert form["look_again"] > date.today().isoformat()
    address = added(client, apart="1", look_again="2026-03-22", blend="70 wool, 20 silk")
    page = plain(client.get(address).text)
    assert "It is kept apart until it was looked at. Look again for moth on 22 March 2026." in page
    assert "Made of</dt><dd>70 % wool, 20 % silk, 10 % unknown fibre; agreed water" in page
    looked = re.search(r'action="(/wool-book/[^"]+/looked)"', page)
    assert looked
    client.post(looked[1])
    assert "kept apart" not in client.get(address).text


def test_a_blend_that_cannot_be_is_said(client):
    answer = client.post("/fleeces/new", data=BRAMBLE | {"blend": "wool and silk"})
    assert answer.status_code == 422
    assert 'id="e-blend"' in answer.text


def test_a_part_that_was_dyed_has_a_colour_of_its_own(client, store):
    address = added(client, state="carded", weight="600", colour="#ece3d0", colour_known="1")
    dyed = {"step": "dye", "colour": "#a03020", "colour_known": "1", "colour_name": "madder"}
    weighed(client, address, done="part", taken="100", weight="99", **dyed)
    with store.reading() as session:
        book = load_book(session)
    part = next(one for one in book.holdings if one.kind == "fibre")
    assert (part.colour, part.colour_name, part.state) == ("#a03020", "madder", "carded")
    assert book.events[-1].step == "dye"
    assert "500 g carded, 99 g carded (madder):" in plain(client.get(address).text)
    assert next(one for one in book.holdings if one.kind == "fleece").colour == "#ece3d0"


def test_waste_that_was_weighed_leaves_the_rest_to_the_air(client, store):
    address = added(client, state="scoured", weight="771")
    weighed(client, address, state="combed", weight="673", waste="109")
    assert (held_g(store, "waste"), held_g(store, "weighing and moisture")) == (109, -11)


def test_a_slip_in_a_damp_weighing_is_taken_out(client, store):
    address = lying_wet(client)
    as_it_dries(client, address, "6100", "2026-03-02", "18:00")
    page = plain(client.get(f"{address}/dry").text)
    assert "It gained" in page
    form = shown_values(page, f"{address}/dry/take-out")
    said = plain(client.post(f"{address}/dry/take-out", data=form).text)
    assert "Taken out: 6100 g." in said
    assert "It gained" not in said
    client.post(f"{address}/dry/take-out", data=form)
    last = client.post(f"{address}/dry/take-out", data=form)
    assert "There was no weighing." in last.text
    assert held_g(store) == 1000
