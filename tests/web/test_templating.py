from dataclasses import dataclass

import pytest
from jinja2 import UndefinedError
from starlette.testclient import TestClient

from app.web.templating import draw, environment, room_of, static_url


@dataclass(frozen=True)
class Page:
    title: str


@pytest.mark.parametrize(
    ("path", "room"),
    [
        ("/", "/"),
        ("/quick", "/"),
        ("/fleeces/new", "/fleeces"),
        ("/yarns/abc/change", "/skeins"),
        ("/settings/people", "/settings"),
        ("/fleecesque", ""),
        ("/undo/3", ""),
    ],
)
def test_an_address_lies_in_its_room(path: str, room: str):
    assert room_of(path) == room


def test_everything_is_escaped():
    template = environment().from_string('{{ name }} <i title="{{ name }}">')
    assert template.render(name="<b>\"'") == '&lt;b&gt;&#34;&#39; <i title="&lt;b&gt;&#34;&#39;">'


def test_a_name_that_is_not_in_the_page_is_an_error():
    with pytest.raises(UndefinedError):
        draw("errors/error.html", {"title": "No"})


def test_a_static_file_carries_the_digest_of_what_it_holds():
    address = static_url("css/base.css")
    assert address.startswith("/static/css/base.css?v=")
    assert len(address.rsplit("=", 1)[1]) == 10
    with pytest.raises(FileNotFoundError):
        static_url("css/none.css")


FRAGMENT = {"hx-request": "true", "hx-request-type": "partial"}


def test_htmx_gets_the_block_and_a_browser_the_page(client: TestClient):
    path = "/tables/breeds?breed=Cheviot"
    whole, part = client.get(path).text, client.get(path, headers=FRAGMENT).text
    assert "<html" in whole
    assert "<html" not in part
    assert part.strip() in whole


@pytest.mark.parametrize(
    "headers",
    [
        {"hx-history-restore-request": "true"},
        {"hx-boosted": "true"},
        {"hx-request-type": "full"},
    ],
)
def test_a_step_back_or_a_boosted_link_gets_the_whole_page(client: TestClient, headers):
    answer = client.get("/tables/breeds?breed=Cheviot", headers={**FRAGMENT, **headers})
    assert "<html" in answer.text
    assert "HX-Request" in answer.headers["vary"]


def test_the_room_in_which_one_is_carries_aria_current(client: TestClient):
    assert '<a href="/settings" aria-current="page">Settings</a>' in client.get("/settings").text
    assert '<a href="/settings" aria-current="true">' in client.get("/settings/people").text
    assert "aria-current" not in client.get("/nowhere").text


def test_what_was_saved_is_said_once(client: TestClient):
    said = client.post("/settings/people/new", data={"name": "Ines"}).text
    assert 'role="status"' in said
    assert "What you wrote of Ines is saved." in said
    assert 'role="status"' not in client.get("/settings/people").text


def test_a_form_sent_by_htmx_is_answered_with_the_place_to_go(client: TestClient):
    answer = client.post("/settings/people/new", data={"name": "Ines"}, headers=FRAGMENT)
    assert answer.status_code == 200
    assert answer.headers["hx-redirect"] == "/settings/people"


@pytest.mark.parametrize("cookie", ["", "nonsense", "bm9uc2Vuc2U=", "eyJhIjoxfQ==", "W10="])
def test_a_cookie_that_is_not_ours_says_nothing(client: TestClient, cookie: str):
    answer = client.get("/settings", headers={"cookie": f"said={cookie}"})
    assert answer.status_code == 200
    assert 'role="status"' not in answer.text
