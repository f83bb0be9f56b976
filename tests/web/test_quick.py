"""The quick reckoning as a maker meets it: half a sentence in, a true answer out."""

import re

import pytest

from app.book.person import Measure, Person
from app.store.records import load_book, put

ASKED = {
    "have": "640 m",
    "yarn": "",
    "wraps": "",
    "gauge_stitches": "22",
    "gauge_rows": "30",
    "gauge_measure": "10 cm",
    "gauge_washed": "yes",
    "garment": "waistcoat",
    "person": "",
    "chest": "96",
}


def asked(client, **other):
    return client.get("/quick", params=ASKED | other)


def lead(page):
    return re.search(r'id="answer"><b class="(\w+)">([^<]*)', page.text).groups()


def test_the_sentence_stands_on_the_first_page_and_on_its_own(client):
    for address in ("/", "/quick"):
        page = client.get(address)
        assert page.status_code == 200
        assert 'action="/quick"' in page.text


def test_too_little_yarn_says_how_much_is_missing(client):
    page = asked(client)
    tone, words = lead(page)
    assert (page.status_code, tone) == (200, "short")
    assert words.startswith("Short by 24")
    assert "741 ± 107" in page.text
    assert "you asked for 18" in page.text


def test_enough_says_what_will_be_left(client):
    page = asked(client, have="1000 m")
    assert lead(page) == ("enough", "Enough:")
    assert "will be left" in page.text


def test_grams_yards_and_sums_are_understood(client):
    assert lead(asked(client, have="4x100 g"))[0] in ("short", "enough")
    assert "1 097" in asked(client, have="1200 yd").text.replace("\u202f", " ")


def test_what_was_left_out_is_named_with_its_width(client):
    page = asked(client, gauge_stitches="", gauge_rows="", chest="")
    for name in ("Gauge", "Grist of the yarn", "Chest", "Ease"):
        assert f'<th scope="row">{name}</th>' in page.text


def test_a_small_chest_with_its_unit_is_not_asked_about(client):
    assert asked(client, chest="41 cm").status_code == 200
    assert asked(client, chest="38 in").status_code == 200


def test_rows_may_be_left_out(client):
    page = asked(client, gauge_rows="")
    assert page.status_code == 200
    assert '<th scope="row">Rows</th>' in page.text
    assert 'name="gauge_rows" value=""' in page.text


def test_wraps_tell_the_thickness(client):
    page = asked(client, have="300 g", wraps="14", gauge_stitches="", gauge_rows="")
    assert page.status_code == 200
    assert "Grist of the yarn" not in page.text


@pytest.mark.parametrize(
    ("field", "typed"),
    [
        ("have", ""),
        ("have", "plenty"),
        ("have", "3 fl oz"),
        ("gauge_stitches", "-4"),
        ("gauge_stitches", "2200"),
        ("gauge_stitches", "many"),
        ("chest", "5 m"),
        ("chest", "38"),
        ("wraps", "900"),
        ("garment", "sail"),
        ("person", "nobody"),
        ("yarn", "<b>"),
    ],
)
def test_a_fault_is_said_beside_its_blank_and_what_was_typed_stays(client, field, typed):
    page = asked(client, **{field: typed})
    assert page.status_code == 422
    assert f'id="e-{field}"' in page.text
    assert "<b>" not in page.text.replace('<b class="', "")


def test_a_body_no_garment_fits_is_refused_beside_the_chest(client, store):
    with store.writing() as session:
        put(session, Person("Tall", "Tall", (Measure("armhole depth", 900),)))
    page = asked(client, person="Tall")
    assert page.status_code == 422
    assert 'id="e-chest"' in page.text


def test_a_person_is_asked_with_her_own_measures(client, store):
    with store.writing() as session:
        put(session, Person("Ines", "Ines", (Measure("chest", 1100),)))
    wide = asked(client, person="Ines", chest="").text
    assert re.search(r"It needs ([\d\u202f]+)", wide).group(1) > "741"
    assert '<th scope="row">Chest</th>' not in wide


def test_a_fragment_is_the_answer_and_the_sentence_only(client):
    page = client.get("/quick", params=ASKED, headers={"hx-request": "true"})
    assert "<html" not in page.text
    assert 'id="answer"' in page.text
    assert 'action="/quick"' in page.text


def test_asking_saves_nothing_and_keeping_saves_the_plan(client, store):
    asked(client)
    with store.reading() as session:
        assert load_book(session).plans == ()
    answer = client.post("/quick/keep", data=ASKED, follow_redirects=False)
    assert answer.status_code == 303
    with store.reading() as session:
        book = load_book(session)
    (plan,) = book.plans
    assert answer.headers["location"] == f"/garments/{plan.id}"
    assert plan.name == "Waistcoat"
    assert plan.gauge.stitches == 22
    assert {one.name for one in book.parts} >= {"body", "neck band"}
    assert client.get(f"/garments/{plan.id}").status_code == 200


def test_keeping_a_faulty_sentence_saves_nothing(client, store):
    answer = client.post("/quick/keep", data=ASKED | {"have": "plenty"})
    assert answer.status_code == 422
    with store.reading() as session:
        assert load_book(session).plans == ()
