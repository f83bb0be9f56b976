"""A document of an earlier version is read as the present one would have held it."""

import json

import pytest

from app.book.errors import ExchangeError
from app.book.exchange import VERSION, dumps, in_order, loads
from app.book.gauge import Gauge
from tests.books import a_book, a_part, a_plan, a_yarn

KEPT = a_book(a_yarn(), a_plan(), a_plan("later", gauge=None), a_part(gauge=Gauge(20.0, 28.0)))


LATER = {
    "yarns": ("blend", "spinning"),
    "holdings": ("colours", "look_again", "apart"),
    "plans": ("cast_on", "finished_on", "took", "measured"),
    "parts": ("sequence",),
}


def third_version():
    """What version 3 wrote of KEPT: no wheels, time or photos, no blends and no turns."""
    document = json.loads(dumps(KEPT)) | {"version": 3}
    for name in ("wheels", "stints", "marks", "photos", "progress", "weighings"):
        del document[name]
    for name in ("prices", "evening_minutes"):
        del document["settings"][name]
    for table, names in LATER.items():
        for record in document[table]:
            for name in names:
                del record[name]
    return document


def second_version():
    """What version 2 wrote of it: no patterns, plans without a design, parts without a place."""
    document = third_version() | {"version": 2}
    del document["patterns"]
    for plan in document["plans"]:
        for field in ("design", "pattern_id", "size", "follows"):
            del plan[field]
    for part in document["parts"]:
        for field in ("place", "in_round", "extras", "worked"):
            del part[field]
    return document


def first_version():
    """What version 1 wrote of it: no swatches either, and gauges that name none."""
    document = second_version() | {"version": 1}
    del document["swatches"]
    for record in (*document["plans"], *document["parts"]):
        if record["gauge"]:
            del record["gauge"]["swatch_id"]
    return document


OLDER = pytest.mark.parametrize("older", [first_version, second_version, third_version])


@OLDER
def test_an_older_document_is_read_and_goes_on_as_the_present_one(older):
    read = loads(json.dumps(older()))
    assert read == in_order(KEPT)
    assert json.loads(dumps(read))["version"] == VERSION


@pytest.mark.parametrize(
    ("document", "version", "missing"),
    [
        (first_version(), 2, "swatches: missing"),
        (second_version(), 3, "patterns: missing"),
        (second_version(), 3, r"plans\[0\].design: missing"),
        (second_version(), 3, r"parts\[0\].worked: missing"),
        (third_version(), 4, "wheels: missing"),
        (third_version(), 4, r"holdings\[0\].apart: missing"),
        (third_version(), 4, r"settings.prices: missing"),
    ],
)
def test_what_a_version_has_must_be_there_in_its_own_documents(document, version, missing):
    with pytest.raises(ExchangeError, match=missing):
        loads(json.dumps(document | {"version": version}))


@OLDER
@pytest.mark.parametrize("nonsense", [None, 3, "plans", [None], [3], [{}], [{"gauge": []}]])
def test_nonsense_in_an_older_document_is_refused_in_words(older, nonsense):
    with pytest.raises(ExchangeError, match="plans"):
        loads(json.dumps(older() | {"plans": nonsense}))


@OLDER
def test_an_older_document_without_a_table_is_told_so(older):
    document = older()
    del document["parts"]
    with pytest.raises(ExchangeError, match="parts: missing"):
        loads(json.dumps(document))


def test_settings_that_are_no_record_are_refused_in_words():
    with pytest.raises(ExchangeError, match="settings: expected an object"):
        loads(json.dumps(third_version() | {"settings": 3}))
