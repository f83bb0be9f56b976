import pytest
from starlette.testclient import TestClient

from app.web.routes.undo import own_path
from tests.web.forms import shown_values
from tests.web.test_fleeces import added, plain, weighed


@pytest.mark.parametrize(
    ("typed", "path"),
    [
        ("/fleeces/abc", "/fleeces/abc"),
        ("/skeins?sort=code", "/skeins?sort=code"),
        ("//tallyhank.example/", "/"),
        ("https://tallyhank.example/", "/"),
        ("/\\tallyhank.example", "/"),
        ("/\t/tallyhank.example", "/"),
        ("fleeces", "/"),
        ("", "/"),
        (None, "/"),
    ],
)
def test_an_undo_leads_back_to_a_page_of_this_program_only(typed: object, path: str):
    assert own_path(typed) == path


def test_an_event_that_is_not_there(client: TestClient):
    assert client.post("/undo/99", data={}).status_code == 404


def test_an_event_is_undone_once(client: TestClient):
    address = added(client)
    weighed(client, address, weight="1600")
    assert client.post("/undo/2", data={"back": address}).status_code == 200
    again = client.post("/undo/2", data={"back": address})
    assert again.status_code == 409
    assert "This was undone already." in again.text
    assert f'href="{address}"' in again.text
    assert "1 640 g raw" in plain(client.get(address).text)


def test_what_has_been_used_since_cannot_be_undone(client: TestClient):
    address = added(client)
    weighed(client, address, state="skirted", weight="1400")
    answer = client.post("/undo/1", data={"back": address})
    assert answer.status_code == 409
    assert "Undo the later event first." in answer.text
    assert "1 400 g skirted" in plain(client.get(address).text)


def test_a_fleece_whose_arrival_is_undone_is_put_away(client: TestClient):
    address = added(client)
    client.post("/undo/1", data={"back": "/fleeces"})
    assert "Put away: 1" in client.get("/fleeces").text
    assert client.get(address).status_code == 200


def test_an_undone_measurement_counts_no_more(client: TestClient):
    """The sureness is that of the reel again, not of a tape of 2 %."""
    reeled = {"girth": "1.5", "turns": "142", "mass": "96", "yarn": "new", "yarn_name": "Jasper"}
    skein = str(client.post("/skeins/new", data=reeled).url.path)
    before = client.get(skein).text.partition("How surely")[2]
    form = shown_values(client.get(f"{skein}/weigh").text, f"{skein}/weigh")
    client.post(f"{skein}/weigh", data=form | {"length": "300"})
    assert "Holds 300 m" in plain(client.get(skein).text)
    client.post("/undo/2", data={"back": skein})
    page = client.get(skein).text
    assert page.partition("How surely")[2] == before
    assert "300 m" not in page.partition("Readings, as they were typed")[2].partition("What hap")[0]
