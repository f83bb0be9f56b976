import re
from math import exp, log, sqrt

import pytest
from starlette.testclient import TestClient

from app import paths
from app.book.exchange import loads
from app.book.spinning import Spinning
from app.store.engine import Store
from app.store.fill import fill
from tests.books import a_book, a_reading, a_skein, a_wheel, a_yarn
from tests.web.forms import shown_values
from tests.web.garden import book_of, page, words

YARN = "/yarns/grey"
CHANGE = f"{YARN}/spinning/change"


def filled(store: Store, *more, **yarn) -> None:
    book = a_book(a_yarn("grey", **yarn), a_wheel("upright"), *more)
    with store.writing() as session:
        fill(session, book)


def changed(client: TestClient, **typed: str):
    return client.post(CHANGE, data=shown_values(page(client, CHANGE), CHANGE) | typed)


def test_a_yarn_without_targets_says_what_to_say_first(client: TestClient, store: Store):
    filled(store)
    text = words(page(client, f"{YARN}/spinning"))
    assert "Nothing to spin by yet. Say what grist" in text
    assert "No bobbin of it is written down." in text


def test_targets_are_said_and_the_plan_follows(client: TestClient, store: Store):
    filled(store)
    answer = changed(
        client, target="222.2", wanted="400", wheel="upright", note="from the dark end"
    )
    text = words(answer.text)
    assert "How grey is to be spun is kept." in text
    assert "Spin at 498 m/100 g:" in text.replace("\u202f", " ")
    assert "from the dark end" in text
    assert "8 : 1" in text
    said = book_of(store).yarn["grey"].spinning
    assert (said.wheel_id, said.wanted_mm) == ("upright", 400_000)


def test_a_form_sent_back_unchanged_changes_nothing(client: TestClient, store: Store):
    said = Spinning(
        use="socks, gloves and hard wear",
        wheel_id="upright",
        ratio=14.0,
        draft_mm=51,
        ply_twist_per_m=217.3,
        singles_twist_per_m=331.1,
        wraps=11.5,
        preparation="combed",
        chained=True,
        wanted_mm=400_000,
        note="dark end",
    )
    filled(store, spinning=said, target_tex=451.3)
    before = book_of(store).yarn["grey"]
    assert changed(client).status_code == 200
    assert book_of(store).yarn["grey"] == before


def test_inches_and_yards_are_read_as_such(client: TestClient, store: Store):
    filled(store, target_tex=450.0)
    settings = shown_values(page(client, "/settings"), "/settings")
    client.post("/settings", data=settings | {"length_unit": "yd", "girth_mm": "60"})
    changed(client, ply_twist="5", wanted="400")
    said = book_of(store).yarn["grey"].spinning
    assert said.ply_twist_per_m == pytest.approx(5 / 0.0254)
    assert said.wanted_mm == 365_760
    assert "5.0 turns per inch" in page(client, f"{YARN}/spinning")


@pytest.mark.parametrize(
    ("typed", "fault"),
    [
        ({"wraps": "0"}, "This must be 1 or more."),
        ({"use": "kites"}, "Choose one of these."),
        ({"ratio": "x"}, "ratio"),
        ({"ply_twist": "900"}, "or less."),
        ({"target": "0"}, "or more."),
        ({"wheel": "loom"}, "Choose one of these."),
    ],
)
def test_what_cannot_be_is_refused_and_kept(client, store, typed, fault):
    filled(store)
    answer = changed(client, note="kept", **typed)
    assert answer.status_code == 422
    assert fault in answer.text
    assert "kept" in answer.text
    assert book_of(store).yarn["grey"].spinning is None


def test_a_change_meanwhile_is_not_overwritten(client: TestClient, store: Store):
    filled(store)
    form = shown_values(page(client, CHANGE), CHANGE)
    client.post(CHANGE, data=form | {"note": "first"})
    assert client.post(CHANGE, data=form | {"note": "second"}).status_code == 409
    assert client.get("/yarns/none/spinning").status_code == 404


def test_more_like_this_takes_what_was_measured(client: TestClient, store: Store):
    skein = a_skein("G-1", "grey")
    wraps = a_reading("G-1", 12_500, kind="wraps", instrument="gauge")
    with store.writing() as session:
        yarn = a_yarn("grey", target_tex=430.0, plies=3, twist="S")
        fill(session, a_book(yarn, skein, wraps, held={"G-1": (90, 200)}))
    answer = client.post(f"{YARN}/like", data={"wanted": "300 m"})
    assert "More like grey is written down, with the targets of grey." in answer.text
    (made,) = [one for one in book_of(store).yarns if one.id != "grey"]
    assert made.target_tex == pytest.approx(450.0)
    assert (made.plies, made.twist, made.spinning.wraps) == (3, "S", 12.5)
    assert (made.spinning.like_yarn_id, made.spinning.wanted_mm) == ("grey", 300_000)
    client.post(f"{YARN}/like", data={"wanted": "300 m"})
    assert {one.name for one in book_of(store).yarns} >= {"More like grey", "More like grey 2"}


def test_more_like_nothing_of_it_is_refused(client: TestClient, store: Store):
    filled(store)
    answer = client.post(f"{YARN}/like", data={"wanted": ""})
    assert answer.status_code == 422
    assert "This is needed." in answer.text
    assert len(book_of(store).yarns) == 1


def test_more_like_a_shop_yarn_is_spun(client: TestClient, store: Store):
    filled(store, bought=True, ball_mg=50_000, ball_mm=125_000)
    assert "It is bought, not spun." in page(client, f"{YARN}/spinning")
    client.post(f"{YARN}/like", data={"wanted": "300 m"})
    (made,) = [one for one in book_of(store).yarns if one.id != "grey"]
    assert (made.bought, made.target_tex, made.ball_mg) == (False, 400.0, None)


def number_before(text: str, words_after: str) -> float:
    found = re.search(rf"([\d\u202f.]+)\s*{re.escape(words_after)}", text)
    assert found, words_after
    return float(found[1].replace("\u202f", ""))


def fact(text: str, label: str) -> str:
    return re.split(rf"{label} ", text)[1]


def pace_in_logs(demo) -> float:
    """Of a new yarn, from the evenings of spinning: those at one yarn are averaged, the averages
    weighed against the usual 180 m an hour. Makers differ by 0.4 in logs, yarns by 0.2, evenings
    by 0.25, and the clock by 0.03."""
    noted: dict[str, list[float]] = {}
    for one in demo.stints:
        if one.work == "spin":
            pace = one.mm / 1000 * 60 / one.minutes
            noted.setdefault(one.yarn_id, []).append(log(pace / 180))
    evening = 0.25**2 + 0.03**2
    weights = {yarn: 1 / (0.2**2 + evening / len(paces)) for yarn, paces in noted.items()}
    weighed = sum(weights[yarn] * sum(paces) / len(paces) for yarn, paces in noted.items())
    return weighed / (1 / 0.4**2 + sum(weights.values()))


def test_more_like_this_on_the_demo_recomputed_by_plain_arithmetic(
    client: TestClient, store: Store
):
    """Bramble two-ply: five skeins of so many grams and metres; two of them reeled before."""
    demo = loads(paths.DEMO.read_text(encoding="utf-8"))
    with store.writing() as session:
        fill(session, demo)
    yarn = next(one for one in demo.yarns if one.name == "Bramble two-ply")
    skeins = [one for one in demo.holdings if one.yarn_id == yarn.id and not one.put_away]
    client.post(f"/yarns/{yarn.id}/like", data={"wanted": "500 m"})
    (made,) = [one for one in book_of(store).yarns if one.name.startswith("More like")]
    text = words(page(client, f"/yarns/{made.id}/spinning/print")).replace("\u202f", " ")

    held = [demo.balances[one.id] for one in skeins if demo.balances[one.id].mm]
    tex = 1000 * sum(one.mg for one in held) / sum(one.mm for one in held)
    kept = []
    for skein in skeins:
        lengths = [one for one in demo.readings_of.get(skein.id, []) if one.kind == "length"]
        before = [one.value for one in lengths if not one.finished]
        after = [one.value for one in lengths if one.finished]
        kept += [after[-1] / before[-1]] if before and after else []
    shrunk = sum(kept) / len(kept)
    grams = 500 * tex / 1000
    each = 500 / shrunk / 0.95
    single = 1000 * (grams / 0.98) / 2 / each
    fibre = grams / 0.98 / 0.97
    turns = 33 / sqrt(tex)

    assert number_before(fact(text, "The single"), "m/100 g") == round(100_000 / single)
    assert number_before(fact(text, "Of each single"), "m") == pytest.approx(each, abs=1)
    assert number_before(fact(text, "To ply"), "m") == pytest.approx(500 / shrunk, abs=1)
    assert number_before(fact(text, "Fibre, ready to spin"), "g") == pytest.approx(fibre, abs=1)
    assert number_before(fact(text, "Twist of the ply S,"), "turns") == round(turns, 1)
    assert number_before(fact(text, "Twist of the single Z,"), "turns") == round(1.5 * turns, 1)
    pace = 180 * exp(pace_in_logs(demo))
    assert number_before(fact(text, "Hours of spinning"), "±") == round(2 * each / pace, 1)
    assert text.count(f"{fibre / 2:.0f} g of fibre") >= 2
