"""Patterns are written down in a table of fields, changed, put away; what is typed is kept."""

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from starlette.testclient import TestClient

from app.book.gauge import Gauge
from app.book.pattern import Pattern, PatternSize, Share, SizePart
from app.book.settings import Settings
from app.store.engine import Store
from app.store.records import put
from app.web.forms.pattern import pattern_values, read_pattern
from app.web.forms.pattern_sizes import MOST_SIZES, usual_copies
from tests.books import a_pattern, a_plan, a_yarn
from tests.patterns import five_sizes
from tests.web.forms import shown_values
from tests.web.garden import book_of, page, stamp_of, words

NEW = "/patterns/new"
TYPED = {
    "name": "Round-yoke pullover",
    "source": "an old leaflet",
    "gauge_stitches": "22",
    "gauge_rows": "30",
    "gauge_measure": "10 cm",
    "gauge_washed": "yes",
    "gauge_needle": "4",
    "sizes": "5",
    "parts": "4",
    "stated_in": "length",
    "size_1": "S",
    "width_1": "96",
    "stated_1": "1180",
    "size_2": "M",
    "width_2": "104",
    "stated_2": "1310",
    "part_1": "Body",
    "cast_on_1_1": "212",
    "length_1_1": "40",
    "cast_on_1_2": "229",
    "length_1_2": "40",
    "part_2": "Sleeves",
    "cast_on_2_1": "48",
    "widest_2_1": "76",
    "rows_2_1": "135",
}


def post(client: TestClient, address: str = NEW, **other: str):
    return client.post(address, data=TYPED | other, follow_redirects=False)


@pytest.fixture
def kept(store: Store) -> Pattern:
    with store.writing() as session:
        put(session, five_sizes())
    return five_sizes()


def test_an_empty_room_says_what_a_pattern_is_for(client: TestClient):
    html = page(client, "/patterns")
    assert "No pattern yet." in words(html)
    assert 'href="/patterns/new"' in html
    assert 'href="/patterns"' in page(client, "/garments")
    assert 'aria-current="true">Garments' in html


def test_a_new_form_has_five_empty_columns(client: TestClient):
    form = shown_values(page(client, NEW), NEW)
    assert [name for name in form if name.startswith("size_")] == [f"size_{k}" for k in range(1, 6)]
    assert (form["part_1"], form["part_2"], form["copies_2"]) == ("Body", "Sleeves", "2")


def test_two_sizes_are_written_down(client: TestClient, store: Store):
    answer = post(client)
    assert answer.status_code == 303
    (pattern,) = book_of(store).patterns
    assert answer.headers["location"] == f"/patterns/{pattern.id}"
    assert pattern.gauge == Gauge(22.0, 30.0, needle_mm=4.0)
    body, sleeves = pattern.sizes[0].parts
    assert pattern.sizes[0] == PatternSize("S", 960, 1_180_000, (body, sleeves))
    assert body == SizePart("Body", cast_on=212, length_mm=400)
    assert sleeves == SizePart("Sleeves", copies=2, cast_on=48, widest=76, rows=135)
    assert pattern.sizes[1].parts[1] == SizePart("Sleeves", copies=2)
    shown = words(page(client, f"/patterns/{pattern.id}"))
    assert "Two sizes , 96 cm to 104 cm around, for 22 × 30 in 10 cm." in shown
    assert "Not counted for every size: Sleeves." in shown


def test_balls_of_a_known_length_and_shares(client: TestClient, store: Store):
    post(client, stated_in="balls", ball="115", stated_1="9", stated_2="10.5", share_1="60")
    (pattern,) = book_of(store).patterns
    assert [one.stated_mm for one in pattern.sizes] == [1_035_000, 1_207_500]
    assert pattern.shares == (Share("Body", 60.0),)
    assert "60 %" in words(page(client, f"/patterns/{pattern.id}"))


def test_yards_and_inches_are_understood(client: TestClient, store: Store):
    post(client, stated_1="1300 yd", width_1="38 in", gauge_measure="4 in")
    (pattern,) = book_of(store).patterns
    assert (pattern.sizes[0].stated_mm, pattern.sizes[0].width_mm) == (1_188_720, 965)
    assert pattern.gauge.stitches == pytest.approx(21.65, abs=0.01)


FAULTS = [
    ("name", "", "Give the pattern a name."),
    ("gauge_stitches", "", "Say how many stitches and rows the gauge has."),
    ("size_1", "", "Give the size in column 1 a name."),
    ("size_2", "s", "Two sizes have this name."),
    ("width_2", "", "Width, size M: This is needed."),
    ("width_2", "3", "Width, size M: This must be 5 cm or more."),
    ("cast_on_1_2", "many", "Body, cast on, size M: "),
    ("length_1_1", "60 m", "Body, length, size S: This must be 500 cm or less."),
    ("stated_1", "1,200", "Yarn, size S: "),
    ("part_1", "", "Give this part a name"),
    ("part_2", "body", "Two parts have this name."),
    ("copies_1", "0", "This must be 1 or more."),
    ("rows_2_1", "0", "Sleeves, rows, size S: This must be 1 or more."),
]


@pytest.mark.parametrize(("field", "typed", "fault"), FAULTS)
def test_a_fault_stands_beside_its_field_and_nothing_is_kept(
    client: TestClient, store: Store, field: str, typed: str, fault: str
):
    answer = post(client, **{field: typed})
    assert answer.status_code == 422
    assert fault in words(answer.text)
    assert f'href="#f-{field}"' in answer.text
    assert f'id="f-{field}"' in answer.text
    assert f'id="e-{field}"' in answer.text
    assert shown_values(answer.text, NEW)["cast_on_2_1"] == "48"
    assert book_of(store).patterns == ()


def test_a_ball_of_no_length_and_a_gauge_left_out(client: TestClient):
    assert "Say how long one ball is." in words(post(client, stated_in="balls").text)
    blank = post(client, gauge_stitches="", gauge_rows="", gauge_needle="")
    assert "Say what gauge the pattern is written for." in words(blank.text)


def test_more_sizes_and_more_parts_keep_what_was_typed(client: TestClient, store: Store):
    wider = post(client, more="sizes")
    form = shown_values(wider.text, NEW)
    assert (wider.status_code, form["sizes"], form["cast_on_1_2"]) == (200, "8", "229")
    assert "size_8" in form
    longer = shown_values(post(client, more="parts", name="").text, NEW)
    assert (longer["parts"], "part_6" in longer, longer["sizes"]) == ("6", True, "5")
    most = post(client, more="sizes", sizes=str(MOST_SIZES)).text
    assert shown_values(most, NEW)["sizes"] == str(MOST_SIZES)
    assert 'value="sizes"' not in most
    assert book_of(store).patterns == ()


def test_a_name_is_used_once(client: TestClient):
    post(client)
    assert "There is already a pattern called" in words(post(client).text)


def test_a_form_saved_unchanged_changes_nothing(client: TestClient, store: Store, kept: Pattern):
    address = f"/patterns/{kept.id}/change"
    form = shown_values(page(client, address), address)
    answer = client.post(address, data=form, follow_redirects=False)
    assert answer.status_code == 303
    assert book_of(store).patterns == (kept,)


def test_where_a_part_lies_is_asked_for(client: TestClient, store: Store, kept: Pattern):
    address = f"/patterns/{kept.id}/change"
    shown = page(client, address)
    assert "Where it lies" in words(shown)
    client.post(address, data=shown_values(shown, address) | {"place_1": "yoke"})
    assert book_of(store).patterns[0].sizes[0].parts[0].place == "yoke"
    answer = client.post(
        address, data=shown_values(page(client, address), address) | {"place_1": "attic"}
    )
    assert answer.status_code == 422
    assert 'id="e-place_1"' in answer.text


def test_a_place_given_stays(client: TestClient, store: Store):
    placed = a_pattern(shares=(Share("Body", 100.0),))
    with store.writing() as session:
        put(session, placed)
    address = f"/patterns/{placed.id}/change"
    client.post(address, data=shown_values(page(client, address), address))
    assert book_of(store).patterns == (placed,)


def test_a_pattern_changed_meanwhile_is_not_overwritten(
    client: TestClient, store: Store, kept: Pattern
):
    address = f"/patterns/{kept.id}"
    for what in ("change", "put-away", "take-out", "paste"):
        assert post(client, f"{address}/{what}", stamp="old").status_code == 409
    assert book_of(store).patterns == (kept,)


def test_put_away_and_taken_out(client: TestClient, store: Store, kept: Pattern):
    address = f"/patterns/{kept.id}"
    client.post(f"{address}/put-away", data={"stamp": stamp_of(store, "pattern", kept.id)})
    assert "Put away: 1" in words(page(client, "/patterns"))
    assert "Which size?" not in words(page(client, address))
    client.post(f"{address}/take-out", data={"stamp": stamp_of(store, "pattern", kept.id)})
    assert book_of(store).patterns == (kept,)
    assert "One written pattern." in words(page(client, "/patterns"))


def test_a_pattern_names_the_garments_it_is_for(client: TestClient, store: Store, kept: Pattern):
    with store.writing() as session:
        for one in (a_yarn(), a_plan(), a_plan("vest", pattern_id=kept.id, size="3")):
            put(session, one)
    html = page(client, f"/patterns/{kept.id}")
    assert f'href="/garments/pullover/size?pattern={kept.id}"' in html
    assert "vest in size 3" in words(html)


def test_a_width_its_stitches_belie_is_asked_about(client: TestClient, store: Store):
    post(client, gauge_stitches="18")
    (pattern,) = book_of(store).patterns
    shown = words(page(client, f"/patterns/{pattern.id}"))
    assert (
        "Size S: its stitches make 117.8 cm at the pattern's gauge, the table says 96 cm" in shown
    )


def test_a_part_of_which_nothing_is_told_is_still_named(client: TestClient, store: Store):
    post(client, part_3="Collar")
    (pattern,) = book_of(store).patterns
    assert "Collar not told not told" in words(page(client, f"/patterns/{pattern.id}"))


def test_no_such_pattern(client: TestClient):
    for path in ("", "/change", "/paste"):
        assert client.get(f"/patterns/nobody{path}").status_code == 404


@pytest.mark.parametrize(
    ("name", "copies"),
    [("Sleeves", 2), ("left sleeve", 2), ("Fronts", 2), ("Front", 1), ("Hat", 1)],
)
def test_what_comes_in_pairs(name: str, copies: int):
    assert usual_copies(name) == copies


counts = st.none() | st.integers(1, 5000)
pieces = st.builds(
    SizePart,
    st.sampled_from(["Body", "Yoke"]),
    copies=st.integers(1, 20),
    cast_on=counts,
    widest=counts,
    rows=counts,
    length_mm=st.none() | st.integers(1, 5000),
)
sizes = st.builds(
    PatternSize,
    st.just("M"),
    st.integers(50, 5000),
    st.none() | st.integers(1_000, 20_000_000),
    pieces.map(lambda one: (one,)),
)


@pytest.mark.property
@given(sizes, st.sampled_from(["m", "yd"]), st.sampled_from([".", ","]))
def test_what_the_form_shows_it_reads_back(size: PatternSize, unit, decimal):
    own = Settings(length_unit=unit, decimal=decimal)
    pattern = a_pattern(sizes=(size,))
    reader, read = read_pattern(pattern_values(pattern, own), own, pattern)
    assert reader.errors == {}
    assert read == pattern


ODD = st.text(max_size=40) | st.sampled_from(
    ["", "0", "9" * 30, "1/0", "½", "-1", "\x00", "<gnat>"]
)


@pytest.mark.property
@settings(
    max_examples=60, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)
@given(st.dictionaries(st.sampled_from(sorted(TYPED)), ODD))
def test_any_text_in_any_field(client: TestClient, typed: dict[str, str]):
    answer = post(client, **typed)
    assert answer.status_code in (200, 303, 422)
    assert "<gnat>" not in answer.text
