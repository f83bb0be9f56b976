"""Which size: the answer in a sentence, every size beneath, and a size taken into the plan."""

import re
from dataclasses import replace

import pytest
from starlette.testclient import TestClient

from app.book.gauge import Gauge
from app.book.pattern import PatternSize
from app.book.person import Measure
from app.store.engine import Store
from app.store.fill import fill
from app.store.records import put
from tests.books import a_book, a_part, a_person, a_plan, a_promise, a_skein, a_yarn
from tests.patterns import a_size, five_sizes
from tests.web.forms import shown_values
from tests.web.garden import book_of, page, stamp_of, words

ADDRESS = "/garments/pullover/size"
ASKED = {
    "pattern": "yoke pattern",
    "follows": "stitches",
    "body": "96",
    "ease": "standard",
    "ease_own": "",
}


def keep(store: Store, *records: object) -> None:
    with store.writing() as session:
        for one in records:
            put(session, one)


@pytest.fixture
def shelf(store: Store) -> Store:
    """Ines, 96 cm, a pullover at 20 × 28, the pattern at 22 × 30, 1600 m of grey."""
    with store.writing() as session:
        fill(
            session,
            a_book(
                a_person(),
                a_yarn(),
                a_skein(),
                a_plan(person_id="Ines", gauge=Gauge(20.0, 28.0)),
                a_part(),
                a_promise(),
                held={"G-1": (720.0, 1600.0)},
            ),
        )
        put(session, five_sizes())
    return store


def answer(html: str) -> str:
    return words(html.split('id="answer">')[1].split("</p>")[0])


def take(client: TestClient, store: Store, **other: str):
    data = {
        "stamp": stamp_of(store, "plan", "pullover"),
        "pattern": "yoke pattern",
        "follows": "stitches",
        "size": "2",
        "by": "counts",
    }
    return client.post(ADDRESS, data=data | other, follow_redirects=False)


@pytest.mark.usefixtures("shelf")
def test_the_right_size_is_named_when_the_gauge_is_off(client: TestClient):
    said = answer(page(client, ADDRESS))
    assert said.startswith("Cast on for size 2: 106 cm, 10 cm of ease; knit the body to 40 cm.")
    assert "the shelf covers it" in said
    assert 'href="/garments/pullover/size"' in page(client, "/garments/pullover")


def test_at_the_patterns_own_gauge_it_is_another(client: TestClient, shelf: Store):
    keep(shelf, a_plan(person_id="Ines", gauge=Gauge(22.0, 30.0)))
    assert answer(page(client, ADDRESS)).startswith("Cast on for size 3: 104.1 cm")


@pytest.mark.usefixtures("shelf")
def test_every_size_stands_beneath_with_its_tightest_place(client: TestClient):
    shown = words(page(client, ADDRESS))
    assert "It is tightest at the chest: 106 cm around 96 cm." in shown
    assert "132 cm 36 cm of ease chest body 40 cm, sleeves 45 cm, yoke 22.1 cm" in shown
    assert "Body cast on 212, 112 rows, 40 cm" in shown
    assert "Sleeves × 2 cast on 48, to 76 stitches, 126 rows, 45 cm" in shown
    assert "√(S of the pattern ÷ S own)" in shown


def test_lengths_stand_against_the_wearers(client: TestClient, shelf: Store):
    """Body 40 and yoke 22.1 cm are 62.1, an arm of 42 cm is 3 cm less than 45; at 28 rows in 10 cm
    42 cm are 118 rows."""
    measures = (
        Measure("chest", 960),
        Measure("body length", 620),
        Measure("arm length to underarm", 420),
    )
    keep(shelf, a_person(measures=measures))
    shown = words(page(client, ADDRESS))
    assert "From neck to lower edge it comes to 62.1 cm: as long as the body, 62 cm." in shown
    assert (
        "Its sleeves come to 45 cm, 3 cm longer than the arm to the underarm, 42 cm; to fit, knit "
        "the sleeves 118 rows, 42 cm."
    ) in shown
    assert "yoke 22.1 cm; 3 cm longer than the arm to the underarm" in shown
    keep(shelf, a_person(measures=(Measure("chest", 960), Measure("body length", 700))))
    shown = words(page(client, ADDRESS))
    assert "7.9 cm shorter than the body, 70 cm; to fit, knit the body 134 rows, 47.9 cm" in shown
    assert "which nobody measured" in shown


@pytest.mark.usefixtures("shelf")
def test_every_size_tells_its_metres_and_whether_the_shelf_covers_it(client: TestClient):
    """Ease, tightest place, lengths, metres and shelf in each of the five rows."""
    rows = [words(row) for row in page(client, ADDRESS).split("<tr>")[2:]]
    assert len(rows) == 5
    for row in rows:
        assert re.search(r"(of ease|tighter than the chest)", row)
        assert re.search(r"chest|upper arm|wrist", row)
        assert "sleeves" in row
        assert " ± " in row
        assert re.search(r"time", row)


def test_the_arm_may_be_the_tightest_place(client: TestClient, shelf: Store):
    wide = a_person(measures=(Measure("chest", 960), Measure("upper arm", 380)))
    keep(shelf, wide)
    shown = words(page(client, ADDRESS))
    assert "tightest at the upper arm: 38 cm around 38 cm" in shown


def test_an_arm_nobody_measured_is_said_to_be_unmeasured(client: TestClient, shelf: Store):
    size = a_size("2")
    narrow = replace(size, parts=(size.parts[0], replace(size.parts[1], cast_on=40, widest=50)))
    keep(shelf, five_sizes(sizes=(narrow,)))
    shown = words(page(client, ADDRESS))
    assert "It is tightest at the upper arm: 25 cm around" in shown
    assert "cm, which nobody measured." in shown


@pytest.mark.parametrize(
    ("other", "said"),
    [
        ({"follows": "size"}, "Cast on for size 3: 104 cm, 8 cm of ease; knit the body to 40 cm"),
        ({"follows": "stitches and rows"}, "size 2: 106 cm, 10 cm of ease; knit the body to 42.9"),
        ({"body": "104"}, "Cast on for size 3: 114.5 cm, 10.5 cm of ease"),
        ({"ease": "wider", "ease_own": "20"}, "Cast on for size 3: 114.5 cm"),
        ({"ease": "tighter", "ease_own": "1"}, "Cast on for size 1: 97 cm, 1 cm of ease"),
        ({"body": "38 in"}, "Cast on for size 2: 106 cm, 9.5 cm of ease"),
        ({"body": "150"}, "No size fits as you asked; size 5 is nearest: 132 cm, 18 cm tighter"),
        ({"body": "50"}, "No size fits as you asked; size 1 is nearest:"),
    ],
)
@pytest.mark.usefixtures("shelf")
def test_what_is_asked_changes_the_answer(client: TestClient, other, said):
    found = client.get(ADDRESS, params=ASKED | other)
    assert found.status_code == 200
    assert said in answer(found.text)


@pytest.mark.usefixtures("shelf")
def test_a_size_too_wide_is_said_to_be_so(client: TestClient):
    html = client.get(ADDRESS, params=ASKED | {"body": "50"}).text
    assert "wider than the most you asked for" in words(html)


@pytest.mark.parametrize(
    ("other", "field", "said"),
    [
        ({"body": "20"}, "body", "A chest must lie between 30 and 180 cm, not 20 cm."),
        ({"body": "wide"}, "body", ""),
        ({"ease": "wider"}, "ease_own", "This is needed."),
        ({"ease": "roomy"}, "ease", "Choose one of these."),
        ({"pattern": "nobody"}, "pattern", "Choose one of these."),
        ({"follows": "my nose"}, "follows", "Choose one of these."),
    ],
)
@pytest.mark.usefixtures("shelf")
def test_a_question_at_fault_says_where(client: TestClient, other, field, said):
    found = client.get(ADDRESS, params=ASKED | other)
    assert found.status_code == 422
    assert f'id="e-{field}"' in found.text
    assert said in words(found.text)


def test_what_is_still_to_be_told(client: TestClient, shelf: Store):
    keep(shelf, a_plan(gauge=Gauge(20.0, 28.0)))
    blank = page(client, ADDRESS)
    assert answer(blank) == "Which size? Say what the chest measures."
    assert 'role="alert"' not in blank
    keep(shelf, a_plan(gauge=None))
    assert "Say first what gauge you really get." in answer(page(client, ADDRESS))
    keep(shelf, a_plan(), five_sizes(sizes=()))
    assert "Write down a pattern with its sizes first." in answer(page(client, ADDRESS))


def test_a_size_is_taken_into_the_plan(client: TestClient, shelf: Store):
    html = page(client, ADDRESS)
    assert "Its part is replaced" in words(html)
    assert shown_values(html, ADDRESS)["pattern"] == "yoke pattern"
    assert take(client, shelf).headers["location"] == "/garments/pullover"
    book = book_of(shelf)
    plan = book.plan["pullover"]
    assert (plan.pattern_id, plan.size, plan.follows) == ("yoke pattern", "2", "stitches")
    assert [one.name for one in book.parts_of["pullover"]] == ["Body", "Sleeves", "Yoke"]
    assert len(book.promises_of["pullover"]) == 1
    garment = words(page(client, "/garments/pullover"))
    assert "pullover is size 2 of Round-yoke pullover now." in garment
    assert "Which size? It is size 2" in garment


def test_a_garment_drawn_from_measurements_follows_no_pattern_any_more(
    client: TestClient, shelf: Store
):
    take(client, shelf)
    address = "/garments/pullover/design"
    form = shown_values(page(client, address), address)
    assert client.post(address, data=form, follow_redirects=False).status_code == 303
    plan = book_of(shelf).plan["pullover"]
    assert (plan.pattern_id, plan.size, plan.follows) == (None, "", "")
    assert plan.design is not None


def test_parts_that_go_free_their_yarn_and_it_is_said(client: TestClient, shelf: Store):
    bare = PatternSize("2", 1060, 1_000_000)
    keep(shelf, five_sizes(sizes=(bare,)))
    take(client, shelf, by="stated")
    garment = words(page(client, "/garments/pullover"))
    assert "What was promised to parts it no longer has is free again." in garment


def test_two_answers_are_both_shown_and_asked_about(client: TestClient, shelf: Store):
    keep(shelf, five_sizes(sizes=(replace(a_size("2"), stated_mm=3_500_000),)))
    html = page(client, ADDRESS)
    assert "They differ by more than both can be wrong." in words(html)
    assert "Take size 2 by its counts" in html
    assert "Take size 2 by the amount it states" in html
    assert '<button class="chief" name="by"' not in html


def test_a_pattern_that_tells_no_metres(client: TestClient, shelf: Store):
    keep(shelf, five_sizes(sizes=(PatternSize("2", 960),)))
    html = page(client, ADDRESS)
    assert "The pattern does not tell what it takes." in answer(html)
    assert 'name="by"' not in html
    assert take(client, shelf).status_code == 409


def test_without_a_yarn_the_shelf_is_not_spoken_of(client: TestClient, shelf: Store):
    keep(shelf, a_plan(person_id="Ines", gauge=Gauge(20.0, 28.0), yarns=()))
    assert "shelf" not in answer(page(client, ADDRESS))


def test_a_hat_asks_for_the_head(client: TestClient, shelf: Store):
    sizes = tuple(PatternSize(str(cm), 10 * cm) for cm in (44, 48, 52))
    keep(shelf, five_sizes(name="Hat", sizes=sizes))
    html = page(client, ADDRESS)
    assert "Say what the head measures." in answer(html)
    assert 'name="ease_own"' not in html
    found = client.get(ADDRESS, params=ASKED | {"body": "56"})
    assert "Cast on for size 48: 52.8 cm, 3.2 cm tighter than the head." in answer(found.text)


def test_what_is_cast_on_has_its_size(client: TestClient, shelf: Store):
    keep(shelf, a_plan(state="being knit", gauge=Gauge(20.0, 28.0)))
    assert client.get(ADDRESS).status_code == 409
    assert take(client, shelf).status_code == 409
    assert 'href="/garments/pullover/size"' not in page(client, "/garments/pullover")
    assert client.get("/garments/nobody/size").status_code == 404


@pytest.mark.parametrize(
    "other", [{"by": "eye"}, {"size": "9"}, {"pattern": "x"}, {"follows": ""}, {"stamp": "old"}]
)
def test_nothing_is_taken_that_was_not_offered(client: TestClient, shelf: Store, other):
    before = book_of(shelf)
    assert take(client, shelf, **other).status_code == 409
    assert book_of(shelf) == before
