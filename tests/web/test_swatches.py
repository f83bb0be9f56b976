"""Swatches in the browser: all, one with what it tells, written down, changed, put away."""

import re

import pytest
from starlette.testclient import TestClient

from app.book.settings import Settings
from app.book.stamp import stamp
from app.book.swatch import Count, Swatch
from app.store.engine import Store
from app.store.fill import fill
from app.store.records import put
from tests.books import a_book, a_reading, a_skein, a_swatch, a_yarn
from tests.web.forms import shown_values
from tests.web.garden import book_of, words

NEW = "/swatches/new"
TYPED = {
    "name": "Grey on 4",
    "yarn_id": "grey two-ply",
    "needle": "4",
    "pattern": "stocking stitch",
    "finished_stitches": "27.5",
    "finished_width": "12.5",
    "finished_rows": "36",
    "finished_height": "12",
}
WEIGHED = {"weight": "10", "scale": "1", "whole_stitches": "24×50+28"}
UNRAVELLED = {"unravelled": "40", "thread": "72.4"}


@pytest.fixture
def shelf(store: Store) -> Store:
    """Grey yarn of 450 tex."""
    with store.writing() as session:
        fill(session, a_book(a_yarn(), a_skein(), held={"G-1": (96, 96 / 0.45)}))
    return store


def keep(store: Store, *swatches: Swatch) -> None:
    with store.writing() as session:
        for one in swatches:
            put(session, one)


def opened(client: TestClient) -> dict[str, str]:
    return shown_values(client.get(NEW).text, NEW)


def fault(html: str, field: str) -> str:
    found = re.search(rf'<span class="fault" id="e-{field}">(.*?)</span>', html)
    return words(found[1]) if found else ""


def only(store: Store) -> Swatch:
    (swatch,) = book_of(store).swatches
    return swatch


def test_no_swatch_yet_says_what_one_is_for(client: TestClient) -> None:
    page = words(client.get("/swatches").text)
    assert "No swatch yet." in page
    assert "Write down a swatch" in page
    assert "let it dry flat" in page


def test_a_swatch_is_written_down_in_one_go(client: TestClient, shelf: Store) -> None:
    answer = client.post(NEW, data=opened(client) | TYPED | WEIGHED | UNRAVELLED)
    page = words(answer.text)
    assert answer.url.path.startswith("/swatches/")
    assert "Grey on 4 is written down." in page
    swatch = only(shelf)
    assert swatch == Swatch(
        id=swatch.id,
        name="Grey on 4",
        yarn_id="grey two-ply",
        needle_mm=4.0,
        finished=Count(27.5, 125, 36.0, 120),
        weight_mg=10_000,
        whole_stitches=1228.0,
        unravelled=40.0,
        thread_mm=724,
    )


def test_the_answer_comes_first(client: TestClient, shelf: Store) -> None:
    keep(shelf, a_swatch(unravelled=40.0, thread_mm=724))
    page = words(client.get("/swatches/first try").text)
    assert (
        "22 × 30 in 10 cm, washed: 1.81 cm of yarn in a stitch ± 1.5 %; ordinary fabric, "
        "firmness 11.7." in page
    )


def test_each_way_says_its_own_and_counts_for_its_weight(client: TestClient, shelf: Store) -> None:
    keep(shelf, a_swatch(weight_mg=10_000, whole_stitches=1228.0, unravelled=40.0, thread_mm=724))
    page = words(client.get("/swatches/first try").text)
    assert "the thread, unravelled 1.81 cm 1.5 % 85 %" in page
    assert "its weight 1.81 cm 4.2 % 11 %" in page
    assert "its gauge 1.81 cm 7 % 4 %" in page
    assert "most by thread" in page
    assert "Yarn in a square metre 1 195 m ± 1.4 %" in page
    assert "Weight of a square metre 538 g" in page


def test_ways_that_disagree_are_said_to(client: TestClient, shelf: Store) -> None:
    keep(shelf, a_swatch(unravelled=40.0, thread_mm=500))
    page = words(client.get("/swatches/first try").text)
    assert "The thread, unravelled and its gauge lie further apart than their errors" in page


def test_what_washing_did_and_what_it_will_do(client: TestClient, shelf: Store) -> None:
    keep(
        shelf,
        a_swatch("washed", worked=Count(20.0, 100, 30.0, 100)),
        a_swatch("same", worked=Count(22.0, 100, 30.0, 100)),
        a_swatch("loose", worked=Count(25.0, 100, 27.0, 100)),
        a_swatch("raw", worked=Count(20.0, 100, 28.0, 100), finished=None),
    )
    assert "Washing made it 9 % narrower." in words(client.get("/swatches/washed").text)
    assert "as wide and as high as it was" in words(client.get("/swatches/same").text)
    loose = words(client.get("/swatches/loose").text)
    assert "Washing made it 14 % wider and 10 % shorter." in loose
    raw = words(client.get("/swatches/raw").text)
    assert "Once washed expect about 21.6 × 29.7 in 10 cm, each give or take 5 %." in raw


def test_the_list_tells_gauge_and_stitch(client: TestClient, shelf: Store) -> None:
    keep(shelf, a_swatch(), a_swatch("blank", finished=None, yarn_id=None, needle_mm=None))
    page = words(client.get("/swatches").text)
    assert "Two swatches ; one still to be measured." in page
    assert (
        "first try grey two-ply 4 mm 22 × 30 in 10 cm, washed 1.81 cm ± 7 % ordinary, 11.7" in page
    )
    assert "blank not counted yet" in page


def test_a_swatch_not_measured_says_what_to_do(client: TestClient, shelf: Store) -> None:
    keep(shelf, a_swatch(finished=None))
    page = words(client.get("/swatches/first try").text)
    assert "Nothing measured yet: count its stitches and rows." in page
    assert "Needle against gauge" not in page
    keep(shelf, a_swatch(finished=None, unravelled=40.0, thread_mm=724))
    assert "Not counted yet: 1.81 cm" in words(client.get("/swatches/first try").text)


def test_wraps_tell_of_loft(client: TestClient, shelf: Store) -> None:
    keep(shelf, a_swatch(), a_reading(id="wrapped", kind="wraps", value=11_000))
    page = words(client.get("/swatches/first try").text)
    assert "By its wraps the firmness is 13.3: the yarn is loftier than usual." in page


def test_imperial_settings(client: TestClient, shelf: Store) -> None:
    keep(shelf, Settings(length_unit="yd", mass_unit="oz", gauge_unit="4 in", decimal=","))
    sent = opened(client)
    assert (sent["finished_width"], sent["scale"]) == ("4", "0,1")
    sent |= {"name": "By inches", "needle": "4", "finished_stitches": "22", "finished_rows": "30,5"}
    page = words(client.post(NEW, data=sent).text)
    assert "22 × 30,5 in 4 inches, washed: 0,72 in of yarn in a stitch ± 7 %." in page
    assert only(shelf).scale_mg == 2835


def test_what_is_typed_comes_back_unchanged(client: TestClient, shelf: Store) -> None:
    worked = Count(23.5, 101, 31.0, 99)
    full = a_swatch(
        worked=worked,
        weight_mg=10_200,
        scale_mg=100,
        whole_stitches=1228.5,
        unravelled=40.0,
        thread_mm=724,
        notes="soft",
    )
    keep(shelf, full)
    url = "/swatches/first try/change"
    client.post(url, data=shown_values(client.get(url).text, url))
    assert only(shelf) == full


@pytest.mark.parametrize(
    ("field", "typed", "message"),
    [
        ("name", "", "Give the swatch a name"),
        ("name", "x" * 81, "at most 80"),
        ("yarn_id", "none", "Choose one"),
        ("needle", "0.1", "0.5 or more"),
        ("needle", "thick", "thick"),
        ("finished_stitches", "", "wants all four"),
        ("finished_height", "", "wants all four"),
        ("finished_stitches", "1", "That is no gauge"),
        ("finished_rows", "900", "That is no gauge"),
        ("finished_width", "1 mm", "1 cm or more"),
        ("weight", "2 kg", "1 000 g or less"),
        ("weight", "", "Say what the whole swatch weighs"),
        ("whole_stitches", "", "how many stitches the whole swatch"),
        ("scale", "0", "or more"),
        ("thread", "", "how long their thread"),
        ("unravelled", "", "how many stitches the thread"),
        ("unravelled", "0", "1 or more"),
        ("day", "tomorrow", "year, month and day"),
    ],
)
def test_bad_input_is_said_beside_the_field_and_kept(
    client: TestClient, shelf: Store, field: str, typed: str, message: str
) -> None:
    sent = opened(client) | TYPED | WEIGHED | UNRAVELLED | {field: typed, "notes": "lovely"}
    answer = client.post(NEW, data=sent)
    assert answer.status_code == 422
    assert message in fault(answer.text, field)
    assert "lovely" in answer.text
    assert book_of(shelf).swatches == ()


def test_a_count_left_blank_is_none_whatever_it_would_be_over(
    client: TestClient, shelf: Store
) -> None:
    client.post(NEW, data=opened(client) | {"name": "Only named"})
    assert (only(shelf).worked, only(shelf).finished) == (None, None)


def test_a_name_used_twice_is_refused(client: TestClient, shelf: Store) -> None:
    keep(shelf, a_swatch())
    answer = client.post(NEW, data=opened(client) | TYPED | {"name": "First  TRY"})
    assert answer.status_code == 422
    assert "already a swatch" in fault(answer.text, "name")


def test_a_stale_form_overwrites_nothing(client: TestClient, shelf: Store) -> None:
    keep(shelf, a_swatch())
    url = "/swatches/first try/change"
    form = shown_values(client.get(url).text, url)
    keep(shelf, a_swatch(notes="changed meanwhile"))
    assert client.post(url, data=form | {"notes": "late"}).status_code == 409
    for act in ("put-away", "take-out", "take"):
        answer = client.post(f"/swatches/first try/{act}", data={"stamp": form["stamp"]})
        assert answer.status_code == 409, act
    assert only(shelf).notes == "changed meanwhile"


def test_put_away_and_taken_out_again(client: TestClient, shelf: Store) -> None:
    keep(shelf, a_swatch())
    sent = {"stamp": stamp(only(shelf))}
    page = words(client.post("/swatches/first try/put-away", data=sent).text)
    assert "first try is put away." in page
    assert "Take it out again" in page
    assert "Put away: 1" in words(client.get("/swatches").text)
    assert "first try" not in client.get("/garments/new").text
    sent = {"stamp": stamp(only(shelf))}
    page = words(client.post("/swatches/first try/take-out", data=sent).text)
    assert "first try is at hand again." in page
    assert only(shelf).put_away is None
    assert "first try" in client.get("/garments/new").text


def test_needle_against_gauge_is_drawn_and_told_in_words(client: TestClient, shelf: Store) -> None:
    keep(
        shelf,
        a_swatch("on 3.5", needle_mm=3.5, finished=Count(24.0, 100, 32.0, 100)),
        a_swatch("on 4", needle_mm=4.0),
        a_swatch("on 4.5", needle_mm=4.5, finished=Count(20.0, 100, 28.0, 100)),
    )
    html = client.get("/swatches/on 4").text
    (label,) = re.findall(r'<svg class="needle-line"[^>]*aria-label="([^"]*)"', html)
    assert "3.5 mm, 24 stitches (on 3.5); 4 mm, 22 stitches (on 4); 4.5 mm, 20" in label
    circles = re.findall(r'<circle cx="([\d.]+)" cy="([\d.]+)" r="4.5" fill="(\w+)"', html)
    assert [one[2] for one in circles] == ["none", "currentColor", "none"]
    across, down = ([float(one[axis]) for one in circles] for axis in (0, 1))
    assert across == sorted(across)
    assert down == sorted(down)
    (line,) = re.findall(r'<path d="M(\S+) (\S+)L(\S+) (\S+)" stroke="currentColor"', html)
    x1, y1, x2, y2 = map(float, line)
    on_line = y1 + (across[1] - x1) / (x2 - x1) * (y2 - y1)
    assert on_line == pytest.approx(down[1], abs=0.2)


def test_which_needle_is_a_question_in_the_address(client: TestClient, shelf: Store) -> None:
    keep(
        shelf,
        a_swatch("on 3.5", needle_mm=3.5, finished=Count(24.2, 100, 32.0, 100)),
        a_swatch("on 4", needle_mm=4.0),
        a_swatch("on 4.5", needle_mm=4.5, finished=Count(20.2, 100, 28.0, 100)),
    )
    page = words(client.get("/swatches/on 4?stitches=23").text)
    assert "3.8 mm for 23 stitches in 10 cm, between" in page
    assert "beside it are 3.75 mm and 4 mm" in page or "beside it are 3.5 mm and 3.75 mm" in page
    far = words(client.get("/swatches/on 4?stitches=30").text)
    assert "That is beyond the needles you tried." in far


def test_a_fragment_is_only_the_answer(client: TestClient, shelf: Store) -> None:
    keep(shelf, a_swatch())
    answer = client.get("/swatches/first try?stitches=22", headers={"hx-request": "true"})
    assert "<html" not in answer.text
    assert "4.0 mm for 22 stitches in 10 cm" in words(answer.text)


def test_a_question_that_is_none(client: TestClient, shelf: Store) -> None:
    keep(shelf, a_swatch())
    answer = client.get("/swatches/first try?stitches=many")
    assert answer.status_code == 422
    assert fault(answer.text, "stitches")
    keep(shelf, a_swatch(yarn_id=None))
    page = words(client.get("/swatches/first try?stitches=22").text)
    assert "No telling yet: the grist of its yarn is not known" in page


@pytest.mark.parametrize("path", ["", "/change"])
def test_a_swatch_that_is_not_there(client: TestClient, path: str) -> None:
    assert client.get(f"/swatches/none{path}").status_code == 404


@pytest.mark.usefixtures("shelf")
def test_a_new_swatch_of_a_yarn_begins_with_it(client: TestClient) -> None:
    assert '<option value="grey two-ply" selected>' in client.get(f"{NEW}?yarn=grey two-ply").text
    assert client.get(f"{NEW}?yarn=none").status_code == 200


def test_names_are_text_and_never_markup(client: TestClient, shelf: Store) -> None:
    nasty = "<img src=x onerror=alert(1)>"
    keep(shelf, a_swatch(name=nasty, pattern=nasty, notes=nasty), a_swatch("b", needle_mm=5.0))
    for path in ("/swatches", "/swatches/first try", "/swatches/first try/change", "/garments/new"):
        assert "<img" not in client.get(path).text


def test_the_page_of_a_yarn_leads_to_its_swatches(client: TestClient, shelf: Store) -> None:
    keep(shelf, a_swatch(), a_swatch("gone", put_away=a_swatch().day))
    html = client.get("/yarns/grey two-ply").text
    assert '<a href="/swatches/first try">first try</a>.' in html
    assert "/swatches/gone" not in html
    assert 'href="/swatches/new?yarn=grey two-ply"' in html
