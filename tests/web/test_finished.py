"""The finished garments, and one made again."""

from datetime import date

import pytest
from starlette.testclient import TestClient

from app.book.holding import Holding
from app.book.knitting import Took
from app.book.woolbook import Portion, use
from app.store.engine import Store
from app.store.fill import fill
from app.store.records import get, load_book, post, put
from tests.books import DAY, a_holding, a_part, a_person, a_photo, a_plan
from tests.web.garden import book_of, page, undo_of, words
from tests.work.shelf import a_shelf

PAGE = "/garments/finished"


@pytest.fixture
def finished(store: Store) -> None:
    """A cowl that took 50 of 96 g of G-1."""
    took = (Took("tube", mg=50_000, mm=111_000, minutes=300),)
    cowl = a_plan(
        "cowl",
        state="finished",
        finished_on=date(2026, 5, 4),
        took=took,
        person_id="Ines",
        notes="a softer cast-off next time",
    )
    with store.writing() as session:
        tube = a_part("tube", "cowl")
        worn = a_holding("worn", "garment", plan_id="cowl")
        fill(session, a_shelf(a_person(), cowl, tube, worn, a_photo(plan_id="cowl")))
        skein = get(session, Holding, "G-1")
        assert skein is not None
        entry = use(load_book(session).balances, (Portion(skein, 50_000, 111_000),), worn)
        post(session, entry.kind, DAY, entry.lines)


def test_with_none_finished_it_says_what_will_come(client: TestClient) -> None:
    said = words(page(client, PAGE))
    assert "No garment is finished yet." in said
    assert "A garment comes here once it is off the needles" in said
    assert f'href="{PAGE}"' in page(client, "/garments")


@pytest.mark.usefixtures("finished")
def test_what_each_took_stands_with_its_picture_photo_and_left_overs(client: TestClient) -> None:
    html = page(client, PAGE)
    said = words(html)
    assert "One garment finished; of one it is known what each part took." in said
    assert "cowl for Ines · 4 May 2026" in said
    assert "It took 111 m, 50 g: 78 % less than planned." in said
    assert "It was knit in 5 hours" in said
    assert "Left over: G-1 , 46 g." in said
    assert "a softer cast-off next time" in said
    assert '<img src="/garments/cowl/picture.svg"' in html
    assert 'class="photos"' in html
    assert client.get("/garments/cowl/picture.svg").status_code == 200


@pytest.mark.usefixtures("finished")
def test_the_latest_comes_first_and_one_without_numbers_is_listed_too(
    client: TestClient, store: Store
) -> None:
    with store.writing() as session:
        put(session, a_plan("mitts", state="finished"))
    said = words(page(client, PAGE))
    assert "Two garments finished; of one it is known" in said
    assert said.index("cowl for Ines") < said.index("mitts")


def test_nothing_kept_of_any_says_how_to_learn_next_time(client: TestClient, store: Store) -> None:
    with store.writing() as session:
        fill(session, a_shelf(a_plan("mitts", state="finished")))
    assert "Weigh what is left of the next one" in words(page(client, PAGE))


@pytest.mark.usefixtures("finished")
def test_made_again_from_another_yarn_and_undone(client: TestClient, store: Store) -> None:
    answer = client.post("/garments/cowl/again", data={"yarn_id": "white single"})
    assert "cowl again is planned, with what your garments taught." in words(answer.text)
    book = book_of(store)
    (plan,) = (one for one in book.plans if one.name == "cowl again")
    assert plan.yarns[0].yarn_id == "white single"
    assert [one.name for one in book.parts_of[plan.id]] == ["tube"]
    client.post(undo_of(answer.text))
    assert [one for one in book_of(store).plans if one.name == "cowl again"] == []


@pytest.mark.usefixtures("finished")
def test_a_yarn_that_is_not_there_makes_nothing(client: TestClient, store: Store) -> None:
    answer = client.post("/garments/cowl/again", data={"yarn_id": "moonlight"})
    assert answer.status_code == 422
    assert client.post("/garments/nobody/again").status_code == 404
    assert len(book_of(store).plans) == 3
