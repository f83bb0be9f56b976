import json

import pytest
from starlette.testclient import TestClient

from app.book.exchange import dumps
from app.store.backup import backups
from app.store.engine import Store
from app.store.records import load_book
from tests.books import a_book, a_fleece, a_holding, a_person

BOOK = dumps(
    a_book(
        a_person(), a_fleece(), a_holding(fleece_id="Bramble", state="raw"), held={"F-1": (900, 0)}
    )
)


def sent(client: TestClient, document: str | bytes):
    return client.post("/settings/data/import", files={"document": ("book.json", document)})


def test_a_book_goes_out_as_it_came_in(client: TestClient):
    answer = sent(client, BOOK)
    assert "The document is in your book." in answer.text
    assert "1 fleece, 0 skeins and 0 garments" in answer.text
    out = client.get("/settings/data/export")
    assert out.text == BOOK
    assert out.headers["content-type"] == "application/json"
    assert out.headers["content-disposition"].startswith('attachment; filename="tallyhank-')


def test_a_book_that_is_not_empty_takes_nothing_in(client: TestClient, store: Store):
    client.post("/settings/people/new", data={"name": "Oskar"})
    assert "can only be taken into an empty book" in client.get("/settings/data").text
    answer = sent(client, BOOK)
    assert answer.status_code == 422
    assert "There are records here already." in answer.text
    with store.reading() as session:
        assert [one.name for one in load_book(session).people] == ["Oskar"]


@pytest.mark.parametrize("document", ["", "no json", "{}", "[1", b"\xff\xfe\x00", "null"])
def test_what_is_no_book_is_refused_whole(client: TestClient, store: Store, document: str | bytes):
    answer = sent(client, document)
    assert answer.status_code == 422
    assert 'id="e-document"' in answer.text
    with store.reading() as session:
        assert load_book(session).people == ()


def test_every_fault_of_a_document_is_listed_and_nothing_is_taken_in(
    client: TestClient, store: Store
):
    plain = json.loads(BOOK)
    plain["people"][0]["name"] = 7
    plain["fleeces"][0]["yield_pct"] = "<b>much</b>"
    answer = sent(client, json.dumps(plain))
    assert answer.status_code == 422
    assert "people" in answer.text
    assert "yield_pct" in answer.text
    assert "<b>much" not in answer.text
    with store.reading() as session:
        assert load_book(session).fleeces == ()


def test_the_first_fault_is_told_where_the_page_begins(client: TestClient):
    plain = json.loads(BOOK)
    plain["settings"]["sureness_pct"] = 200
    told = "settings, sureness_pct: must be more than 0 and less than 100 percent."
    alert = sent(client, json.dumps(plain)).text.split('role="alert"')[1].split("</div>")[0]
    assert f"This document cannot be read: {told} Nothing of it was taken in." in alert
    plain["people"][0]["name"] = 7
    plain["fleeces"][0]["yield_pct"] = "much"
    alert = sent(client, json.dumps(plain)).text.split('role="alert"')[1].split("</div>")[0]
    assert "All that is wrong is listed under Import." in alert


def test_no_file_chosen(client: TestClient):
    answer = client.post("/settings/data/import", data={"other": "x"})
    assert answer.status_code == 422
    assert "Choose the file of an exported book." in answer.text


def test_a_backup_is_made_and_said(client: TestClient, store: Store):
    answer = client.post("/settings/data/backup")
    (file,) = backups(store.folder)
    assert f"Backed up and verified: {file.name}." in answer.text
    assert str(file) in client.get("/settings/data").text


def test_restoring_is_explained(client: TestClient):
    assert "tallyhank restore FILE" in client.get("/settings/data").text
