import re

import pytest
from starlette.testclient import TestClient

from app.book.event import Line
from app.book.spinning import Spinning
from app.store.engine import Store
from app.store.fill import fill
from app.store.records import post, put
from tests.books import DAY, a_book, a_fleece, a_holding, a_yarn
from tests.web.garden import book_of, page, words


@pytest.fixture
def bobbin(client: TestClient, store: Store) -> str:
    """The address of a bobbin of a yarn whose fleece is carded."""
    said = Spinning(wanted_mm=400_000)
    yarn = a_yarn("grey", target_tex=450.0, fleece_id="Bramble", spinning=said)
    batts = a_holding("batts", "fibre", fleece_id="Bramble", state="carded")
    with store.writing() as session:
        fill(session, a_book(a_fleece(), yarn, batts, held={"batts": (500, 0)}))
    answer = client.post("/bobbins/new", data={"yarn": "grey", "code": ""})
    assert "grey, bobbin is written down." in answer.text
    return str(answer.url.path)


def test_what_is_nearest_to_yarn_is_offered_first_and_nothing_wet(client, store, bobbin):
    flock = [
        a_holding("raw", "fleece", fleece_id="Bramble", state="raw", code="A-1"),
        a_holding("wet", "fibre", fleece_id="Bramble", state="drying", code="A-2"),
    ]
    with store.writing() as session:
        for one in flock:
            put(session, one)
            lines = Line(one.id, 900_000), Line("come in", -900_000)
            post(session, "arrive", DAY, lines)
    offered = re.search(r'<select[^>]*name="wool".*?</select>', page(client, bobbin), re.S)
    assert offered
    assert re.findall(r'value="([^"]*)"', offered[0]) == ["batts", "raw"]
    assert "batts, carded" in offered[0]
    assert "Bramble, raw" in offered[0]


def test_a_bobbin_says_what_single_is_meant(client: TestClient, bobbin: str):
    text = words(page(client, bobbin))
    assert "498 m/100 g is meant." in text
    assert "Nothing is weighed on it yet. Not checked yet." in text
    assert "Along a bobbin your singles stray by 10 %." in text
    assert "grey, bobbin" in words(page(client, "/yarns/grey/spinning"))


@pytest.mark.parametrize(
    ("typed", "lead", "advice"),
    [
        ({"wraps": "18.7"}, "As meant:", "Go on as you do."),
        ({"length": "2 m", "weight": "0.5"}, "Too heavy by 25 %:", "out 1.25 times as long"),
        ({"length": "2 m", "weight": "0.3"}, "Too fine by 25 %:", "out only 0.75 times as long"),
    ],
)
def test_a_check_says_what_to_change(client: TestClient, bobbin: str, typed, lead, advice):
    text = words(client.post(f"{bobbin}/check", data=typed).text)
    assert "The check is kept." in text
    assert lead in text
    assert advice in text


def test_a_check_is_a_reading_of_the_bobbin(client: TestClient, store: Store, bobbin: str):
    client.post(f"{bobbin}/check", data={"length": "2", "weight": "0.5 g"})
    client.post(f"{bobbin}/check", data={"wraps": "19"})
    weighed, wrapped = sorted(book_of(store).readings, key=lambda one: one.instrument)[::-1]
    assert (weighed.kind, weighed.value, weighed.typed) == ("grist", 250_000, "0.5 g / 2 m")
    assert (wrapped.instrument, wrapped.unit) == ("gauge", "wraps per inch")
    html = page(client, bobbin)
    assert "(19 wraps, as meant)" in words(html)
    found = re.search(r'action="([^"]*/checks/[^"]*/remove)"', html)
    assert found
    assert "The check is taken out." in client.post(found[1]).text
    assert len(book_of(store).readings) == 1
    assert client.post(found[1]).status_code == 404


@pytest.mark.parametrize(
    ("typed", "fault"),
    [
        ({}, "Count the wraps in an inch, or give a length and its weight."),
        ({"length": "2"}, "Count the wraps"),
        ({"wraps": "0"}, "or more"),
        ({"length": "100", "weight": "0.05"}, "No single is so fine or heavy."),
    ],
)
def test_a_check_that_cannot_be_is_refused(client, store, bobbin, typed, fault):
    answer = client.post(f"{bobbin}/check", data=typed)
    assert answer.status_code == 422
    assert fault in words(answer.text)
    assert book_of(store).readings == ()


def weighed(client: TestClient, bobbin: str, mass: str, **more: str):
    form = {"mass": mass, "wool": "batts", "fibre": "", "day": "2026-05-01"}
    return client.post(f"{bobbin}/weigh", data=form | more)


def test_what_is_spun_comes_off_the_fibre_and_teaches_the_loss(client, store, bobbin):
    answer = weighed(client, bobbin, "48", fibre="50")
    assert "grey, bobbin is weighed." in answer.text
    book = book_of(store)
    (made,) = [one for one in book.holdings if one.kind == "bobbin"]
    assert book.balances[made.id].mg == 48_000
    assert book.balances["batts"].mg == 450_000
    assert book.balances["waste"].mg == 2_000
    assert book.events[-1].step == "spin"
    weighed(client, bobbin, "90")
    book = book_of(store)
    assert (book.balances[made.id].mg, book.balances["batts"].mg) == (90_000, 408_000)
    assert book.events[-1].step == ""
    assert "Kept in spinning" in page(client, "/settings/own-numbers")


@pytest.mark.parametrize(
    ("typed", "fault"),
    [
        ({"mass": ""}, "This is needed."),
        ({"mass": "50", "wool": "none"}, "Choose one of these."),
        ({"mass": "550"}, "batts holds less than that."),
        ({"mass": "50", "fibre": "501"}, "batts holds less than that."),
        ({"mass": "50", "fibre": "48"}, "More came on the bobbin than that."),
    ],
)
def test_a_weighing_that_cannot_be_is_refused(client, store, bobbin, typed, fault):
    answer = weighed(client, bobbin, **{"mass": "50"} | typed)
    assert answer.status_code == 422
    assert fault in words(answer.text)
    assert len(book_of(store).events) == 1


def test_a_bobbin_does_not_weigh_less_than_it_did(client: TestClient, bobbin: str):
    weighed(client, bobbin, "50")
    assert "no more than the book has on it already" in words(weighed(client, bobbin, "50").text)


@pytest.mark.parametrize(
    ("way", "length", "of_yarn", "step"),
    [
        ("plied on itself", "24", True, "ply"),
        ("chain-plied", "16", False, "ply"),
        ("kept", "50", False, "wind"),
    ],
)
def test_the_end_becomes_a_left_over(client, store, bobbin, way, length, of_yarn, step):
    weighed(client, bobbin, "10", fibre="10")
    assert "24 m plied on itself" in words(page(client, bobbin)).replace("23", "24")
    form = {"way": way, "end_mass": "9.9", "end_length": length}
    answer = client.post(f"{bobbin}/end", data=form)
    assert f"grey, bobbin, {way} is on the shelf." in answer.text
    book = book_of(store)
    (rest,) = [one for one in book.holdings if one.kind == "left-over"]
    assert rest.yarn_id == ("grey" if of_yarn else None)
    assert (book.balances[rest.id].mg, book.balances[rest.id].mm) == (9_900, int(length) * 1000)
    assert book.balances["waste"].mg == 100
    assert book.events[-1].step == step
    assert "No bobbin of it is written down." in page(client, "/yarns/grey/spinning")


def test_an_end_that_cannot_be_is_refused(client: TestClient, store: Store, bobbin: str):
    form = {"way": "kept", "end_mass": "9", "end_length": "40"}
    answer = client.post(f"{bobbin}/end", data=form)
    assert answer.status_code == 422
    assert "The book has nothing on this bobbin." in words(answer.text)
    weighed(client, bobbin, "10")
    assert client.post(f"{bobbin}/end", data=form | {"way": "knotted"}).status_code == 422
    assert client.post(f"{bobbin}/end", data=form | {"end_length": ""}).status_code == 422
    assert len(book_of(store).events) == 2


def test_a_name_is_used_once_and_a_yarn_is_chosen(client: TestClient, bobbin: str):
    assert bobbin
    assert "Of the yarn" in page(client, "/bobbins/new?yarn=grey")
    again = client.post("/bobbins/new", data={"yarn": "grey", "code": "grey, bobbin"})
    assert again.status_code == 422
    assert "Something else is called grey, bobbin already." in again.text
    assert client.post("/bobbins/new", data={"yarn": "none"}).status_code == 422
    second = client.post("/bobbins/new", data={"yarn": "grey", "code": ""})
    assert "grey, bobbin 2 is written down." in second.text
    assert client.get("/bobbins/batts").status_code == 404
    assert client.get("/bobbins/nothing").status_code == 404


def test_a_bobbin_of_a_yarn_without_plan_or_fleece(client: TestClient, store: Store):
    with store.writing() as session:
        fill(session, a_book(a_yarn("plain")))
    answer = client.post("/bobbins/new", data={"yarn": "plain"})
    text = words(answer.text)
    assert "No single is meant for it yet." in text
    assert "There is no wool of its fleece to spin it from" in text
    text = words(client.post(f"{answer.url.path}/check", data={"wraps": "20"}).text)
    assert "No single is meant for it yet." in text
