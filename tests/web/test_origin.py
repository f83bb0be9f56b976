"""From outside: foreign names, foreign pages and bodies that are too large are refused."""

import pytest
from starlette.testclient import TestClient

from app.store.engine import Store
from app.web.origin import BODY_LIMIT
from app.web.server import create_app
from tests.web.conftest import HOME

PERSON = {"name": "Ines"}


@pytest.mark.parametrize("host", ["127.0.0.1:8765", "localhost:8765", "[::1]:8765"])
def test_the_machine_s_own_names_are_answered(client: TestClient, host: str):
    assert client.get("/settings", headers={"host": host}).status_code == 200


@pytest.mark.parametrize(
    "host",
    [
        "tallyhank.example:8765",
        "127.0.0.1:8766",
        "127.0.0.1",
        "localhost:notaport",
        "127.0.0.1:8765@tallyhank.example",
        "user@127.0.0.1:8765",
        "127.0.0.1.tallyhank.example:8765",
        "",
    ],
)
def test_a_foreign_name_is_refused_whatever_it_resolves_to(client: TestClient, host: str):
    answer = client.get("/settings", headers={"host": host})
    assert answer.status_code == 400
    assert "Settings" not in answer.text


@pytest.mark.parametrize(
    "headers",
    [
        {"origin": "http://tallyhank.example"},
        {"origin": "https://127.0.0.1:8765"},
        {"origin": "http://127.0.0.1:8766"},
        {"origin": "null"},
        {"origin": ""},
    ],
)
def test_a_change_from_a_foreign_page_is_refused(client: TestClient, headers: dict[str, str]):
    assert client.post("/settings/people/new", data=PERSON, headers=headers).status_code == 403
    assert "Ines" not in client.get("/settings/people").text


def test_a_change_without_an_origin_needs_the_browser_s_word_for_it(store: Store):
    with TestClient(create_app(store), base_url=HOME) as browser:
        path, send = "/settings/people/new", {"data": PERSON}
        assert browser.post(path, **send).status_code == 403
        for site in ("cross-site", "same-site", "none"):
            assert browser.post(path, headers={"sec-fetch-site": site}, **send).status_code == 403
        answer = browser.post(path, headers={"sec-fetch-site": "same-origin"}, **send)
        assert answer.status_code == 200


def test_a_body_above_the_limit_is_refused(client: TestClient):
    answer = client.post("/settings/people/new", data={"notes": "w" * (BODY_LIMIT + 1)})
    assert answer.status_code == 413


def test_a_body_that_lies_about_its_length_is_refused(client: TestClient):
    def pieces():
        for _ in range(BODY_LIMIT // 1000 + 2):
            yield b"w" * 1000

    assert client.post("/settings/people/new", content=pieces()).status_code == 413


def test_a_length_that_is_no_number_is_refused(client: TestClient):
    headers = {"content-length": "many"}
    assert client.post("/settings/people/new", content=b"", headers=headers).status_code == 413


def test_a_document_may_be_larger_than_a_form(client: TestClient):
    large = {"document": ("book.json", b" " * (BODY_LIMIT + 1))}
    assert client.post("/settings/data/import", files=large).status_code == 422


def test_every_answer_carries_the_policy(client: TestClient):
    for path in ("/settings", "/nowhere", "/static/icon.svg"):
        headers = client.get(path).headers
        assert headers["content-security-policy"].startswith(
            "default-src 'none'; script-src 'self'"
        )
        assert "unsafe" not in headers["content-security-policy"]
        assert headers["x-content-type-options"] == "nosniff"
        assert headers["referrer-policy"] == "same-origin"


def test_pages_are_never_kept_and_versioned_files_are(client: TestClient):
    page = client.get("/settings")
    assert page.headers["cache-control"] == "no-store"
    assert client.get("/static/icon.svg").headers["cache-control"] == "no-store"
    address = page.text.split('rel="icon" href="')[1].split('"')[0]
    assert "immutable" in client.get(address).headers["cache-control"]
    assert client.get("/static/none.css?v=1").headers["cache-control"] == "no-store"


@pytest.mark.parametrize("path", ["/static/../app/paths.py", "/static/%2e%2e/app/paths.py"])
def test_nothing_outside_the_static_files_is_served(client: TestClient, path: str):
    assert client.get(path).status_code == 404
