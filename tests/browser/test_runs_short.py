"""The demo's pullover is about to run short: Today says so, a way out is taken, the garment comes
off the needles, and what it left covers another plan."""

import subprocess

import pytest

from app import paths
from tests.browser.maker import Maker, plain
from tests.running import command, running

pytestmark = pytest.mark.browser

SIDEWAYS = "document.documentElement.scrollWidth > document.documentElement.clientWidth"


@pytest.fixture
def house(tmp_path):
    """The program on the demo, to change it."""
    data = tmp_path / "data"
    subprocess.run(command("--data", data, "import", paths.DEMO), check=True, capture_output=True)
    with running("--data", data) as program:
        yield program


def test_from_todays_warning_to_the_next_garment(house, page):
    page.set_default_timeout(30_000)
    maker = Maker(page, house.address)
    mitts = _mitts_are_planned(maker)
    maker.go("")
    assert "Round-yoke pullover: Bramble two-ply surely lasts for about" in _main(maker)
    maker.follow("Ways out for Round-yoke pullover")
    maker.follow("Knit the yoke in Onion gold two-ply")
    maker.press("Take it")
    garment = page.url
    maker.reads("Enough")
    maker.follow("It is off the needles")
    _weigh_what_is_left(maker)
    assert page.url == garment
    said = _main(maker)
    assert "Round-yoke pullover is finished." in said
    assert "Planned, and taken It took" in said
    page.goto(mitts)
    maker.press("Fill this for me")
    maker.reads("Enough")
    assert "B-05" in _main(maker)
    maker.go("garments/finished")
    assert "Two garments finished" in maker.answer()


def test_the_forecast_on_a_phone(house, page):
    page.set_viewport_size({"width": 360, "height": 780})
    maker = Maker(page, house.address)
    maker.go("")
    maker.follow("Round-yoke pullover")
    assert page.url.endswith("/needles")
    assert "B-03 ends about row" in _main(maker)
    assert page.locator("#ahead svg").count() == 1
    assert not page.evaluate(SIDEWAYS)
    sizes = page.eval_on_selector_all(
        "#ahead svg text", "all => all.map(one => one.getBoundingClientRect().height)"
    )
    assert min(sizes) >= 11
    maker.fill(hours="3")
    maker.press("What fits in it?")
    assert "In 3 h you would knit about" in _main(maker)


def _main(maker):
    return plain(maker.page.inner_text("main"))


def _mitts_are_planned(maker):
    """A pair of mitts of the pullover's yarn: nothing is free for them."""
    maker.go("garments/new")
    maker.fill(name="Mitts", gauge_stitches="22", gauge_rows="30", yarn_id="Bramble two-ply")
    maker.press("Plan it")
    garment = maker.page.url
    maker.follow("Add a part")
    maker.fill(name="Both", copies="2", counted_stitches="40", counted_rows="60")
    maker.press("Add")
    maker.page.goto(garment)
    maker.reads("Short")
    return garment


def _weigh_what_is_left(maker):
    """Sleeves and body took the balls but for 5 g of one; the ball of the yoke was not needed."""
    left = {"B-03": "0", "B-04": "5", "B-05": "97"}
    for code, grams in left.items():
        field = maker.page.get_by_label(code, exact=False)
        if field.count():
            field.first.fill(grams)
    maker.fill(hours="40", notes="A softer cast-off next time.")
    maker.press("It is finished")
