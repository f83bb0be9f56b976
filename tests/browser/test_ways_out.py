"""A garment is short; three ways out are compared, one is looked at and taken, and it is undone."""

import subprocess

import pytest

from app.book.exchange import dumps
from app.book.gauge import Gauge
from app.book.shape import Rectangle, Trapezoid
from tests.books import a_book, a_part, a_plan, a_reading, a_skein, a_yarn
from tests.browser.maker import Maker, plain
from tests.running import command, running

pytestmark = pytest.mark.browser

GREY, GAUGE = "grey two-ply", Gauge(22.0, 30.0, needle_mm=4.0)
YOKE = Trapezoid(1100, 480, 200)
WIDTHS = (360, 1280)
SIDEWAYS = "document.documentElement.scrollWidth > document.documentElement.clientWidth"


@pytest.fixture(params=[True, False], ids=["scripts", "no scripts"])
def scripts(request):
    return request.param


@pytest.fixture
def short(tmp_path):
    """The program on a shelf of 720 m of grey and 250 m of white, measured on the reel, and two
    garments: a pullover that is short, and a scarf."""
    skeins = {"G-1": 360.0, "G-2": 360.0, "W-1": 250.0}
    shelf = [a_skein(one, GREY if one[0] == "G" else "white two-ply") for one in skeins]
    readings = [a_reeled_skein(code, metres) for code, metres in skeins.items()]
    plans = [a_plan("Pullover", gauge=GAUGE), a_plan("Scarf", gauge=GAUGE, priority=2)]
    parts = [
        a_part("Body", "Pullover", shape=Rectangle(1040, 400), place="body", in_round=True),
        a_part("Yoke", "Pullover", shape=YOKE, position=2, place="yoke", in_round=True),
        a_part("Whole", "Scarf", shape=Rectangle(200, 900)),
    ]
    yarns = [a_yarn(GREY, colour="#8d8a85"), a_yarn("white two-ply", colour="#f0ece2")]
    held = {code: (metres * 0.45, metres) for code, metres in skeins.items()}
    book = a_book(*yarns, *shelf, *readings, *plans, *parts, held=held)
    document = tmp_path / "shelf.json"
    document.write_text(dumps(book), encoding="utf-8")
    data = tmp_path / "data"
    subprocess.run(command("--data", data, "import", document), check=True, capture_output=True)
    with running("--data", data) as program:
        yield program


def a_reeled_skein(code, metres):
    turned = {"instrument": "reel", "girth_mm": 1500, "turns": metres / 1.5}
    length = {"kind": "length", "id": f"{code} reeled", **turned}
    return a_reading(code, round(metres * 1000), **length)


def test_short_compared_looked_at_taken_undone(short, page, scripts):
    maker = Maker(page, short.address)
    maker.go("garments/Pullover")
    garment = page.url
    maker.reads("Short by ")
    before = maker.answer()
    ways = _ways(maker, scripts)
    assert len(ways) >= 3
    assert any("shorter" in title for title in ways)
    if scripts:
        _is_in_order(page)
    shorter = next(title for title in ways if title.startswith("Make the body"))
    promised = ways[shorter]
    _look(maker, shorter)
    assert "as it would be, nothing saved" in plain(page.inner_text("main"))
    assert page.locator("svg.garment-picture").count() == 1
    then = maker.answer()
    if scripts:
        _is_in_order(page)
    maker.press("Take it")
    assert page.url == garment
    assert "Taken: make the body" in plain(page.inner_text("main"))
    assert maker.answer() == then
    assert promised in then
    maker.press("Undo")
    assert "Undone: Taken: make the body" in plain(page.inner_text("main"))
    assert maker.answer() == before


def test_what_the_shelf_covers_in_two_orders_one_kept_and_undone(short, page, scripts):
    maker = Maker(page, short.address)
    maker.go("garments")
    maker.follow("What the shelf covers")
    now = _stands(page)
    assert set(now) == {"Pullover", "Scarf"}
    if scripts:
        _is_in_order(page)
    page.get_by_label("Place of Scarf in another order").select_option("1")
    page.get_by_label("Take apart what was promised").check()
    maker.press("Look at it so")
    page.get_by_role("button", name="Keep the other order").wait_for()
    maker.press("Keep the other order")
    assert "The garments are served in this order now." in plain(page.inner_text("main"))
    kept = _stands(page)
    assert list(kept) == ["Scarf", "Pullover"]
    maker.press("Undo")
    assert _stands(page) == now


def _ways(maker, scripts):
    """Odds by the title of each way out, from its page or from the garment's."""
    page = maker.page
    if scripts:
        page.locator("#ways-found").wait_for()
        for folded in page.locator("#ways-found details > summary").all():
            folded.click()
    else:
        maker.follow("Ways out of this")
    found = {}
    for row in page.locator("#ways-found tbody tr").all():
        title = plain(row.locator("th").inner_text()).split("  ")[0]
        found[title] = plain(row.locator("[data-word='reaches the end']").inner_text())
    return found


def _look(maker, title):
    row = maker.page.locator("#ways-found tr", has_text=title.split(" shorter")[0]).first
    with maker.page.expect_navigation():
        row.get_by_role("link", name="Show me the plan so").click()


def _stands(page):
    rows = page.locator("#covers tbody tr", has=page.locator("[data-word='in your order']"))
    return {
        plain(row.locator("th a").first.inner_text()): plain(
            row.locator("[data-word='in your order']").inner_text()
        )
        for row in rows.all()
    }


def _is_in_order(page):
    """Nothing for axe to find, light and dark, and nothing wider than the window."""
    from axe_playwright_python.sync_playwright import Axe

    for width in WIDTHS:
        page.set_viewport_size({"width": width, "height": 800})
        assert not page.evaluate(SIDEWAYS), width
        for scheme in ("light", "dark"):
            page.emulate_media(color_scheme=scheme)
            assert [one["id"] for one in Axe().run(page).response["violations"]] == []
