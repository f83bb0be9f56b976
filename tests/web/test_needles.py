"""A garment on the needles: where she is, rows ticked off, balls weighed, knitting undone."""

import json
from datetime import date

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from starlette.testclient import TestClient

from app.book.checks import check
from app.store.engine import Store
from app.store.fill import fill
from app.store.records import put
from tests.books import a_promise
from tests.web.forms import shown_values
from tests.web.garden import book_of, page, stamp_of, undo_of, words
from tests.work.shelf import a_shelf

PULLOVER = "/garments/pullover"
NEEDLES = f"{PULLOVER}/needles"
BODY = f"{NEEDLES}/body/1"
TICKS, WEIGH, RIP = f"{NEEDLES}/ticks", f"{NEEDLES}/weigh", f"{NEEDLES}/rip"
JSON = {"accept": "application/json"}


@pytest.fixture(autouse=True)
def cast_on(store: Store, client: TestClient) -> None:
    """The pullover, cast on; G-1 (96 g) is promised to its body, W-1 (50 g) is not promised."""
    with store.writing() as session:
        fill(session, a_shelf())
    client.post(f"{PULLOVER}/begin", data={"stamp": stamp_of(store, "plan", "pullover")})


def ticked(client: TestClient, rows: int, id: str = "one", part_id: str = "body", piece: int = 1):
    told = {"id": id, "part_id": part_id, "piece": str(piece), "rows": str(rows)}
    return client.post(TICKS, data=told)


def weighed(client: TestClient, weight: str, **other: str):
    form = shown_values(page(client, NEEDLES), WEIGH) | {"weight": weight}
    return client.post(WEIGH, data=form | other)


def rows(store: Store, part_id: str = "body", piece: int = 1) -> int:
    found = (one for one in book_of(store).progress if (one.part_id, one.piece) == (part_id, piece))
    return next((one.rows for one in found), 0)


def test_begun_from_the_garment_it_keeps_its_numbers(client: TestClient, store: Store) -> None:
    plan = book_of(store).plan["pullover"]
    assert plan.cast_on is not None
    assert plan.cast_on.day == date.today()
    assert {one.name for one in plan.cast_on.numbers} >= {"yarn in a stitch, body"}
    assert f'href="{NEEDLES}"' in page(client, PULLOVER)


def test_the_answer_comes_first(client: TestClient) -> None:
    html = page(client, NEEDLES)
    assert "Cast on; no row is ticked off yet. Short by" in words(html)
    assert f'href="{BODY}"' in html
    assert f'href="{NEEDLES}/sleeves/2"' in html


def test_where_she_is(client: TestClient) -> None:
    ticked(client, 26)
    ticked(client, 120, "two", "sleeves", 1)
    told = words(page(client, NEEDLES))
    assert "Body at round 26 of 120 and sleeves, 1 of 2 done; 1 piece not begun." in told
    assert "body 26 of 120 rounds done" in told
    assert "sleeves, 1 of 2 all 120 rounds done" in told


def test_a_garment_that_is_not_being_knit_has_no_needles(client: TestClient) -> None:
    assert client.get("/garments/hat/needles", follow_redirects=False).status_code == 303
    assert client.post("/garments/hat/needles/ticks", data={}).status_code == 404
    assert client.get("/garments/hat/needles/crown/1").status_code == 404
    assert client.get("/garments/gone/needles").status_code == 404


@pytest.mark.parametrize("address", ["body/2", "body/0", "crown/1", "gone/1", "body/x"])
def test_no_such_piece(client: TestClient, address: str) -> None:
    assert client.get(f"{NEEDLES}/{address}").status_code == 404


def test_the_strip_tells_the_next_row(client: TestClient) -> None:
    told = words(page(client, BODY))
    assert "Rounds done: 0 of 120" in told
    assert "Round 1 grey two-ply 229 stitches stocking stitch, from G-1" in told
    html = ticked(client, 1).text
    assert "Round 2 grey two-ply 229 stitches" in words(html)


def test_a_new_skein_is_joined(client: TestClient, store: Store) -> None:
    with store.writing() as session:
        put(session, a_promise("G-2", 190_000))
    told = words(page(client, BODY))
    assert "Join G-2." in told


def test_a_tick_by_its_own_form_and_one_back(client: TestClient, store: Store) -> None:
    first = page(client, BODY).split("</form>")[0] + "</form>"
    form = shown_values(first, TICKS)
    answer = client.post(TICKS, data=form, follow_redirects=False)
    assert answer.headers["location"] == f"{BODY}#strip"
    assert rows(store) == 1
    client.post(TICKS, data=form)
    assert rows(store) == 1, "sent twice, counted once"
    ticked(client, -1, "back")
    assert rows(store) == 0


def test_several_rows_at_once(client: TestClient, store: Store) -> None:
    ticked(client, 5)
    told = {"id": "up", "part_id": "body", "piece": "1", "rows": "", "up_to": "40"}
    client.post(TICKS, data=told)
    assert rows(store) == 40


@pytest.mark.parametrize("up_to", ["", "many", "-1"])
def test_several_rows_at_once_that_are_no_number(
    client: TestClient, store: Store, up_to: str
) -> None:
    told = {"id": "up", "part_id": "body", "piece": "1", "rows": "", "up_to": up_to}
    answer = client.post(TICKS, data=told)
    assert answer.status_code == 422
    assert 'id="e-up_to"' in answer.text
    assert rows(store) == 0


def test_both_sleeves_together(client: TestClient, store: Store) -> None:
    html = page(client, f"{NEEDLES}/sleeves/1?together=1")
    assert "all together" in words(html)
    told = {
        "id": ["a", "b"],
        "part_id": ["sleeves", "sleeves"],
        "piece": ["1", "2"],
        "rows": ["1", "1"],
        "together": "1",
    }
    answer = client.post(TICKS, data=told, follow_redirects=False)
    assert answer.headers["location"] == f"{NEEDLES}/sleeves/1?together=1#strip"
    assert (rows(store, "sleeves", 1), rows(store, "sleeves", 2)) == (1, 1)


@pytest.mark.parametrize(
    "told",
    [
        {},
        {"id": "", "part_id": "body", "piece": "1", "rows": "1"},
        {"id": "x" * 61, "part_id": "body", "piece": "1", "rows": "1"},
        {"id": "x", "part_id": "body", "piece": "one", "rows": "1"},
        {"id": "x", "part_id": "body", "piece": "1", "rows": "a few"},
        {"id": ["x", "y"], "part_id": "body", "piece": "1", "rows": "1"},
    ],
)
def test_ticks_that_cannot_be_read(client: TestClient, store: Store, told: dict[str, str]) -> None:
    answer = client.post(TICKS, data=told, headers=JSON)
    assert answer.status_code == 422
    assert "could not be read" in answer.json()["question"]
    assert client.post(TICKS, data=told).status_code in (404, 422)
    assert rows(store) == 0


def test_a_device_is_told_what_was_kept(client: TestClient) -> None:
    told = {"id": "one", "part_id": "body", "piece": "1", "rows": "3"}
    for _ in range(2):
        answer = client.post(TICKS, data=told, headers=JSON).json()
        assert answer == {"kept": ["one"], "rows": {"1 body": 3}}


def test_everything_is_chosen_before_a_ball_is_weighed(client: TestClient) -> None:
    ticked(client, 26)
    form = shown_values(page(client, NEEDLES), WEIGH)
    assert (form["holding_id"], form["place"], form["rows"]) == ("G-1", "1 body", "")
    assert form["scale"] == "1000"


def test_a_ball_is_weighed_and_it_can_be_undone(client: TestClient, store: Store) -> None:
    ticked(client, 26)
    before = book_of(store)
    answer = weighed(client, "48")
    assert "G-1 weighs 48 g at row 26." in words(answer.text)
    book = book_of(store)
    assert book.balances["G-1"].mg == 48_000
    assert (book.weighings[0].rows, book.weighings[0].scale_mg) == (26, 1_000)
    client.post(undo_of(answer.text), data={"back": NEEDLES})
    after = book_of(store)
    assert (after.weighings, after.promises, after.progress) == (
        (),
        before.promises,
        before.progress,
    )
    assert after.balances["G-1"] == before.balances["G-1"]
    assert check(after) == []


def test_the_same_weighing_sent_twice_is_kept_once(client: TestClient, store: Store) -> None:
    form = shown_values(page(client, NEEDLES), WEIGH) | {"weight": "60", "rows": "20"}
    client.post(WEIGH, data=form)
    again = client.post(WEIGH, data=form)
    assert "kept already" in words(again.text)
    assert len(book_of(store).weighings) == 1


def test_a_weighing_of_a_device_brings_its_day(client: TestClient, store: Store) -> None:
    more = {"day": "2026-05-02", "minute": "605", "rows": "20"}
    form = shown_values(page(client, NEEDLES), WEIGH) | {"weight": "60"} | more
    answer = client.post(WEIGH, data=form, headers=JSON)
    assert answer.json() == {"kept": [form["id"]], "go": NEEDLES}
    assert "said=" in answer.headers["set-cookie"]
    (one,) = book_of(store).weighings
    assert (one.day, one.minute) == (date(2026, 5, 2), 605)


@pytest.mark.parametrize(
    ("weight", "scale", "step"),
    [("60", "100", 100), ("2.1 oz", "1000", 2835), ("2.11 oz", "1000", 283), ("2 oz", "283", 283)],
)
def test_the_step_of_the_scale(
    client: TestClient, store: Store, weight: str, scale: str, step: int
) -> None:
    weighed(client, weight, scale=scale, rows="20")
    assert book_of(store).weighings[0].scale_mg == step
    form = shown_values(page(client, NEEDLES), WEIGH)
    assert form["scale"] == str(step)


@pytest.mark.parametrize(
    ("other", "field"),
    [
        ({"weight": ""}, "weight"),
        ({"weight": "heavy"}, "weight"),
        ({"weight": "60", "rows": "121"}, "rows"),
        ({"weight": "60", "place": "1 crown"}, "place"),
        ({"weight": "60", "holding_id": "gone"}, "holding_id"),
        ({"weight": "60", "holding_id": ""}, "holding_id"),
        ({"weight": "60", "holding_id": "come in"}, "holding_id"),
        ({"weight": "60", "scale": "5"}, "scale"),
        ({"weight": "60", "id": ""}, "weight"),
    ],
)
def test_a_weighing_at_fault(
    client: TestClient, store: Store, other: dict[str, str], field: str
) -> None:
    answer = weighed(client, **{"weight": "60"} | other)
    assert answer.status_code == 422
    assert f'id="e-{field}"' in answer.text
    assert book_of(store).weighings == ()


@pytest.mark.parametrize(
    ("weight", "ball", "asks"),
    [
        ("104", "G-1", "G-1 had 96 g left, and 104 g is more."),
        ("40", "W-1", "W-1 is not promised to this garment."),
    ],
)
def test_an_odd_weighing_is_asked_about_and_kept_when_it_is_right(
    client: TestClient, store: Store, weight: str, ball: str, asks: str
) -> None:
    answer = weighed(client, weight, holding_id=ball, rows="20")
    assert answer.status_code == 422
    assert asks in words(answer.text)
    assert f'value="{weight}"' in answer.text
    assert book_of(store).weighings == ()
    sure = answer.text.split('id="asked"')[1].split("</form>")[0]
    form = shown_values(f"{sure}</form>", WEIGH)
    client.post(WEIGH, data=form)
    (one,) = book_of(store).weighings
    assert (one.holding_id, one.mg) == (ball, int(weight) * 1000)
    assert check(book_of(store)) == []


def test_a_weight_far_from_what_it_should_be_says_what_was_expected(client: TestClient) -> None:
    weighed(client, "96", rows="0")
    weighed(client, "77", rows="10")
    answer = weighed(client, "12", rows="20")
    assert "At row 20 G-1 was expected to weigh about 58" in words(answer.text)


def test_a_device_is_told_the_question(client: TestClient) -> None:
    form = shown_values(page(client, NEEDLES), WEIGH) | {"weight": "104", "rows": "20"}
    answer = client.post(WEIGH, data=form, headers=JSON)
    assert answer.status_code == 422
    assert answer.json()["asked"] == form["id"]
    assert "is more. Is it this ball?" in answer.json()["question"]


def test_knitting_undone(client: TestClient, store: Store) -> None:
    ticked(client, 20)
    weighed(client, "60")
    before = book_of(store)
    told = {"part_id": "body", "piece": "1", "row": "10", "ripped": "17.5", "day": ""}
    answer = client.post(RIP, data=told)
    said = words(answer.text)
    assert "body is back at row 10." in said
    assert "wash it and hang it to dry" in said
    book = book_of(store)
    assert rows(store) == 10
    (back,) = (one for one in book.holdings if one.code == "pullover, ripped back")
    assert book.balances[back.id].mg == 17_500
    client.post(undo_of(answer.text), data={"back": NEEDLES})
    after = book_of(store)
    assert rows(store) == 20
    assert after.promises == before.promises
    assert after.balances[back.id].mg == 0
    assert after.holding[back.id].put_away is not None
    assert check(after) == []


def test_a_part_knit_again(client: TestClient, store: Store) -> None:
    ticked(client, 20)
    answer = client.post(RIP, data={"part_id": "body", "piece": "1", "row": "0", "ripped": ""})
    assert "body is back at row 0." in words(answer.text)
    assert rows(store) == 0


@pytest.mark.parametrize(
    ("told", "field"),
    [
        ({"row": ""}, "row"),
        ({"row": "20"}, "row"),
        ({"row": "5", "ripped": "some"}, "ripped"),
        ({"row": "5", "ripped": "500"}, "ripped"),
        ({"row": "5", "day": "2200-01-01"}, "day"),
    ],
)
def test_knitting_undone_at_fault(
    client: TestClient, store: Store, told: dict[str, str], field: str
) -> None:
    ticked(client, 20)
    answer = client.post(RIP, data={"part_id": "body", "piece": "1"} | told)
    assert answer.status_code == 422
    assert f'id="e-{field}"' in answer.text
    assert rows(store) == 20


def test_no_piece_to_undo(client: TestClient) -> None:
    assert client.post(RIP, data={"part_id": "body", "piece": "x", "row": "1"}).status_code == 404


def test_a_device_is_told_the_rows_of_every_piece(client: TestClient) -> None:
    ticked(client, 7)
    html = page(client, NEEDLES)
    told = html.split("data-rows-of='")[1].split("'")[0]
    assert json.loads(told)["1 body"] == 7


OTHERWISE = f"{BODY}/otherwise"


def test_another_needle_from_here_on(client: TestClient, store: Store) -> None:
    ticked(client, 40)
    assert f'href="{OTHERWISE}"' in page(client, BODY)
    html = page(client, OTHERWISE)
    assert "Otherwise from round 41 on" in words(html)
    form = shown_values(html, OTHERWISE) | {"gauge_stitches": "24", "gauge_rows": "33"}
    before = book_of(store)
    answer = client.post(OTHERWISE, data=form)
    assert "body, from round 41 is a part of its own now" in words(answer.text)
    assert "Rounds done: 0 of 88" in words(answer.text)
    assert "Round 1 grey two-ply 229 stitches" in words(answer.text)
    client.post(undo_of(answer.text), data={"back": NEEDLES})
    after = book_of(store)
    assert (after.parts, after.promises, after.plans) == (
        before.parts,
        before.promises,
        before.plans,
    )


@pytest.mark.parametrize(
    ("told", "field"),
    [
        ({}, "rows"),
        ({"rows": "0"}, "rows"),
        ({"gauge_stitches": "22"}, "gauge_rows"),
        ({"yarn_id": "x"}, "yarn_id"),
    ],
)
def test_otherwise_at_fault(
    client: TestClient, store: Store, told: dict[str, str], field: str
) -> None:
    ticked(client, 40)
    form = shown_values(page(client, OTHERWISE), OTHERWISE) | told
    answer = client.post(OTHERWISE, data=form)
    assert answer.status_code == 422
    assert f'id="e-{field}"' in answer.text
    assert len(book_of(store).parts) == 3


def test_otherwise_where_nothing_is_knit(client: TestClient) -> None:
    assert "otherwise" not in page(client, BODY)
    form = shown_values(page(client, OTHERWISE), OTHERWISE) | {"rows": "30"}
    answer = client.post(OTHERWISE, data=form)
    assert "Nothing of it is knit yet" in words(answer.text)


def test_otherwise_from_a_stale_window(client: TestClient) -> None:
    ticked(client, 40)
    form = shown_values(page(client, OTHERWISE), OTHERWISE) | {"rows": "30", "stamp": "0" * 12}
    assert client.post(OTHERWISE, data=form).status_code == 409


ODD = st.one_of(
    st.text(max_size=30),
    st.sampled_from(
        ["", "0", "1e999", "9" * 40, "1/0", "-1", "\x00", "<gnat>", "2×", "١", "1 body"]
    ),
)


@pytest.mark.property
@settings(
    max_examples=40, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)
@given(data=st.data(), path=st.sampled_from((TICKS, WEIGH, RIP)))
def test_whatever_is_sent_is_a_page_or_a_fault(
    client: TestClient, path: str, data: st.DataObject
) -> None:
    forms = {
        TICKS: {"id": "a", "part_id": "body", "piece": "1", "rows": "1", "up_to": "3"},
        WEIGH: {"id": "b", "weight": "60", "holding_id": "G-1", "place": "1 body", "rows": "5"},
        RIP: {"part_id": "body", "piece": "1", "row": "0", "ripped": "", "day": ""},
    }
    more = {"scale": "1000", "day": "2026-05-01", "minute": "5"} if path == WEIGH else {}
    form = forms[path] | more
    typed = form | {name: data.draw(ODD) for name in form if data.draw(st.booleans())}
    answer = client.post(path, data=typed)
    assert answer.status_code in (200, 404, 422)
    assert "<gnat>" not in answer.text
