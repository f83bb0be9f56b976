import logging

import pytest
from starlette.testclient import TestClient


def test_an_address_that_leads_nowhere(client: TestClient):
    answer = client.get("/nowhere")
    assert answer.status_code == 404
    assert "There is no page at this address." in answer.text
    assert '<nav class="rooms"' in answer.text


def test_a_record_that_is_not_in_the_book(client: TestClient):
    answer = client.get("/fleeces/nobody")
    assert answer.status_code == 404
    assert "This fleece is not in the book." in answer.text


def test_a_method_the_address_does_not_take(client: TestClient):
    answer = client.put("/settings")
    assert answer.status_code == 405
    assert "allow" in answer.headers
    assert "This address does not take that." in answer.text


def test_a_path_of_the_wrong_kind_is_not_found(client: TestClient):
    assert client.post("/undo/last", data={}).status_code == 404


def test_a_form_that_is_none(client: TestClient):
    answer = client.post(
        "/settings/people/new",
        content=b"--x",
        headers={"content-type": "multipart/form-data; boundary=y"},
    )
    assert answer.status_code in (400, 422)


def test_a_form_sent_too_late_shows_what_was_typed(client: TestClient):
    form = {"stamp": "0" * 12, "length_unit": "yd", "girth": "<b>1.5", "person_id": "x", "note": ""}
    answer = client.post("/settings", data=form)
    assert answer.status_code == 409
    assert "What you typed" in answer.text
    assert '<dt>Length unit</dt><dd class="notes">yd</dd>' in answer.text
    assert '<dt>Girth</dt><dd class="notes">&lt;b&gt;1.5</dd>' in answer.text
    assert "000000000000" not in answer.text
    assert "Person" not in answer.text
    assert "<dt>Note" not in answer.text


def test_an_error_nobody_expected_shows_no_traceback(client: TestClient, monkeypatch, caplog):
    def broken(_):
        raise ZeroDivisionError("a secret of the code")

    monkeypatch.setattr("app.web.routes.people.people", broken)
    with caplog.at_level(logging.ERROR):
        answer = client.get("/settings/people")
    assert answer.status_code == 500
    assert "secret" not in answer.text
    assert "The program met an error it did not expect." in answer.text
    assert answer.headers["content-security-policy"]
    assert "a secret of the code" in caplog.text


@pytest.mark.parametrize("path", ["/fleeces/<script>alert(1)</script>", "/%3Cimg%20src=x%3E"])
def test_what_stands_in_an_address_is_not_repeated_as_markup(client: TestClient, path: str):
    answer = client.get(path)
    assert answer.status_code == 404
    assert "<script>alert" not in answer.text
    assert "<img" not in answer.text
