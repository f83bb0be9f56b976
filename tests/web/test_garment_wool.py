"""Skeins in their places: put, changed, taken off, proposed; nothing promised twice."""

import pytest
from starlette.testclient import TestClient

from app.book.event import Line
from app.book.plan import Promise
from app.store.engine import Store
from app.store.fill import fill
from app.store.records import post, put
from tests.books import DAY, a_plan, a_skein
from tests.web.garden import SWAP, book_of, page, promise_stamp, words
from tests.work.shelf import a_shelf

PULLOVER = "/garments/pullover"
PROMISED = f"{PULLOVER}/promises/G-1 promised"


@pytest.fixture(autouse=True)
def shelf(store: Store) -> None:
    with store.writing() as session:
        fill(session, a_shelf())


def promises(store: Store, plan_id: str = "pullover") -> dict[str, int]:
    """Metres of each skein promised to a plan."""
    found = book_of(store).promises_of.get(plan_id, [])
    return {one.holding_id: one.mm // 1000 for one in found}


def put_here(part: str, skein: str, amount: str = "") -> dict[str, str]:
    return {"part_id": part, "holding_id": skein, "amount": amount}


def test_the_skeins_offered_are_its_own_yarn_first(client: TestClient) -> None:
    said = words(page(client, f"{PULLOVER}?put=sleeves"))
    assert said.index("Its own yarn") < said.index("G-2 grey two-ply, 200 m free")
    assert said.index("G-2 grey") < said.index("Other yarns") < said.index("W-1 white single")


def test_no_skeins_are_offered_until_she_asks(client: TestClient) -> None:
    assert 'type="radio" name="holding_id"' not in page(client, PULLOVER)
    assert 'type="radio" name="holding_id"' not in page(client, f"{PULLOVER}?put=no-such-part")


def test_a_whole_skein_is_put_to_a_part(client: TestClient, store: Store) -> None:
    answer = client.post(f"{PULLOVER}/assign", data=put_here("sleeves", "W-1"))
    assert promises(store) == {"G-1": 100, "W-1": 150}
    said = words(answer.text)
    assert "Put to sleeves." in said
    assert "W-1 white single, 150 m" in said


def test_while_the_part_is_short_the_choice_stays_open(client: TestClient) -> None:
    answer = client.post(f"{PULLOVER}/assign", data=put_here("sleeves", "W-1", "20"))
    assert answer.url.query == b"put=sleeves"


def test_once_it_is_covered_the_choice_closes(client: TestClient, store: Store) -> None:
    client.post(
        f"{PULLOVER}/parts/new",
        data={"name": "tassel", "way": "metres", "metres_yarn": "3", "edges": "none"}
        | {"yarn_id": "", "gauge_measure": "10 cm", "gauge_washed": "yes"},
    )
    tassel = next(one.id for one in book_of(store).parts if one.name == "tassel")
    answer = client.post(f"{PULLOVER}/assign", data=put_here(tassel, "W-1", "3"))
    assert answer.url.query == b""


def test_with_htmx_the_changed_answer_comes_at_once(client: TestClient, store: Store) -> None:
    answer = client.post(
        f"{PULLOVER}/assign", data=put_here("sleeves", "G-2", "60 yd"), headers=SWAP
    )
    assert answer.status_code == 200
    assert "<nav" not in answer.text
    assert "Put to sleeves." in answer.text
    assert promises(store)["G-2"] == 54
    assert 'id="said"' not in page(client, PULLOVER)


def test_unsuited_yarn_is_allowed_but_said(client: TestClient) -> None:
    answer = client.post(f"{PULLOVER}/assign", data=put_here("sleeves", "W-1"))
    assert "Does it suit?" in words(answer.text)
    assert "white single" in answer.text


def test_beyond_what_is_free_it_says_where_it_is_promised(client: TestClient, store: Store) -> None:
    answer = client.post("/garments/hat/assign", data=put_here("crown", "G-1", "213 m"))
    assert answer.status_code == 422
    said = words(answer.text)
    assert "for this garment, no more." in said
    assert "Elsewhere it is promised to pullover" in said
    assert '<a href="/garments/pullover">pullover</a>' in answer.text
    assert 'value="213 m"' in answer.text
    assert 'value="G-1" checked' in answer.text
    assert promises(store, "hat") == {}


def test_where_nobody_else_has_it_it_says_that_this_is_all(client: TestClient) -> None:
    answer = client.post(f"{PULLOVER}/assign", data=put_here("body", "W-1", "500 m"))
    said = words(answer.text)
    assert "W-1 has 150 m for this garment, no more. That is all it holds." in said
    assert "Elsewhere" not in said


def test_what_other_parts_of_the_garment_have_of_it_is_said(client: TestClient) -> None:
    said = words(client.post(f"{PULLOVER}/assign", data=put_here("sleeves", "G-1", "200 m")).text)
    assert "G-1 has 113 m for this garment, no more." in said
    assert "Promised to its parts already: body (100 m)." in said
    assert "That is all it holds" not in said


def test_a_promise_changed_beyond_it_does_not_count_itself_as_in_the_way(
    client: TestClient, store: Store
) -> None:
    told = {"stamp": promise_stamp(store, "G-1 promised"), "amount": "214"}
    said = words(client.post(f"{PROMISED}/change", data=told).text)
    assert "G-1 has 213 m for this garment, no more. That is all it holds." in said


def test_without_scripts_one_stays_at_the_part(client: TestClient) -> None:
    html = page(client, PULLOVER)
    assert 'href="/garments/pullover?put=sleeves#part-sleeves"' in html
    assert 'hx-get="/garments/pullover?put=sleeves"' in html
    told = put_here("sleeves", "W-1", "20")
    to = client.post(f"{PULLOVER}/assign", data=told, follow_redirects=False).headers["location"]
    assert to == "/garments/pullover?put=sleeves#part-sleeves"
    to = client.post(f"{PROMISED}/off", follow_redirects=False).headers["location"]
    assert to == "/garments/pullover?put=body#part-body"


def test_the_answer_in_short_and_what_was_done_stay_in_view(client: TestClient) -> None:
    html = client.post(f"{PULLOVER}/assign", data=put_here("sleeves", "W-1", "20")).text
    bar = words(html.split('id="in-view"')[1].split("</div>")[0])
    assert "Short by" in bar
    assert "Put to sleeves." in bar
    assert "Undo" in bar


def test_no_double_promise_from_two_windows(client: TestClient, store: Store) -> None:
    asked = put_here("crown", "W-1", "100")
    client.post("/garments/hat/assign", data=asked)
    answer = client.post(f"{PULLOVER}/assign", data=put_here("body", "W-1", "100"))
    assert answer.status_code == 422
    assert promises(store, "hat") == {"W-1": 100}
    assert promises(store) == {"G-1": 100}


@pytest.mark.parametrize(
    ("asked", "field"),
    [
        (put_here("body", ""), "holding_id"),
        (put_here("body", "G-99"), "holding_id"),
        (put_here("body", "G-2", "some"), "amount"),
        (put_here("body", "G-2", "0"), "amount"),
    ],
)
def test_a_fault_stands_beside_its_field(
    client: TestClient, store: Store, asked: dict[str, str], field: str
) -> None:
    answer = client.post(f"{PULLOVER}/assign", data=asked)
    assert answer.status_code == 422
    assert f'id="e-{field}"' in answer.text
    assert f'id="f-{field}"' in answer.text
    assert promises(store) == {"G-1": 100}


def test_a_fault_comes_as_a_swap_too(client: TestClient) -> None:
    answer = client.post(f"{PULLOVER}/assign", data=put_here("body", ""), headers=SWAP)
    assert answer.status_code == 422
    assert "<nav" not in answer.text
    assert "Choose a skein." in answer.text


def test_a_part_of_another_garment_is_not_found(client: TestClient) -> None:
    assert client.post("/garments/hat/assign", data=put_here("body", "G-2")).status_code == 404


def test_what_is_promised_is_changed(client: TestClient, store: Store) -> None:
    told = {"stamp": promise_stamp(store, "G-1 promised"), "amount": "150"}
    answer = client.post(f"{PROMISED}/change", data=told)
    assert "Changed what is promised." in words(answer.text)
    assert promises(store) == {"G-1": 150}


@pytest.mark.parametrize("amount", ["214", "", "0", "much"])
def test_a_change_that_cannot_be(client: TestClient, store: Store, amount: str) -> None:
    told = {"stamp": promise_stamp(store, "G-1 promised"), "amount": amount}
    answer = client.post(f"{PROMISED}/change", data=told)
    assert answer.status_code == 422
    assert 'id="e-amount"' in answer.text
    assert promises(store) == {"G-1": 100}


def test_a_change_from_a_stale_window_is_told_so(client: TestClient, store: Store) -> None:
    opened = promise_stamp(store, "G-1 promised")
    client.post(f"{PROMISED}/change", data={"stamp": opened, "amount": "150"})
    answer = client.post(f"{PROMISED}/change", data={"stamp": opened, "amount": "90"})
    assert answer.status_code == 409
    assert promises(store) == {"G-1": 150}


def test_of_a_skein_that_is_gone_it_can_only_be_taken_off(client: TestClient, store: Store) -> None:
    with store.writing() as session:
        post(
            session,
            "put away",
            DAY,
            [Line("G-1", -96_000, -213_000), Line("given away", 96_000)],
        )
    told = {"stamp": promise_stamp(store, "G-1 promised"), "amount": "10"}
    answer = client.post(f"{PROMISED}/change", data=told)
    assert answer.status_code == 422
    assert "no longer on the shelf" in words(answer.text)
    client.post(f"{PROMISED}/off")
    assert promises(store) == {}


def test_taken_off_it_is_free_again(client: TestClient, store: Store) -> None:
    answer = client.post(f"{PROMISED}/off")
    assert "Taken off: it is free again." in words(answer.text)
    assert promises(store) == {}
    assert client.post(f"{PROMISED}/off").status_code == 404


def test_the_program_fills_it_with_reasons_and_she_keeps_it(
    client: TestClient, store: Store
) -> None:
    said = words(client.post(f"{PULLOVER}/fill").text)
    assert "Proposed below, with the reasons." in said
    assert "skeins are only proposed." in said or "One skein is only proposed." in said
    assert "proposed :" in said
    answer = client.post(f"{PULLOVER}/keep")
    assert "Kept:" in words(answer.text)
    assert {one.state for one in book_of(store).promises} == {"kept"}


def test_one_proposed_skein_is_kept_and_the_rest_dropped(client: TestClient, store: Store) -> None:
    client.post(f"{PULLOVER}/fill")
    first = next(one for one in book_of(store).promises if one.state == "proposed")
    said = words(client.post(f"{PULLOVER}/keep", data={"promise_id": first.id}).text)
    assert "Kept: one proposed skein." in said
    client.post(f"{PULLOVER}/drop")
    assert {one.id for one in book_of(store).promises} == {"G-1 promised", first.id}


def test_where_nothing_can_be_added_it_says_so(client: TestClient, store: Store) -> None:
    with store.writing() as session:
        for skein, mm in (("G-1", 113_000), ("G-2", 200_000), ("W-1", 150_000)):
            put(session, Promise(f"more {skein}", "pullover", "sleeves", skein, mm))
    said = words(client.post(f"{PULLOVER}/fill").text)
    assert "Nothing on the shelf can be added to what it has." in said


@pytest.mark.parametrize("what", ["assign", "fill", "keep", "drop"])
def test_a_garment_that_is_not_there(client: TestClient, what: str) -> None:
    assert client.post(f"/garments/mittens/{what}").status_code == 404


def test_a_part_whose_yarn_is_to_be_chosen_is_offered_everything(
    client: TestClient, store: Store
) -> None:
    with store.writing() as session:
        put(session, a_plan("hat", priority=2, yarns=()))
    said = words(page(client, "/garments/hat?put=crown"))
    assert "to be chosen" in said
    assert "G-2 grey two-ply" in said
    assert "Its own yarn" not in said


def test_the_other_yarns_stand_nearest_in_grist_first(client: TestClient, store: Store) -> None:
    """Grey is 451 tex; 500 tex is nearer to it than 333 or 900, though none of the grey is free."""
    with store.writing() as session:
        for code, g in (("X-1", 90.0), ("X-2", 50.0)):
            put(session, a_skein(code, yarn_id=None))
            arrived = [Line("come in", round(-g * 1000)), Line(code, round(g * 1000), 100_000)]
            post(session, "arrive", DAY, arrived)
        for skein, mm in (("G-1", 113_000), ("G-2", 200_000)):
            put(session, Promise(f"more {skein}", "pullover", "body", skein, mm))
    said = words(page(client, f"{PULLOVER}?put=sleeves"))
    assert "No skein of grey two-ply is free." in said
    assert said.index("X-2") < said.index("W-1 white") < said.index("X-1")


def test_what_is_no_longer_there_is_said_at_its_place(client: TestClient, store: Store) -> None:
    with store.writing() as session:
        lost = [Line("G-1", -60_000, -133_000), Line("weighing and moisture", 60_000)]
        post(session, "correct", DAY, lost)
    assert "G-1 grey two-ply, 100 m 20 m of it is no longer there" in words(page(client, PULLOVER))


@pytest.mark.parametrize("what", ["assign", "fill", "keep", "drop"])
def test_a_garment_finished_in_another_window_takes_no_more_yarn(
    client: TestClient, store: Store, what: str
) -> None:
    with store.writing() as session:
        put(session, a_plan("hat", priority=2, state="finished"))
    answer = client.post(f"/garments/hat/{what}", data=put_here("crown", "W-1"))
    assert answer.status_code == 409
    assert promises(store, "hat") == {}
