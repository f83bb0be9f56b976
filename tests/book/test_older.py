"""A document of an earlier version is read as the present one would have held it."""

import json

import pytest

from app.book.errors import ExchangeError
from app.book.exchange import dumps, in_order, loads
from app.book.gauge import Gauge
from tests.books import a_book, a_part, a_plan, a_yarn

FIRST = a_book(a_yarn(), a_plan(), a_plan("later", gauge=None), a_part(gauge=Gauge(20.0, 28.0)))


def first_version():
    """What version 1 wrote of FIRST: no swatches, and gauges that name none."""
    document = json.loads(dumps(FIRST)) | {"version": 1}
    del document["swatches"]
    for record in (*document["plans"], *document["parts"]):
        if record["gauge"]:
            del record["gauge"]["swatch_id"]
    return document


def test_a_document_of_version_1_is_read_and_goes_on_as_the_present_one():
    read = loads(json.dumps(first_version()))
    assert read == in_order(FIRST)
    assert json.loads(dumps(read))["version"] == 2


def test_what_the_present_version_has_must_be_there_in_its_own_documents():
    with pytest.raises(ExchangeError, match="swatches: missing"):
        loads(json.dumps(first_version() | {"version": 2}))


@pytest.mark.parametrize("nonsense", [None, 3, "plans", [None], [3], [{}], [{"gauge": []}]])
def test_nonsense_in_an_older_document_is_refused_in_words(nonsense):
    with pytest.raises(ExchangeError, match="plans"):
        loads(json.dumps(first_version() | {"plans": nonsense}))


def test_an_older_document_without_a_table_is_told_so():
    document = first_version()
    del document["parts"]
    with pytest.raises(ExchangeError, match="parts: missing"):
        loads(json.dumps(document))
