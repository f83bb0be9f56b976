"""Plans of garments: listed in their order, added, changed, printed."""

from datetime import date
from math import ceil

import pytest
from starlette.testclient import TestClient

from app.book.event import Line
from app.book.gauge import Gauge
from app.book.plan import Losses, Plan, RoleYarn
from app.book.settings import Settings
from app.store.engine import Store
from app.store.fill import fill
from app.store.records import post, put
from app.work.reckoning import current
from tests.books import DAY, a_person, a_plan, a_promise, a_skein
from tests.web.forms import shown_values
from tests.web.garden import BLANK_PLAN, SWAP, book_of, page, stamp_of, value_of, words
from tests.work.shelf import a_shelf

NASTY = "<script>alert(1)</script>"


@pytest.fixture(autouse=True)
def shelf(store: Store) -> None:
    with store.writing() as session:
        fill(session, a_shelf(a_person()))


def plan_called(store: Store, name: str) -> Plan:
    return next(one for one in book_of(store).plans if one.name == name)


def test_what_must_be_made_is_the_same_on_the_page_and_on_the_work_list(client: TestClient) -> None:
    """1 524 m are needed; 100 m are promised, 169 m in reserve, 143 m are free: see the shelf."""
    said = words(page(client, "/garments/pullover"))
    assert "In reserve for it 169 m" in said
    assert "Free, still to be promised 143 m" in said
    assert "To spin or buy 1 248 m" in said
    assert "Short by 1 248 m of grey two-ply" in said
    assert "Buy yarn like grey two-ply, or fibre for it : 1 248 m" in words(
        page(client, "/work-list")
    )


def test_a_part_says_what_is_not_yet_promised_to_it(client: TestClient, store: Store) -> None:
    with store.reading() as session:
        body = current(session).reckoning.plan("pullover").parts[0]
    said = words(page(client, "/garments/pullover"))
    assert "not yet promised" in said
    assert f"100 m {ceil(body.short_m)} m" in said


def test_the_list_says_of_each_garment_what_is_missing(client: TestClient) -> None:
    said = words(page(client, "/garments"))
    assert "Short of yarn: pullover and hat." in said
    assert said.index("pullover") < said.index("hat")
    assert "Short by" in said
    assert "skeins" in said


def test_a_garment_is_planned_with_only_a_name(client: TestClient, store: Store) -> None:
    answer = client.post("/garments/new", data=BLANK_PLAN)
    assert answer.status_code == 200
    plan = plan_called(store, "Waistcoat")
    assert answer.url.path == f"/garments/{plan.id}"
    assert (plan.gauge, plan.yarns, plan.losses, plan.sureness_pct) == (None, (), None, None)
    assert plan.priority == 3
    assert "Nothing to reckon yet: add the first part of it." in words(answer.text)


def test_a_blank_form_tells_the_usual_sureness(client: TestClient) -> None:
    said = words(page(client, "/garments/new"))
    assert "Blank is 90 %." in said
    assert "in 10 cm in 4 inches" in said


def test_the_form_shows_the_losses_of_its_own(client: TestClient, store: Store) -> None:
    with store.writing() as session:
        put(session, a_plan(losses=Losses(200, 12_000, 2.5, 8_000), sureness_pct=95.0))
    html = page(client, "/garments/pullover/change")
    fields = ("tail", "swatch", "unusable_pct", "mending", "sureness_pct")
    assert [value_of(html, one) for one in fields] == ["20", "12", "2.5", "8", "95"]


def test_everything_that_can_be_said_of_a_plan(client: TestClient, store: Store) -> None:
    told = BLANK_PLAN | {
        "person_id": "Ines",
        "wanted_by": "2027-03-01",
        "gauge_stitches": "22",
        "gauge_rows": "30",
        "gauge_needle": "3.5",
        "gauge_washed": "no",
        "yarn_id": "grey two-ply",
        "sureness_pct": "95",
        "tail": "20 cm",
        "swatch": "12",
        "unusable_pct": "2",
        "mending": "8 m",
        "notes": "Two pockets",
    }
    client.post("/garments/new", data=told)
    plan = plan_called(store, "Waistcoat")
    assert plan.gauge == Gauge(22.0, 30.0, washed=False, needle_mm=3.5)
    assert plan.losses == Losses(200, 12_000, 2.0, 8_000)
    assert plan.yarns == (RoleYarn("main", "grey two-ply"),)
    assert (plan.person_id, plan.wanted_by) == ("Ines", date(2027, 3, 1))
    assert (plan.sureness_pct, plan.notes) == (95.0, "Two pockets")


def test_one_loss_of_its_own_leaves_the_others_to_the_settings(
    client: TestClient, store: Store
) -> None:
    client.post("/garments/new", data=BLANK_PLAN | {"mending": "8"})
    usual = Settings().losses
    assert plan_called(store, "Waistcoat").losses == Losses(
        usual.tail_mm, usual.swatch_mm, usual.unusable_pct, 8_000
    )


def test_a_gauge_counted_in_four_inches_is_not_taken_for_ten_centimetres(
    client: TestClient, store: Store
) -> None:
    """22 stitches in 4 in (10.16 cm) are 21.654 in 10 cm."""
    told = {"gauge_stitches": "22", "gauge_rows": "30", "gauge_measure": "4 in"}
    client.post("/garments/new", data=BLANK_PLAN | told)
    gauge = plan_called(store, "Waistcoat").gauge
    assert gauge.stitches == pytest.approx(22 / 1.016)
    assert gauge.rows == pytest.approx(30 / 1.016)


@pytest.mark.parametrize(
    ("stitches", "rows", "measure", "shown"),
    [
        (18 / 1.016, 25 / 1.016, "4 in", ("18", "25")),
        (18.0, 25.5, "10 cm", ("18", "25.5")),
        (18.123456, 25.0, "10 cm", ("18.12", "25")),
    ],
)
def test_a_gauge_is_shown_as_it_was_counted_and_saved_unchanged_stays_the_same(
    client: TestClient,
    store: Store,
    stitches: float,
    rows: float,
    measure: str,
    shown: tuple[str, str],
) -> None:
    gauge = Gauge(stitches, rows, washed=False, assumed_pct=7.5)
    with store.writing() as session:
        put(session, a_plan(gauge=gauge))
    form = shown_values(page(client, "/garments/pullover/change"), "/garments/pullover/change")
    assert (form["gauge_stitches"], form["gauge_rows"]) == shown
    assert form["gauge_measure"] == measure
    client.post("/garments/pullover/change", data=form)
    assert book_of(store).plan["pullover"].gauge == gauge
    form["stamp"] = stamp_of(store, "plan", "pullover")
    client.post("/garments/pullover/change", data=form | {"gauge_rows": "30"})
    changed = book_of(store).plan["pullover"].gauge
    assert changed is not None
    assert changed.stitches == stitches
    assert changed.rows == pytest.approx(30 if measure == "10 cm" else 30 / 1.016)


def test_the_form_shows_a_gauge_in_the_measure_of_the_settings(
    client: TestClient, store: Store
) -> None:
    with store.writing() as session:
        put(session, Settings(gauge_unit="4 in"))
        put(session, a_plan(gauge=Gauge(22 / 1.016, 30 / 1.016)))
    form = page(client, "/garments/pullover/change")
    assert 'name="gauge_stitches" value="22"' in form
    assert '<option value="4 in" selected>' in form


def test_a_guessed_gauge_stays_as_unsure_as_it_was(client: TestClient, store: Store) -> None:
    with store.writing() as session:
        put(session, a_plan(gauge=Gauge(20.0, 27.0, assumed_pct=18.0)))
    form = page(client, "/garments/pullover/change")
    assert '<option value="guess" selected>' in form
    told = BLANK_PLAN | {
        "stamp": stamp_of(store, "plan", "pullover"),
        "gauge_stitches": "20",
        "gauge_rows": "27",
        "gauge_washed": "guess",
    }
    client.post("/garments/pullover/change", data=told)
    assert book_of(store).plan["pullover"].gauge == Gauge(20.0, 27.0, assumed_pct=18.0)


@pytest.mark.parametrize(
    ("field", "typed", "fault"),
    [
        ("name", "  ", "This is needed."),
        ("name", "x" * 81, "at most 80 signs"),
        ("person_id", "nobody", "Choose one of these."),
        ("yarn_id", "no such yarn", "Choose one of these."),
        ("state", "half done", "Choose one of these."),
        ("wanted_by", "soon", "Give the day as year, month and day"),
        ("gauge_stitches", "22", "Say how many rows as well."),
        ("gauge_rows", "30", "Say how many stitches and rows"),
        ("gauge_needle", "3.5", "Say how many stitches and rows"),
        ("gauge_stitches", "many", None),
        ("sureness_pct", "100", "Ask for something between 50 and 99 %."),
        ("unusable_pct", "80", "Say something between 0 and 50 %."),
        ("mending", "a bit", None),
    ],
)
def test_a_fault_stands_beside_its_field_and_nothing_is_saved(
    client: TestClient, store: Store, field: str, typed: str, fault: str | None
) -> None:
    answer = client.post("/garments/new", data=BLANK_PLAN | {field: typed})
    assert answer.status_code == 422
    assert 'class="faults"' in answer.text
    assert f'value="{typed}"' in answer.text or field in ("person_id", "yarn_id", "state")
    if fault:
        assert fault in words(answer.text)
    assert len(book_of(store).plans) == 2


@pytest.mark.parametrize(
    ("stitches", "rows", "needle", "field"),
    [
        ("0", "30", "", "gauge_stitches"),
        ("22", "900", "", "gauge_rows"),
        ("22", "30", "350", "gauge_needle"),
    ],
)
def test_a_gauge_nobody_knits_is_asked_about(
    client: TestClient, stitches: str, rows: str, needle: str, field: str
) -> None:
    told = {"gauge_stitches": stitches, "gauge_rows": rows, "gauge_needle": needle}
    answer = client.post("/garments/new", data=BLANK_PLAN | told)
    assert answer.status_code == 422
    assert f'id="e-{field}"' in answer.text


def test_a_plan_is_changed(client: TestClient, store: Store) -> None:
    told = BLANK_PLAN | {"stamp": stamp_of(store, "plan", "hat"), "name": "Warm hat"}
    answer = client.post("/garments/hat/change", data=told)
    assert "Warm hat is changed." in words(answer.text)
    assert book_of(store).plan["hat"].name == "Warm hat"


def test_a_change_with_a_fault_keeps_what_was_typed(client: TestClient, store: Store) -> None:
    told = BLANK_PLAN | {"stamp": stamp_of(store, "plan", "hat"), "name": "", "notes": "two ears"}
    answer = client.post("/garments/hat/change", data=told)
    assert answer.status_code == 422
    assert "two ears" in answer.text
    assert book_of(store).plan["hat"].notes == ""


def test_two_windows_the_second_is_told_and_overwrites_nothing(
    client: TestClient, store: Store
) -> None:
    opened = stamp_of(store, "plan", "hat")
    first = {"stamp": opened, "name": "First", "yarn_id": "white single"}
    client.post("/garments/hat/change", data=BLANK_PLAN | first)
    answer = client.post(
        "/garments/hat/change", data=BLANK_PLAN | {"stamp": opened, "name": "Second"}
    )
    assert answer.status_code == 409
    assert "was changed meanwhile" in words(answer.text)
    assert "There now: First." in answer.text
    assert "There now: white single." in answer.text
    assert value_of(answer.text, "name") == "Second"
    assert book_of(store).plan["hat"].name == "First"


def test_put_away_it_lets_go_of_its_skeins_and_says_so(client: TestClient, store: Store) -> None:
    told = BLANK_PLAN | {"stamp": stamp_of(store, "plan", "pullover"), "state": "put away"}
    answer = client.post("/garments/pullover/change", data=told)
    assert "What was promised to it is free again." in words(answer.text)
    assert book_of(store).promises == ()
    assert "Put away." in words(answer.text)


def test_served_earlier_and_later(client: TestClient, store: Store) -> None:
    said = words(client.post("/garments/hat/move", data={"to": "earlier"}).text)
    assert "hat is served earlier from the shelf now." in said
    assert book_of(store).plan["hat"].priority == 1
    client.post("/garments/hat/move", data={"to": "later"})
    assert book_of(store).plan["hat"].priority == 2
    said = words(client.post("/garments/hat/move", data={"to": "later"}).text)
    assert "hat cannot be served later than it is." in said


def test_only_moves_that_can_be_made_are_offered(client: TestClient) -> None:
    html = page(client, "/garments")
    assert html.count('value="earlier"') == html.count('value="later"') == 1
    assert html.index('value="later"') < html.index('value="earlier"')


@pytest.mark.parametrize(
    "url", ["/garments/mittens", "/garments/mittens/change", "/garments/mittens/print"]
)
def test_a_garment_that_is_not_there(client: TestClient, url: str) -> None:
    answer = client.get(url)
    assert answer.status_code == 404
    assert "This garment is not in the book." in words(answer.text)


def test_markup_in_a_name_is_only_text(client: TestClient, store: Store) -> None:
    client.post("/garments/new", data=BLANK_PLAN | {"name": NASTY, "notes": NASTY})
    plan = plan_called(store, NASTY)
    for url in ("/", "/garments", f"/garments/{plan.id}", f"/garments/{plan.id}/print"):
        html = page(client, url)
        assert NASTY not in html
        assert "&lt;script&gt;" in html or url == "/"


def test_the_answer_comes_first_with_its_number_and_its_odds(client: TestClient) -> None:
    said = words(page(client, "/garments/pullover"))
    assert "Short by 1 248 m of grey two-ply: about 563 g of yarn, seven skeins." in said
    assert "Another 143 m is free and can still be promised." in said  # of 1 391.7 m
    assert "it hardly ever reaches the end; you asked for 18 times in 20." in said


def test_the_wool_for_it_part_by_part(client: TestClient) -> None:
    said = words(page(client, "/garments/pullover"))
    assert "497 ± 35 m" in said
    assert "sleeves × 2" in said
    assert "27 480 stitches in 120 rounds" in said
    assert "kept for mending 5 m" in said
    assert "Munden 1959" in said


def test_for_a_swap_only_the_content_of_the_page_is_sent(client: TestClient) -> None:
    html = client.get("/garments/pullover", headers=SWAP).text
    assert html.lstrip().startswith("<h1>")
    assert "<nav" not in html


def test_the_sheet_to_print_says_what_is_missing_and_stands_in_the_order_of_codes(
    client: TestClient, store: Store
) -> None:
    with store.writing() as session:
        for code in ("S-10", "S-9"):
            put(session, a_skein(code))
            post(session, "arrive", DAY, [Line("come in", -9_000), Line(code, 9_000, 20_000)])
            put(session, a_promise(code, 20_000))
    with store.reading() as session:
        parts = current(session).reckoning.plan("pullover").parts
    body, sleeves = (ceil(one.short_m) for one in parts)
    html = page(client, "/garments/pullover/print")
    said = words(html)
    assert said.index("G-1 grey") < said.index("S-9 grey") < said.index("S-10 grey")
    assert f"Not yet promised {body} m" in said
    assert f"No skein yet {sleeves} m not yet promised" in said
    assert said.count("rounds each") == 1
    on_page = words(page(client, "/garments/pullover"))
    assert on_page.index("S-9 grey") < on_page.index("S-10 grey")


def test_the_sheet_to_print_has_boxes_and_names_the_paper(client: TestClient, store: Store) -> None:
    with store.writing() as session:
        put(session, Settings(paper="Letter"))
    html = page(client, "/garments/pullover/print")
    assert 'class="whole sheet letter"' in html
    assert "G-1 grey two-ply" in words(html)
    assert html.count('aria-label="to do"') >= 2
    assert "22 stitches and 30 rows in 10 cm, washed" in words(html)
