"""Whatever is typed into the forms of skeins and yarns: an answer in words, never a failure."""

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from starlette.testclient import TestClient

from app.book.stamp import stamp
from app.store.engine import Store
from app.store.records import load_book

ODD = st.sampled_from(
    (
        *("", " ", "0", "-1", "1e400", "9" * 40, "½", "1,200", "142", "1/0", "2×96 g", "4 oz"),
        *(
            "nan",
            "new",
            "now",
            "\x00",
            "<b>",
            "%",
            "S",
            "#fff",
            "2026-02-30",
            "🐑" * 50,
            "1" * 5000,
        ),
    )
)
WELL = {"girth": "1.5", "turns": "142", "mass": "96", "yarn_name": "Grey", "name": "Grey"} | {
    "making": "spun",
    "count": "2",
    "code": "",
    "day": "2026-03-01",
}
LABEL = {"length": "125", "turns": ""}
FIELDS = (
    *("girth", "turns", "length", "turns_before", "length_before", "mass", "wraps", "yarn"),
    *("yarn_name", "fibre", "plies", "twist", "fleece", "taken", "code", "day", "colour", "place"),
    *("colour_known", "colour_name", "count", "dye_lot", "price", "name", "making", "target"),
    *("ball_mass", "ball_length", "notes", "plan"),
)
FILTERS = ("q", "fibre", "colour", "yarn", "class", "from", "to", "state", "sort", "page")
quietly = settings(
    deadline=None, max_examples=60, suppress_health_check=[HealthCheck.function_scoped_fixture]
)


@pytest.mark.property
@quietly
@given(
    typed=st.dictionaries(st.sampled_from(FIELDS), ODD, max_size=4),
    to=st.sampled_from(["skeins/new", "skeins/bought", "yarns/new"]),
)
def test_any_form(client: TestClient, store: Store, typed: dict[str, str], to: str) -> None:
    well = WELL | (LABEL if to == "skeins/bought" else {})
    answer = client.post(f"/{to}", data={**well, **typed}, follow_redirects=False)
    assert answer.status_code in (303, 422)
    with store.reading() as session:
        book = load_book(session)
    assert all(sum(line.mg for line in event.lines) == 0 for event in book.events)
    if answer.status_code == 303:
        assert client.get(answer.headers["location"]).status_code == 200


@pytest.mark.property
@quietly
@given(asked=st.dictionaries(st.sampled_from(FILTERS), ODD))
def test_any_filter(client: TestClient, asked: dict[str, str]) -> None:
    assert client.get("/skeins", params=asked).status_code in (200, 422)


@pytest.mark.property
@quietly
@given(
    typed=st.dictionaries(st.sampled_from(FIELDS), ODD, max_size=4),
    action=st.sampled_from(["weigh", "change", "put-away"]),
)
def test_any_change(client: TestClient, store: Store, typed: dict[str, str], action: str) -> None:
    client.post("/skeins/new", data={**WELL, "yarn_name": "Once"})
    with store.reading() as session:
        skein = next(one for one in load_book(session).holdings if one.kind == "skein")
    well = {"mass": "90", "code": skein.code, "yarn": skein.yarn_id, "stamp": stamp(skein)}
    sent = {**well, "going": "given away", **typed}
    answer = client.post(f"/skeins/{skein.id}/{action}", data=sent, follow_redirects=False)
    assert answer.status_code in (303, 422)
    assert client.get(f"/skeins/{skein.id}").status_code == 200
