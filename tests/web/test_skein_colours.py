"""How the colour of a skein runs along it, and which end is knit first."""

import pytest
from starlette.testclient import TestClient

from app.book.holding import ColourAt
from app.store.engine import Store
from app.store.fill import fill
from tests.web.forms import shown_values
from tests.web.garden import book_of, page, words
from tests.work.shelf import a_shelf

COLOURS = "/skeins/G-1/colours"
TWO = {
    "at_1": "0",
    "colour_1": "#6b4a36",
    "colour_1_known": "1",
    "at_2": "200 m",
    "colour_2": "#efe7d8",
    "colour_2_known": "1",
}


@pytest.fixture(autouse=True)
def shelf(store: Store) -> None:
    with store.writing() as session:
        fill(session, a_shelf())


def typed(client: TestClient, **more: str) -> dict[str, str]:
    return shown_values(page(client, COLOURS), COLOURS) | TWO | more


def test_its_page_leads_there_and_says_it_is_of_one_colour(client: TestClient) -> None:
    assert COLOURS in page(client, "/skeins/G-1")
    assert "Of one colour so far." in words(page(client, COLOURS))


def test_the_colours_are_kept_and_shown(client: TestClient, store: Store) -> None:
    promise = "G-1 promised"
    answer = client.post(COLOURS, data=typed(client, **{f"inside_{promise}": "1"}))
    assert "G-1: its colours along the yarn are noted." in words(answer.text)
    book = book_of(store)
    assert book.holding["G-1"].colours == (ColourAt(0, "#6b4a36"), ColourAt(200_000, "#efe7d8"))
    assert [one.from_inside for one in book.promises] == [True]
    html = page(client, COLOURS)
    assert html.count("<rect") == 60
    values = shown_values(html, COLOURS)
    assert (values["at_2"], values["colour_2"]) == ("200", "#efe7d8")
    assert values[f"inside_{promise}"] == "1"


def test_they_are_kept_in_their_order_along_the_yarn(client: TestClient, store: Store) -> None:
    client.post(COLOURS, data=typed(client, at_1="150"))
    client.post(COLOURS, data=typed(client, at_1="150", at_2="20"))
    assert [one.mm for one in book_of(store).holding["G-1"].colours] == [20_000, 150_000]


def test_none_at_all_is_one_colour_again(client: TestClient, store: Store) -> None:
    client.post(COLOURS, data=typed(client))
    blank = {"stamp": shown_values(page(client, COLOURS), COLOURS)["stamp"]}
    assert "G-1: it is of one colour." in words(client.post(COLOURS, data=blank).text)
    assert book_of(store).holding["G-1"].colours == ()


@pytest.mark.parametrize(
    ("wrong", "message"),
    [
        ({"at_1": ""}, "Say how far from the outer end."),
        ({"colour_2_known": ""}, "Choose its colour there, and tick that it looks so."),
        ({"at_2": "0"}, "Each place along the yarn has one colour."),
        ({"at_2": "", "colour_2_known": ""}, "Give two places at least"),
        ({"at_2": "far"}, "Please look at"),
    ],
)
def test_what_is_missing_is_said(
    client: TestClient, store: Store, wrong: dict[str, str], message: str
) -> None:
    answer = client.post(COLOURS, data=typed(client, **wrong))
    assert answer.status_code == 422
    assert message in words(answer.text)
    assert book_of(store).holding["G-1"].colours == ()


def test_a_skein_changed_meanwhile_is_left_alone(client: TestClient, store: Store) -> None:
    assert client.post(COLOURS, data=typed(client, stamp="old")).status_code == 409
    assert book_of(store).holding["G-1"].colours == ()
    assert client.get("/skeins/none/colours").status_code == 404
