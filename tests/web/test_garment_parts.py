"""Parts of a garment: each way to say how large one is, and what is asked again."""

import pytest
from starlette.testclient import TestClient

from app.book.gauge import Gauge
from app.book.plan import Part, RoleYarn
from app.book.settings import Settings
from app.book.shape import Counted, Metres, Rectangle, Run, Runs, Shape, Stated, Trapezoid
from app.store.engine import Store
from app.store.fill import fill
from app.store.records import put
from tests.books import a_part
from tests.web.forms import shown_values
from tests.web.garden import BLANK_PART, book_of, page, stamp_of, value_of, words
from tests.work.shelf import a_shelf

NEW = "/garments/pullover/parts/new"
BODY = "/garments/pullover/parts/body"


@pytest.fixture(autouse=True)
def shelf(store: Store) -> None:
    with store.writing() as session:
        fill(session, a_shelf())


def collar(store: Store) -> Part:
    return next(one for one in book_of(store).parts if one.name == "Collar")


@pytest.mark.parametrize(
    ("told", "shape"),
    [
        ({"way": "counted", "counted_stitches": "80", "counted_rows": "24"}, Counted(80, 24)),
        (
            {"way": "rectangle", "rectangle_width": "52", "rectangle_length": "40 cm"},
            Rectangle(520, 400),
        ),
        (
            {
                "way": "trapezoid",
                "trapezoid_width": "22",
                "trapezoid_width_to": "36",
                "trapezoid_length": "45",
            },
            Trapezoid(220, 360, 450),
        ),
        (
            {
                "way": "trapezoid",
                "trapezoid_width": "22",
                "trapezoid_width_to": "0",
                "trapezoid_length": "10 in",
            },
            Trapezoid(220, 0, 254),
        ),
        ({"way": "stated", "stated_yarn": "1475 yd"}, Stated(1_348_740)),
        ({"way": "metres", "metres_yarn": "250"}, Metres(250_000)),
    ],
)
def test_each_way_to_say_how_large(
    client: TestClient, store: Store, told: dict[str, str], shape: Shape
) -> None:
    answer = client.post(NEW, data=BLANK_PART | told)
    assert "Collar is added to pullover." in words(answer.text)
    assert collar(store).shape == shape
    assert collar(store).position == 3


def test_a_blank_form_shows_every_way(client: TestClient) -> None:
    html = page(client, NEW)
    for way in ("counted", "rectangle", "trapezoid", "stated", "metres"):
        assert f'value="{way}"' in html
        assert f"way-{way}" in html
    assert value_of(html, "copies") == "1"


def test_a_sleeve_from_its_measures_takes_the_yarn_of_the_worked_example(
    client: TestClient,
) -> None:
    """22 to 36 cm over 45 cm at 22 × 30: 8640 stitches, 156.3 m each (the chapter on garments)."""
    told = {
        "name": "Sleeve",
        "way": "trapezoid",
        "trapezoid_width": "22",
        "trapezoid_width_to": "36",
        "trapezoid_length": "45",
    }
    said = words(client.post(NEW, data=BLANK_PART | told).text)
    assert "8 640 stitches in 135 rounds" in said
    assert "156 ± 11 m" in said


def test_only_the_fields_of_the_chosen_way_are_read(client: TestClient, store: Store) -> None:
    told = {"way": "metres", "metres_yarn": "250", "counted_stitches": "nonsense"}
    assert client.post(NEW, data=BLANK_PART | told).status_code == 200
    assert collar(store).shape == Metres(250_000)


def test_two_alike_with_a_yarn_gauge_and_edges_of_their_own(
    client: TestClient, store: Store
) -> None:
    told = {
        "copies": "2",
        "counted_stitches": "80",
        "counted_rows": "24",
        "yarn_id": "white single",
        "edges": "cast on and off",
        "gauge_stitches": "20",
        "gauge_rows": "28",
    }
    client.post(NEW, data=BLANK_PART | told)
    part = collar(store)
    assert (part.copies, part.edges, part.gauge) == (2, "cast on and off", Gauge(20.0, 28.0))
    assert part.yarns == (RoleYarn("main", "white single"),)


@pytest.mark.parametrize(
    ("told", "field"),
    [
        ({"way": "counted", "counted_stitches": "80"}, "counted_rows"),
        ({"way": "counted", "counted_stitches": "80", "counted_rows": "0"}, "counted_rows"),
        ({"way": "counted", "counted_stitches": "80.5", "counted_rows": "9"}, "counted_stitches"),
        ({"way": "counted", "counted_stitches": "9000", "counted_rows": "9"}, "counted_stitches"),
        ({"way": "rectangle", "rectangle_width": "52"}, "rectangle_length"),
        (
            {"way": "rectangle", "rectangle_width": "wide", "rectangle_length": "4"},
            "rectangle_width",
        ),
        (
            {"way": "trapezoid", "trapezoid_width": "22", "trapezoid_length": "9"},
            "trapezoid_width_to",
        ),
        ({"way": "stated"}, "stated_yarn"),
        ({"way": "metres", "metres_yarn": "0"}, "metres_yarn"),
        ({"way": "by eye"}, "way"),
        ({"way": "runs"}, "way"),
        ({"way": "metres", "metres_yarn": "9", "copies": "0"}, "copies"),
        ({"way": "metres", "metres_yarn": "9", "copies": "two"}, "copies"),
        ({"way": "metres", "metres_yarn": "9", "name": ""}, "name"),
        ({"way": "metres", "metres_yarn": "9", "edges": "lace"}, "edges"),
        ({"way": "metres", "metres_yarn": "9", "yarn_id": "none such"}, "yarn_id"),
    ],
)
def test_a_fault_stands_beside_its_field_and_nothing_is_saved(
    client: TestClient, store: Store, told: dict[str, str], field: str
) -> None:
    answer = client.post(NEW, data=BLANK_PART | told)
    assert answer.status_code == 422
    assert f'id="e-{field}"' in answer.text
    assert f'href="#f-{field}"' in answer.text
    assert len(book_of(store).parts) == 3


def test_a_blank_number_of_copies_is_one(client: TestClient, store: Store) -> None:
    client.post(NEW, data=BLANK_PART | {"way": "metres", "metres_yarn": "9", "copies": ""})
    assert collar(store).copies == 1


@pytest.mark.parametrize(
    ("shape", "field", "value"),
    [
        (Counted(80, 24), "counted_rows", "24"),
        (Rectangle(520, 405), "rectangle_length", "40.5"),
        (Trapezoid(220, 360, 450), "trapezoid_width_to", "36"),
        (Stated(900_000), "stated_yarn", "900"),
        (Metres(250_000), "metres_yarn", "250"),
    ],
)
def test_the_form_shows_a_part_as_it_is_and_saves_it_unchanged(
    client: TestClient, store: Store, shape: Shape, field: str, value: str
) -> None:
    with store.writing() as session:
        put(session, a_part(shape=shape))
    html = page(client, f"{BODY}/change")
    assert value_of(html, field) == value
    assert f'value="{shape.way}" checked' in html


def test_measures_in_inches_where_she_works_in_yards(client: TestClient, store: Store) -> None:
    with store.writing() as session:
        put(session, Settings(length_unit="yd"))
    told = {"way": "rectangle", "rectangle_width": "20 1/2", "rectangle_length": "16"}
    client.post(NEW, data=BLANK_PART | told)
    assert collar(store).shape == Rectangle(521, 406)


def test_a_part_knit_row_by_row_keeps_its_rows(client: TestClient, store: Store) -> None:
    rows = Runs((Run(10, 80, 90), Run(20, 90, 90)))
    with store.writing() as session:
        put(session, a_part(shape=rows))
    assert 'value="runs" checked' in page(client, f"{BODY}/change")
    told = {"stamp": stamp_of(store, "part", "body"), "name": "Yoke", "way": "runs"}
    client.post(f"{BODY}/change", data=BLANK_PART | told)
    assert book_of(store).part["body"].name == "Yoke"
    assert book_of(store).part["body"].shape == rows


def test_row_by_row_is_not_offered_where_there_are_no_rows(client: TestClient) -> None:
    assert 'value="runs"' not in page(client, f"{BODY}/change")


def test_a_part_is_changed(client: TestClient, store: Store) -> None:
    told = {
        "stamp": stamp_of(store, "part", "body"),
        "counted_stitches": "200",
        "counted_rows": "120",
    }
    said = words(client.post(f"{BODY}/change", data=BLANK_PART | told).text)
    assert "Collar is changed." in said
    assert "24 000 stitches in 120 rounds" in said


def test_a_change_with_a_fault_changes_nothing(client: TestClient, store: Store) -> None:
    told = {"stamp": stamp_of(store, "part", "body"), "counted_stitches": "200"}
    assert client.post(f"{BODY}/change", data=BLANK_PART | told).status_code == 422
    assert book_of(store).part["body"].shape == Counted(229, 120)


def test_a_tube_is_as_wide_as_the_whole_way_round(client: TestClient) -> None:
    assert "as wide as the whole way round" in words(page(client, NEW))


def test_two_windows_the_second_is_told(client: TestClient, store: Store) -> None:
    told = BLANK_PART | {
        "stamp": stamp_of(store, "part", "body"),
        "counted_stitches": "200",
        "counted_rows": "120",
    }
    client.post(f"{BODY}/change", data=told)
    late = told | {"counted_rows": "90", "notes": "two\r\nlines"}
    answer = client.post(f"{BODY}/change", data=late)
    assert answer.status_code == 409
    assert book_of(store).part["body"].shape == Counted(200, 120)
    said = words(answer.text)
    assert "Nothing was overwritten." in said
    assert "There now: 120." in said
    assert "There now: nothing." in said
    assert value_of(answer.text, "counted_rows") == "90"
    again = shown_values(answer.text, f"{BODY}/change")
    assert again["notes"] == "two\nlines"
    client.post(f"{BODY}/change", data=again)
    assert book_of(store).part["body"].shape == Counted(200, 90)


def test_parts_stand_earlier_and_later(client: TestClient, store: Store) -> None:
    client.post("/garments/pullover/parts/sleeves/move", data={"to": "earlier"})
    assert book_of(store).part["sleeves"].position == 1
    client.post("/garments/pullover/parts/sleeves/move", data={"to": "later"})
    assert book_of(store).part["sleeves"].position == 2
    answer = client.post("/garments/pullover/parts/sleeves/move", data={"to": "later"})
    assert "sleeves cannot stand later than it does." in words(answer.text)


def test_taking_a_part_out_is_asked_first_and_names_what_becomes_free(
    client: TestClient, store: Store
) -> None:
    asked = words(page(client, f"{BODY}/remove"))
    assert "Take body out of pullover?" in asked
    assert "These skeins become free: G-1." in asked
    told = {"stamp": stamp_of(store, "part", "body")}
    said = words(client.post(f"{BODY}/remove", data=told).text)
    assert "body is taken out. What was promised to it is free again." in said
    assert "body" not in book_of(store).part


def test_a_part_changed_meanwhile_is_not_taken_out(client: TestClient, store: Store) -> None:
    answer = client.post(f"{BODY}/remove", data={"stamp": "000000000000"})
    assert answer.status_code == 409
    assert "body" in book_of(store).part


@pytest.mark.parametrize(
    "url",
    [
        "/garments/mittens/parts/new",
        "/garments/pullover/parts/cuff/change",
        "/garments/hat/parts/body/change",
        "/garments/hat/parts/body/remove",
    ],
)
def test_a_part_that_is_not_there(client: TestClient, url: str) -> None:
    assert client.get(url).status_code == 404
