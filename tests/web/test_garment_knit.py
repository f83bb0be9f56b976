"""On the needles: cast on, skeins used, the garment finished."""

from dataclasses import replace

import pytest
from starlette.testclient import TestClient

from app.store.engine import Store
from app.store.fill import fill
from app.store.records import put
from tests.web.forms import shown_values
from tests.web.garden import book_of, page, promise_stamp, stamp_of, undo_of, words
from tests.work.shelf import a_shelf

PULLOVER = "/garments/pullover"
FINISH = f"{PULLOVER}/needles/finish"
USE = f"{PULLOVER}/promises/G-1 promised/use"


@pytest.fixture(autouse=True)
def shelf(store: Store) -> None:
    with store.writing() as session:
        fill(session, a_shelf())


@pytest.fixture
def cast_on(client: TestClient, store: Store) -> str:
    """The pullover is being knit; the page that says so."""
    return client.post(
        f"{PULLOVER}/begin", data={"stamp": stamp_of(store, "plan", "pullover")}
    ).text


def use(store: Store, **told: str) -> dict[str, str]:
    return {"stamp": promise_stamp(store, "G-1 promised")} | told


def test_casting_on_settles_what_is_promised(cast_on: str, store: Store) -> None:
    assert "What is promised to it is settled." in words(cast_on)
    assert book_of(store).plan["pullover"].state == "being knit"
    assert book_of(store).promises[0].state == "settled"


def test_casting_on_from_a_stale_window(client: TestClient, store: Store) -> None:
    answer = client.post(f"{PULLOVER}/begin", data={"stamp": "000000000000"})
    assert answer.status_code == 409
    assert book_of(store).plan["pullover"].state == "intended"


def test_used_is_offered_only_while_it_is_being_knit(client: TestClient) -> None:
    assert "Note it as used" not in page(client, PULLOVER)


@pytest.mark.usefixtures("cast_on")
def test_all_that_was_promised_is_used_and_can_be_undone(client: TestClient, store: Store) -> None:
    answer = client.post(USE, data=use(store))
    said = words(answer.text)
    assert "Noted as used." in said
    assert "Knitted in so far" in said
    assert "100 m 45 g" in said
    assert book_of(store).promises == ()
    assert 'action="/undo/' in answer.text


@pytest.mark.usefixtures("cast_on")
def test_in_part_by_length(client: TestClient, store: Store) -> None:
    client.post(USE, data=use(store, used="40 m"))
    assert book_of(store).promises[0].mm == 60_000
    assert book_of(store).balances["G-1"].mm == 173_000


@pytest.mark.usefixtures("cast_on")
def test_on_another_day(client: TestClient, store: Store) -> None:
    said = words(client.post(USE, data=use(store, day="2026-05-02")).text)
    assert "G-1 2 May 2026 100 m" in said


@pytest.mark.usefixtures("cast_on")
def test_in_part_by_what_is_left_on_the_scale(client: TestClient, store: Store) -> None:
    client.post(USE, data=use(store, left="48 g"))
    assert book_of(store).balances["G-1"].mg == 48_000


@pytest.mark.usefixtures("cast_on")
@pytest.mark.parametrize(
    ("told", "field"),
    [
        ({"used": "101"}, "used"),
        ({"used": "0"}, "used"),
        ({"used": "a lot"}, "used"),
        ({"used": "10", "left": "10"}, "left"),
        ({"left": "97"}, "left"),
        ({"day": "yesterday"}, "day"),
    ],
)
def test_what_cannot_have_been_used(
    client: TestClient, store: Store, told: dict[str, str], field: str
) -> None:
    answer = client.post(USE, data=use(store, **told))
    assert answer.status_code == 422
    assert f'id="e-{field}"' in answer.text
    assert book_of(store).promises[0].mm == 100_000
    assert book_of(store).balances["G-1"].mg == 96_000
    assert all(one.kind != "garment" for one in book_of(store).holdings)


@pytest.mark.usefixtures("cast_on")
def test_used_from_two_windows_counts_once(client: TestClient, store: Store) -> None:
    told = use(store, used="40")
    client.post(USE, data=told)
    assert client.post(USE, data=told).status_code == 409
    assert book_of(store).balances["G-1"].mm == 173_000


@pytest.mark.usefixtures("cast_on")
@pytest.mark.parametrize(("rest", "left_mm"), [("used", 113_000), ("free", 213_000)])
def test_finished(client: TestClient, store: Store, rest: str, left_mm: int) -> None:
    told = {"stamp": stamp_of(store, "plan", "pullover"), "rest": rest}
    said = words(client.post(FINISH, data=told).text)
    assert "pullover is finished." in said
    assert "Finished." in said
    assert "Skeins in their places" not in said
    assert "have, against need" not in said
    book = book_of(store)
    assert (book.plan["pullover"].state, book.promises) == ("finished", ())
    assert book.balances["G-1"].mm == left_mm


@pytest.mark.usefixtures("cast_on")
def test_what_went_into_it_is_told_wherever_it_appears(client: TestClient, store: Store) -> None:
    told = {"stamp": stamp_of(store, "plan", "pullover"), "rest": "used"}
    client.post(FINISH, data=told)
    assert "45 g of yarn went into it." in words(page(client, PULLOVER))
    assert "45 g of yarn went into it." in words(page(client, "/garments"))


@pytest.mark.usefixtures("cast_on")
def test_what_is_left_goes_back_to_the_shelf_unless_she_says_otherwise(client: TestClient) -> None:
    form = shown_values(page(client, FINISH), FINISH)
    assert (form["rest"], form["mending"]) == ("free", "5")


@pytest.mark.usefixtures("cast_on")
def test_said_to_be_being_knit_again_it_says_what_does_not_come_back(
    client: TestClient, store: Store
) -> None:
    told = {"stamp": stamp_of(store, "plan", "pullover"), "rest": "used"}
    client.post(FINISH, data=told)
    form = shown_values(page(client, f"{PULLOVER}/change"), f"{PULLOVER}/change")
    answer = client.post(f"{PULLOVER}/change", data=form | {"state": "being knit"})
    said = words(answer.text)
    assert "are not promised again, and yarn noted as used stays noted." in said
    assert book_of(store).promises == ()


@pytest.mark.usefixtures("cast_on")
def test_finishing_from_a_stale_window(client: TestClient, store: Store) -> None:
    answer = client.post(FINISH, data={"stamp": "000000000000", "rest": "used"})
    assert answer.status_code == 409
    assert book_of(store).plan["pullover"].state == "being knit"


# Weighed when it is finished


@pytest.mark.usefixtures("cast_on")
def test_what_is_left_of_a_ball_is_weighed_and_the_garment_too(
    client: TestClient, store: Store
) -> None:
    """90 of 96 g went in, 5 m are kept with it; what it took is told, part by part."""
    form = shown_values(page(client, FINISH), FINISH)
    told = {
        "left_G-1": "6 g",
        "garment": "91 g",
        "mending_of": "G-1",
        "hours": "20",
        "size_chest": "104",
        "notes": "longer cuffs",
    }
    said = words(client.post(FINISH, data=form | told).text)
    book = book_of(store)
    plan = book.plan["pullover"]
    assert sum(one.mg or 0 for one in plan.took) == pytest.approx(90_000, abs=3)
    assert plan.finished_on is not None
    assert "Planned, and taken It took 200 m, 90 g:" in said
    assert "less than planned." in said
    assert "It was knit in 20 hours; it was planned with" in said
    assert "After washing: chest 104 cm." in said
    assert "longer cuffs" in said
    (mending,) = (one for one in book.holdings if one.place == "with the garment")
    assert book.balances[mending.id].mm == 5_000


@pytest.mark.usefixtures("cast_on")
def test_finishing_is_undone_as_one(client: TestClient, store: Store) -> None:
    before = book_of(store)
    form = shown_values(page(client, FINISH), FINISH)
    answer = client.post(FINISH, data=form | {"left_G-1": "6", "hours": "20"})
    client.post(undo_of(answer.text))
    after = book_of(store)
    assert after.plan["pullover"] == before.plan["pullover"]
    assert after.balances["G-1"] == before.balances["G-1"]
    assert after.promises == before.promises


@pytest.mark.usefixtures("cast_on")
@pytest.mark.parametrize(
    ("told", "field"),
    [
        ({"left_G-1": "a bit"}, "left_G-1"),
        ({"hours": "many"}, "hours"),
        ({"garment": "0"}, "garment"),
        ({"day": "2199-01-01"}, "day"),
        ({"mending_of": "W-1"}, "mending_of"),
        ({"size_chest": "wide"}, "size_chest"),
    ],
)
def test_what_is_not_understood_saves_nothing(
    client: TestClient, store: Store, told: dict[str, str], field: str
) -> None:
    form = shown_values(page(client, FINISH), FINISH)
    answer = client.post(FINISH, data=form | {"left_G-1": "6"} | told)
    assert answer.status_code == 422
    assert f'id="e-{field}"' in answer.text
    assert book_of(store).plan["pullover"].state == "being knit"
    assert book_of(store).balances["G-1"].mg == 96_000


def test_only_a_garment_that_wants_yarn_is_finished(client: TestClient, store: Store) -> None:
    with store.writing() as session:
        put(session, replace(book_of(store).plan["pullover"], state="finished"))
    assert client.get(FINISH).status_code == 409
    assert client.get("/garments/nobody/needles/finish").status_code == 404
    assert "Planned, and taken" not in words(page(client, PULLOVER))
