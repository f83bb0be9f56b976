"""A garment is planned from measurements: seen at once, saved with its parts, changed later."""

from dataclasses import replace

import pytest
from starlette.testclient import TestClient

from app.book.design import Design
from app.book.person import Measure
from app.book.settings import Settings
from app.book.shape import Counted
from app.craft.constructions import constructions
from app.store.engine import Store
from app.store.fill import fill
from app.store.records import put
from tests.books import a_book, a_part, a_person, a_plan, a_promise, a_skein, a_swatch, a_yarn
from tests.web.forms import shown_values
from tests.web.garden import SWAP, book_of, page, value_of, words

NEW = "/garments/new/design"
YOKE = "cardigan, round yoke"
GAUGE = {
    "gauge_stitches": "22",
    "gauge_rows": "30",
    "gauge_measure": "10 cm",
    "gauge_washed": "yes",
}


@pytest.fixture(autouse=True)
def _shelf(store: Store) -> None:
    """Ines with a chest of 96 cm, two yarns with a skein each, and a hat of typed parts."""
    book = a_book(
        a_person(),
        a_yarn(),
        a_yarn("white single", plies=1),
        a_skein("G-1"),
        a_skein("W-1", yarn_id="white single"),
        a_plan("hat"),
        a_part("brim", plan_id="hat"),
        a_part("pompom", plan_id="hat", position=2),
        a_promise("G-1", plan_id="hat", part_id="brim", mm=20_000),
        a_promise("W-1", plan_id="hat", part_id="pompom", mm=10_000),
        held={"G-1": (96, 213), "W-1": (50, 150)},
    )
    with store.writing() as session:
        fill(session, book)


def form_of(client: TestClient, url: str = NEW, construction: str = YOKE, **typed: str):
    """The form as it is opened for Ines, with the gauge and `typed` filled in."""
    opened = client.get(url, params={"construction": construction, "person_id": "Ines"})
    values = shown_values(opened.text, url)
    return {**values, **GAUGE, **typed}


def planned(client: TestClient, store: Store, **typed: str):
    """A round-yoke cardigan for Ines, saved; its plan."""
    answer = client.post(NEW, data=form_of(client, name="Cardigan", **typed))
    assert answer.status_code == 200, words(answer.text)
    return next(one for one in book_of(store).plans if one.name == "Cardigan")


def test_the_shortest_way_is_offered_first(client: TestClient) -> None:
    told = words(page(client, "/garments/new"))
    assert told.index("From measurements") < told.index("Or type its parts yourself")
    assert "Cardigan with a round yoke" in told


def test_a_form_just_opened_asks_and_complains_of_nothing(client: TestClient) -> None:
    told = words(page(client, f"{NEW}?construction=hat&person_id="))
    assert "Hat: say what gauge you knit to, and see it at once." in told
    assert "This is needed" not in told


def test_a_measure_says_how_it_is_taken_and_what_a_blank_means(client: TestClient) -> None:
    told = words(client.get(NEW, params={"construction": YOKE, "person_id": "Ines"}).text)
    assert "Around the fullest part, the tape level. Left blank: 96 cm, as written of Ines." in told
    assert "Around the narrowest part. Left blank: 78.2 ± 3.9 cm, as the body table has it." in told
    assert "Left blank: 60.8 ± 4.9 cm, assumed." in told


def test_it_is_seen_before_it_is_saved(client: TestClient, store: Store) -> None:
    """104 cm at 22 in 10 cm, less the front bands' overlap; nothing is kept."""
    shown = client.get(NEW, params=form_of(client))
    told = words(shown.text)
    assert "It takes about" in told
    assert "The garment, row by row" in told
    assert "Join body and sleeves:" in told
    assert "yoke" in told
    assert [one.name for one in book_of(store).plans] == ["hat"]


def test_htmx_gets_the_part_that_changes(client: TestClient) -> None:
    part = client.get(NEW, params=form_of(client), headers=SWAP).text
    assert "<html" not in part
    assert "The work in words" in part


def test_saving_makes_the_parts(client: TestClient, store: Store) -> None:
    plan = planned(client, store)
    parts = book_of(store).parts_of[plan.id]
    names = [one.name for one in parts]
    assert names == ["hem", "body", "cuffs", "sleeves", "yoke", "front bands", "neck band"]
    assert [one.id for one in parts][1] == f"{plan.id}-body"
    assert plan.design is not None
    assert plan.design.measures == (Measure("chest", 960),)
    assert plan.person_id == "Ines"


def test_the_plan_says_what_it_was_drawn_from(client: TestClient, store: Store) -> None:
    plan = planned(client, store, measure_wrist="17", ease_chest="4")
    told = words(page(client, f"/garments/{plan.id}"))
    assert "Cardigan with a round yoke, drawn for chest 96 cm, wrist 17 cm." in told
    assert "standard by an older chart of the Craft Yarn Council, quoted in print, 2011" in told
    assert "Chest 4 cm more 100 cm 220 stitches, 100 cm as asked for" in told
    assert "Waist 7.5 cm more 85.7 cm 220 stitches, 100 cm 31.4 stitches, 14.3 cm more" in told
    assert "Cross back" in told
    assert "nothing is drawn from it" in told
    assert "waist 78.2 ± 3.9 cm, as the body table has it" in told


def test_a_chart_keeps_its_capitals_where_the_garment_is_looked_at(
    client: TestClient, store: Store
) -> None:
    plan = planned(client, store, measure_wrist="17", ease_chest="4")
    assert "Craft Yarn Council, quoted" in words(page(client, f"/garments/{plan.id}/design"))
    assert "craft yarn council" not in page(client, f"/garments/{plan.id}/design")


def test_a_scarf_has_no_body_to_speak_of(client: TestClient, store: Store) -> None:
    client.post(NEW, data=form_of(client, construction="scarf", name="Scarf"))
    plan = next(one for one in book_of(store).plans if one.name == "Scarf")
    told = words(page(client, f"/garments/{plan.id}"))
    assert "Scarf. Change it" in told
    assert "Ease" not in told
    assert "Width 22 cm 48 stitches, 21.8 cm as asked for" in told
    assert "length 170 ± 20 cm, assumed" in told


def test_a_design_that_fits_no_more_is_simply_not_told(client: TestClient, store: Store) -> None:
    plan = planned(client, store)
    for design in (Design("a way that was taken out"), Design(YOKE, (Measure("chest", 2900),))):
        with store.writing() as session:
            put(session, replace(plan, design=design))
        assert "From measurements" not in words(page(client, f"/garments/{plan.id}"))
    assert client.get(f"/garments/{plan.id}/design").status_code == 422


def test_a_name_left_blank_is_that_of_the_garment(client: TestClient, store: Store) -> None:
    client.post(NEW, data=form_of(client, construction="hat"))
    assert "Hat" in {one.name for one in book_of(store).plans}


@pytest.mark.parametrize("word", sorted(constructions()))
def test_every_construction_is_planned_for_a_usual_body(
    client: TestClient, store: Store, word: str
) -> None:
    answer = client.post(NEW, data=form_of(client, construction=word, name="It"))
    assert answer.status_code == 200, words(answer.text)
    plan = next(one for one in book_of(store).plans if one.name == "It")
    assert book_of(store).parts_of[plan.id]
    again = client.get(f"/garments/{plan.id}/design")
    assert "It takes about" in words(again.text)


def test_a_blank_goes_on_coming_from_the_person(client: TestClient, store: Store) -> None:
    plan = planned(client, store, measure_wrist="17")
    opened = page(client, f"/garments/{plan.id}/design")
    assert value_of(opened, "measure_chest") == ""
    assert value_of(opened, "measure_wrist") == "17"


def test_what_was_measured_then_is_shown_once_she_has_changed(
    client: TestClient, store: Store
) -> None:
    plan = planned(client, store)
    with store.writing() as session:
        ines = book_of(store).person["Ines"]
        put(session, replace(ines, measures=(Measure("chest", 1000),)))
    assert value_of(page(client, f"/garments/{plan.id}/design"), "measure_chest") == "96"


def test_promises_stay_with_the_parts_that_stay(client: TestClient, store: Store) -> None:
    plan = planned(client, store)
    with store.writing() as session:
        put(session, a_promise("G-1", 50_000, id="p", plan_id=plan.id, part_id=f"{plan.id}-body"))
        put(session, a_promise("W-1", 9_000, id="q", plan_id=plan.id, part_id=f"{plan.id}-yoke"))
    url = f"/garments/{plan.id}/design"
    typed = shown_values(page(client, url), url)
    before = book_of(store).part[f"{plan.id}-body"]
    wider = client.post(url, data=typed | {"measure_chest": "104"})
    assert "Cardigan is changed." in words(wider.text)
    after = book_of(store).part[f"{plan.id}-body"]
    assert after.shape != before.shape
    assert len(book_of(store).promises_of[plan.id]) == 2


def test_what_a_change_frees_is_said_before_and_after(client: TestClient, store: Store) -> None:
    plan = planned(client, store)
    with store.writing() as session:
        put(session, a_promise("W-1", 9_000, id="q", plan_id=plan.id, part_id=f"{plan.id}-yoke"))
    url = f"/garments/{plan.id}/design"
    typed = shown_values(page(client, url), url) | {"construction": "cardigan, drop shoulder"}
    told = "What was promised there becomes free: W-1."
    assert told in words(client.get(url, params=typed).text)
    assert told in words(client.post(url, data=typed).text)
    assert plan.id not in book_of(store).promises_of


def test_rows_of_her_own_that_a_change_draws_over_are_named(
    client: TestClient, store: Store
) -> None:
    plan = planned(client, store)
    with store.writing() as session:
        sleeves = book_of(store).part[f"{plan.id}-sleeves"]
        put(session, replace(sleeves, shape=Counted(60, 100)))
    url = f"/garments/{plan.id}/design"
    typed = shown_values(page(client, url), url) | {"measure_chest": "104"}
    told = "The rows you had changed are drawn anew: sleeves."
    assert told in words(client.get(url, params=typed).text)
    assert told in words(client.post(url, data=typed).text)


def test_typed_parts_give_way_and_a_part_of_the_same_name_keeps_its_skeins(
    client: TestClient, store: Store
) -> None:
    url = "/garments/hat/design"
    typed = form_of(client, url, "hat")
    told = words(client.post(url, data=typed).text)
    assert "It has no pompom any more. What was promised there becomes free: W-1." in told
    (kept,) = book_of(store).promises_of["hat"]
    assert (kept.holding_id, kept.part_id) == ("G-1", "hat-brim")
    assert {one.name for one in book_of(store).parts_of["hat"]} == {"brim", "sides", "crown"}


def test_a_part_added_to_a_drawn_garment_stays(client: TestClient, store: Store) -> None:
    plan = planned(client, store)
    with store.writing() as session:
        put(session, a_part("pocket", plan_id=plan.id, position=8))
    url = f"/garments/{plan.id}/design"
    client.post(url, data=shown_values(page(client, url), url) | {"choice_sleeve": "short"})
    assert [one.name for one in book_of(store).parts_of[plan.id]][-1] == "pocket"


def test_a_garment_that_cannot_be_is_refused_beside_its_measure(client: TestClient) -> None:
    answer = client.get(NEW, params=form_of(client, measure_body_length="20"))
    assert answer.status_code == 422
    assert 'id="e-measure_body_length"' in answer.text
    assert "the body is too short for its armhole and hem" in words(answer.text)
    assert value_of(answer.text, "measure_body_length") == "20"


@pytest.mark.parametrize(
    ("field", "typed", "told"),
    [
        ("gauge_stitches", "", "Say how many stitches and rows"),
        ("measure_chest", "wide", "wide"),
        ("measure_chest", "20", "This must be 30 cm or more."),
        ("ease_chest", "−200", "This must be 100 cm or less."),
        ("band_hem_gauge", "24", "Give stitches and rows, as in 24 × 32."),
        ("band_hem_gauge", "24 × many", "Give stitches and rows, as in 24 × 32."),
        ("band_hem_gauge", "1 × 300", "This gauge is not to be believed"),
        ("band_cuff_needle", "90", "This must be 50 or less."),
        ("choice_sleeve", "none", "Choose one of these."),
        ("choice_ease", "roomy", "Choose one of these."),
        ("construction", "toga", "Choose one of these."),
    ],
)
def test_a_fault_stands_beside_its_field_and_nothing_is_kept(
    client: TestClient, store: Store, field: str, typed: str, told: str
) -> None:
    values = form_of(client) | ({"gauge_rows": ""} if not typed else {}) | {field: typed}
    answer = client.post(NEW, data=values)
    assert answer.status_code == 422
    assert f'id="e-{field}"' in answer.text
    assert told in words(answer.text)
    assert len(book_of(store).plans) == 1


def test_ease_may_lie_below_the_body(client: TestClient, store: Store) -> None:
    plan = planned(client, store, ease_wrist="-1,5 cm")
    assert plan.design is not None
    assert plan.design.ease == (Measure("wrist", -15),)
    assert value_of(page(client, f"/garments/{plan.id}/design"), "ease_wrist") == "−1.5"


def test_a_band_has_a_gauge_and_a_needle_of_its_own(client: TestClient, store: Store) -> None:
    plan = planned(client, store, band_hem_gauge="24x32", band_hem_needle="3.5")
    hem = book_of(store).part[f"{plan.id}-hem"]
    assert hem.gauge is not None
    assert (hem.gauge.stitches, hem.gauge.rows, hem.gauge.needle_mm) == (24.0, 32.0, 3.5)
    opened = page(client, f"/garments/{plan.id}/design")
    assert value_of(opened, "band_hem_gauge") == "24 × 32"
    assert value_of(opened, "band_hem_needle") == "3.5"


def test_two_windows_the_second_is_told(client: TestClient, store: Store) -> None:
    plan = planned(client, store)
    url = f"/garments/{plan.id}/design"
    typed = shown_values(page(client, url), url)
    client.post(url, data=typed | {"measure_chest": "100"})
    assert client.post(url, data=typed | {"measure_chest": "110"}).status_code == 409


def test_a_finished_garment_is_not_drawn_anew(client: TestClient, store: Store) -> None:
    with store.writing() as session:
        put(session, a_plan("old", state="finished"))
    assert client.get("/garments/old/design").status_code == 409
    assert client.get("/garments/none/design").status_code == 404


def test_a_swatch_that_led_here_gives_the_gauge_and_the_yarn(
    client: TestClient, store: Store
) -> None:
    with store.writing() as session:
        put(session, a_swatch())
    begun = shown_values(page(client, "/garments/new?swatch=first try"), NEW)
    assert begun["gauge_swatch"] == "first try"
    opened = client.get(NEW, params=begun)
    assert "It takes about" in words(opened.text)
    client.post(NEW, data=shown_values(opened.text, NEW) | {"name": "From a swatch"})
    plan = next(one for one in book_of(store).plans if one.name == "From a swatch")
    assert plan.gauge is not None
    assert plan.gauge.swatch_id == "first try"
    assert [one.yarn_id for one in plan.yarns] == ["grey two-ply"]


def test_in_inches_it_is_the_same_garment(client: TestClient, store: Store) -> None:
    """A chest of 40 in, 22 stitches in 4 in, a hem at 24 × 32 in 4 in; shown as typed again."""
    with store.writing() as session:
        put(session, Settings(length_unit="yd", gauge_unit="4 in"))
    typed = {"measure_chest": "40", "gauge_measure": "4 in", "band_hem_gauge": "24 × 32"}
    plan = planned(client, store, **typed, ease_chest="2")
    assert plan.design is not None
    assert plan.gauge is not None
    assert plan.design.measures == (Measure("chest", 1016),)
    assert plan.design.ease == (Measure("chest", 51),)
    assert plan.gauge.stitches == pytest.approx(22 / 4 * 10 / 2.54)
    hem = book_of(store).part[f"{plan.id}-hem"]
    assert hem.gauge is not None
    assert hem.gauge.rows == pytest.approx(32 / 4 * 10 / 2.54, rel=1e-4)
    opened = page(client, f"/garments/{plan.id}/design")
    assert value_of(opened, "measure_chest") == "40"
    assert value_of(opened, "band_hem_gauge") == "24 × 32"
    assert "in, as the body table has it." in words(opened)
