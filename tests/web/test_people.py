import pytest
from starlette.testclient import TestClient

from app.book.person import Measure, Person
from app.store.engine import Store
from app.store.records import load_book, put
from tests.web.forms import shown_values
from tests.web.garden import words

NEW = "/settings/people/new"


def people(store: Store) -> tuple[Person, ...]:
    with store.reading() as session:
        return load_book(session).people


def change_of(store: Store) -> str:
    return f"/settings/people/{people(store)[0].id}/change"


def test_someone_is_added_with_the_measures_that_are_known(client: TestClient, store: Store):
    typed = {
        "name": "Ines",
        "measure_chest": "96",
        "measure_upper_arm": "12 in",
        "notes": "long arms",
    }
    page = client.post(NEW, data=typed).text
    assert "Ines" in page
    (ines,) = people(store)
    assert ines.measures == (Measure("chest", 960), Measure("upper arm", 305))
    assert ines.notes == "long arms"


def test_nobody_yet_says_what_for(client: TestClient):
    assert "Nobody is written down yet." in client.get("/settings/people").text


@pytest.mark.parametrize(
    ("typed", "field"),
    [
        ({"name": ""}, "name"),
        ({"name": "Ines", "measure_chest": "wide"}, "measure_chest"),
        ({"name": "Ines", "measure_chest": "960"}, "measure_chest"),
    ],
)
def test_a_fault_keeps_what_was_typed(
    client: TestClient, store: Store, typed: dict[str, str], field: str
):
    answer = client.post(NEW, data=typed)
    assert answer.status_code == 422
    assert f'id="e-{field}"' in answer.text
    assert f'value="{typed[field]}"' in answer.text
    assert people(store) == ()


def test_a_name_is_given_once(client: TestClient, store: Store):
    client.post(NEW, data={"name": "Ines"})
    answer = client.post(NEW, data={"name": "INES"})
    assert answer.status_code == 422
    assert "already someone called INES" in answer.text
    assert len(people(store)) == 1


def test_measures_change_and_others_are_kept(client: TestClient, store: Store):
    with store.writing() as session:
        put(session, Person("p1", "Ines", (Measure("chest", 960), Measure("hair", 400))))
    path = change_of(store)
    form = shown_values(client.get(path).text, path)
    assert (form["measure_chest"], form["measure_hair"]) == ("96", "40")
    client.post(path, data=form | {"measure_chest": "", "measure_waist": "80,5"})
    (ines,) = people(store)
    assert ines.measures == (Measure("waist", 805), Measure("hair", 400))


def test_a_stale_form_is_told_so(client: TestClient, store: Store):
    client.post(NEW, data={"name": "Ines"})
    path = change_of(store)
    form = shown_values(client.get(path).text, path)
    client.post(path, data=form | {"notes": "one"})
    assert client.post(path, data=form | {"notes": "two"}).status_code == 409
    assert people(store)[0].notes == "one"


def test_someone_who_is_not_in_the_book(client: TestClient):
    assert client.get("/settings/people/nobody/change").status_code == 404
    assert client.post("/settings/people/nobody/change", data={}).status_code == 404


def test_what_was_not_measured_is_said_as_the_body_table_has_it(client: TestClient, store: Store):
    client.post(NEW, data={"name": "Ines", "measure_chest": "96", "measure_waist": "80"})
    listed = words(client.get("/settings/people").text)
    assert "hips 99.8 ± 5 cm, as the body table has it" in listed
    assert "wrist 17.3 ± 1.7 cm, assumed" in listed
    assert "waist 78" not in listed
    form = words(client.get(change_of(store)).text)
    assert "around the widest part; not measured: 99.8 ± 5 cm, as the body table has it" in form


def test_without_a_chest_nothing_is_assumed(client: TestClient):
    client.post(NEW, data={"name": "Ines", "measure_waist": "80"})
    assert "as the body table has it" not in words(client.get("/settings/people").text)


def test_a_chest_beyond_the_table_is_kept_and_nothing_assumed(client: TestClient):
    client.post(NEW, data={"name": "Bear", "measure_chest": "250"})
    listed = words(client.get("/settings/people").text)
    assert "chest 250 cm" in listed
    assert "What is taken for the rest" not in listed
