"""The small sums stand on the plan's page and can be asked with other numbers."""

import pytest
from starlette.testclient import TestClient

from app.book.shape import Counted, Metres, Run, Runs
from app.store.engine import Store
from app.store.fill import fill
from tests.books import a_book, a_part, a_plan, a_yarn
from tests.web.forms import shown_values
from tests.web.garden import SWAP, page, words

SUMS = "/garments/pullover/sums"


@pytest.fixture(autouse=True)
def _cardigan(store: Store) -> None:
    book = a_book(
        a_yarn(),
        a_plan(),
        a_plan("rug", priority=2),
        a_part("back", shape=Counted(229, 120)),
        a_part("sleeves", shape=Runs((Run(135, 48, 80),)), in_round=True, place="sleeve"),
        a_part("front bands", shape=Counted(110, 8), place="band"),
        a_part("warp", plan_id="rug", shape=Metres(100_000)),
    )
    with store.writing() as session:
        fill(session, book)


def test_they_stand_on_the_plans_page(client: TestClient) -> None:
    told = words(page(client, "/garments/pullover"))
    assert "Front bands: seven buttonholes of 3 on 110 stitches, the first after 4 stitches" in told
    assert "Back, 120 rows: 88 stitches; 2 in 3, then 3 in 4" in told
    assert "Back, 229 stitches: 226 or 230 fit." in told


def test_they_are_asked_with_other_numbers(client: TestClient) -> None:
    typed = shown_values(page(client, SUMS), SUMS)
    assert typed["buttons"] == "7"
    answer = client.get(SUMS, params=typed | {"buttons": "1", "part": "sleeves", "to": "70"})
    told = words(answer.text)
    assert "one buttonhole of 3 on 110 stitches, the first after 54 stitches." in told
    assert ": 70 stitches" in told


def test_htmx_gets_the_sums_alone(client: TestClient) -> None:
    part = client.get(SUMS, headers=SWAP).text
    assert "<html" not in part
    assert "Buttons" in part


@pytest.mark.parametrize(
    ("field", "typed", "told"),
    [
        ("buttons", "60", "So many buttonholes do not fit on the front bands."),
        ("buttons", "some", "some"),
        ("border", "brioche of a kind", "Choose one of these."),
        ("hole", "0", "This must be 1 or more."),
    ],
)
def test_a_fault_stands_beside_its_field(
    client: TestClient, field: str, typed: str, told: str
) -> None:
    answer = client.get(SUMS, params={field: typed})
    assert answer.status_code == 422
    assert f'id="e-{field}"' in answer.text
    assert told in words(answer.text)


def test_where_there_are_no_rows_there_are_no_sums(client: TestClient) -> None:
    assert "Small sums:" not in words(page(client, "/garments/rug"))
    assert "There is nothing to work from yet" in words(page(client, "/garments/rug/sums"))


def test_a_garment_that_is_not_there(client: TestClient) -> None:
    assert client.get("/garments/none/sums").status_code == 404
