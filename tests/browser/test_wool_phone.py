"""At the wheel with a phone: drying wool weighed, a skein finished, the shortfall closing, each in
under ten taps; and the wool book read on a narrow screen."""

import re
from datetime import date, timedelta
from pathlib import Path

import pytest

from app.book.event import Line
from app.book.event_note import step_note
from app.store.engine import open_store
from app.store.fill import fill
from app.store.records import post
from tests.books import a_book, a_fleece, a_holding, a_part, a_plan, a_reading, a_skein, a_yarn
from tests.browser.maker import Maker, metres, plain
from tests.running import running

pytestmark = pytest.mark.browser

PHONE = {"width": 390, "height": 844}
MOST_TAPS = 9
DAY = date.today() - timedelta(days=4)


class Tapping(Maker):
    """A maker on a phone who counts her taps: on links, buttons and into fields."""

    def __init__(self, page, address: str) -> None:
        super().__init__(page, address)
        page.set_viewport_size(PHONE)
        self.taps = 0

    def _click(self, control) -> None:
        self.taps += 1
        super()._click(control)

    def fill(self, **fields: object) -> None:
        self.taps += len(fields)
        super().fill(**fields)

    def no_sideways(self) -> None:
        wide = self.page.evaluate("document.documentElement.scrollWidth")
        assert wide <= PHONE["width"], self.page.url


@pytest.fixture
def flock(tmp_path: Path):
    """Bramble, carded; Teasel, washed and wet; a tube that is short of grey two-ply."""
    wet = a_reading("T", 900_000, id="wet", wool="damp", day=DAY, typed="900", unit="g")
    later = a_reading("T", 612_000, id="less", wool="damp", day=DAY + timedelta(3), minute=8 * 60)
    book = a_book(
        a_fleece(),
        a_fleece("Teasel", yield_pct=60.0),
        a_yarn(fleece_id="Bramble"),
        a_holding("B", code="Bramble", fleece_id="Bramble", state="carded", day=DAY),
        a_holding("T", code="Teasel", fleece_id="Teasel", state="drying", day=DAY),
        a_skein("G-1"),
        a_plan(name="Tube"),
        a_part(),
        wet,
        later,
    )
    store = open_store(tmp_path / "data")
    with store.writing() as session:
        fill(session, book)
        for id, g, mm in (("B", 2000, 0), ("T", 1000, 0), ("G-1", 96, 213_000)):
            post(session, "arrive", DAY, (Line(id, 1000 * g, mm), Line("come in", -1000 * g)))
        note = step_note("skirted", "drying")
        post(session, "prepare", DAY, (Line("T", 0),), note, step="scour")
    store.close()
    with running("--data", tmp_path / "data") as program:
        yield program


def test_drying_wool_is_weighed_and_entered_when_it_is_dry(flock, page):
    maker = Tapping(page, flock.address)
    maker.go("/")
    maker.no_sideways()
    maker.follow("Weigh it")
    maker.no_sideways()
    maker.fill(weight="610")
    maker.press("Keep the weighing")
    maker.reads("It is dry: the last two weighings agree.")
    maker.press("It is dry: enter 610")
    assert "is now scoured: 390 g went on the way" in _main(maker)
    assert maker.taps <= MOST_TAPS
    maker.no_sideways()


def test_a_skein_is_finished_and_the_shortfall_closes(flock, page):
    maker = Tapping(page, flock.address)
    maker.go("/garments/pullover")
    before = metres(maker.answer().split("Short by")[1])
    maker.taps = 0
    maker.go("/work-list")
    maker.follow("Spun: finish the skein")
    maker.no_sideways()
    maker.fill(turns_before=200, turns=184, mass=124)
    maker.press("It is finished")
    said = _main(maker)
    assert "It lost 8 % of its length in finishing." in said
    assert "Promised to Tube" in said
    after = metres(maker.answer().split("Short by")[1])
    assert after == pytest.approx(before - 276, abs=10)
    assert maker.taps <= MOST_TAPS
    maker.no_sideways()


def test_the_wool_book_is_read_on_a_phone(flock, page):
    maker = Tapping(page, flock.address)
    for path in ("/wool-book", "/wool-book/balances", "/wool-book/B", "/fleeces/blend"):
        maker.go(path)
        maker.no_sideways()
    maker.go("/skeins/finish?yarn=grey two-ply&plan=pullover")
    maker.fill(turns=100, mass=68)
    maker.press("It is finished")
    skein = re.search(r"(G-\d+) is finished", _main(maker))
    assert skein
    maker.go("/wool-book/B")
    assert f"Bramble → {skein[1]}" in plain(maker.page.content())
    maker.no_sideways()


def _main(maker) -> str:
    return plain(maker.page.locator("main").inner_text())
