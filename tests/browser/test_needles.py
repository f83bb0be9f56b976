"""On the needles in a real browser: rows ticked off and a ball weighed without a connection, two
devices on one garment, and all of it on a narrow screen."""

from datetime import date
from pathlib import Path
from typing import Any

import pytest

from app.book.event import Line
from app.book.knitting import CastOn
from app.store.engine import open_store
from app.store.fill import fill
from app.store.records import load_book, post
from tests.books import a_book, a_part, a_plan, a_promise, a_skein, a_yarn, some_progress
from tests.browser.maker import plain
from tests.running import Running, running

pytestmark = pytest.mark.browser

NARROW = {"width": 360, "height": 740}
LEAST_PX = 44
ARMS_LENGTH_PX = 16
"""A figure that is read at arm's length is at least so high: 0.4 degrees at 60 cm."""

NEEDLES = "garments/pullover/needles"
BODY = f"{NEEDLES}/body/1"


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """A pullover on the needles: 20 rounds of its body are done, three skeins are promised."""
    skeins = ("G-1", "G-2", "G-3")
    book = a_book(
        a_yarn(colour="#8a8378"),
        *(a_skein(one) for one in skeins),
        a_plan(name="Pullover", state="being knit", cast_on=CastOn(date(2026, 4, 30))),
        a_part(place="body", in_round=True, edges="cast on and off"),
        a_part("sleeves", position=2, copies=2, place="sleeve", in_round=True),
        *(a_promise(one, 200_000) for one in skeins),
        some_progress(rows=20),
    )
    found = tmp_path / "data"
    store = open_store(found)
    with store.writing() as session:
        fill(session, book)
        for id in skeins:
            lines = (Line(id, 96_000, 213_000), Line("come in", -96_000))
            post(session, "arrive", date(2026, 4, 30), lines)
    store.close()
    return found


@pytest.fixture
def program(folder: Path):
    with running("--data", folder) as found:
        yield found


class Phone:
    """A browser of its own on a narrow screen, with its own store, that can lose its connection."""

    def __init__(self, browser: Any, program: Running, **more: object) -> None:
        self.context = browser.new_context(viewport=NARROW, locale="en-GB", **more)
        self.page = self.context.new_page()
        self.page.set_default_timeout(20_000)
        self.address = program.address

    def go(self, path: str) -> None:
        self.page.goto(self.address + path)

    def tick(self, times: int = 1) -> None:
        for _ in range(times):
            self.page.locator("button.now").click()

    def done(self) -> int:
        return int(self.page.locator("[data-done]").inner_text())

    def waits(self) -> str:
        box = self.page.locator("#waiting")
        return plain(box.inner_text()) if box.is_visible() else ""

    def kept(self) -> int:
        return int(
            self.page.evaluate(
                "JSON.parse(localStorage.getItem(localStorage.key(0)) ?? '[]').length"
            )
        )

    def until_sent(self) -> None:
        for _ in range(200):
            if self.kept() == 0 and not self.waits():
                return
            self.page.wait_for_timeout(50)
        raise AssertionError(f"still kept: {self.waits()}")

    def until_kept(self, words: str = "Kept on this device") -> None:
        self.page.get_by_text(words).wait_for()


@pytest.fixture
def phone(browser, program):
    found = Phone(browser, program)
    yield found
    found.context.close()


def book_in(folder: Path):
    store = open_store(folder)
    try:
        with store.reading() as session:
            return load_book(session)
    finally:
        store.close()


def body_rows(program: Running) -> int:
    """What the program itself has, asked anew."""
    text = program.page(BODY)
    return int(text.split("data-done>")[1].split("<")[0])


def test_ten_rows_are_kept_without_a_connection(phone, program):
    phone.go(NEEDLES)
    phone.go(BODY)
    phone.context.set_offline(True)
    phone.tick(10)
    assert phone.done() == 30
    phone.until_kept("Kept on this device, to be sent: 10 ticks.")
    assert phone.page.locator(".now .row-number").inner_text() == "Round 31"
    assert body_rows(program) == 20
    phone.context.set_offline(False)
    phone.until_sent()
    assert body_rows(program) == 30
    assert phone.kept() == 0


def test_a_weighing_is_kept_and_sent_with_the_rows_it_was_typed_at(phone, folder):
    phone.go(NEEDLES)
    phone.context.set_offline(True)
    phone.page.locator("#f-weight").fill("61")
    phone.page.get_by_role("button", name="Keep the weighing").click()
    phone.until_kept("Kept on this device, to be sent: one weighing.")
    phone.context.set_offline(False)
    phone.until_sent()
    (one,) = book_in(folder).weighings
    assert (one.rows, one.mg, one.holding_id) == (20, 61_000, "G-1")


def test_rows_and_a_weighing_survive_a_closed_page(phone, program, folder):
    """Ticked off on the strip, weighed on a page that was open as well; then both are closed."""
    phone.go(BODY)
    other = phone.context.new_page()
    other.goto(program.address + NEEDLES)
    phone.context.set_offline(True)
    phone.tick(10)
    other.locator("#f-weight").fill("58")
    other.get_by_role("button", name="Keep the weighing").click()
    other.get_by_text("one weighing").wait_for()
    other.close()
    phone.page.close()
    phone.context.set_offline(False)
    phone.page = phone.context.new_page()
    phone.go(BODY)
    phone.until_sent()
    assert body_rows(program) == 30
    (one,) = book_in(folder).weighings
    assert (one.rows, one.mg) == (30, 58_000)


def test_ten_rows_and_a_weighing_on_the_strip_itself(phone, program, folder):
    """Three ticks are counted, then the connection goes; the weighing is of the row it was typed
    at, though two rows were ticked off after it."""
    phone.go(BODY)
    phone.tick(3)
    phone.until_sent()
    phone.context.set_offline(True)
    phone.tick(5)
    phone.page.get_by_text("Weigh a ball").click()
    phone.page.locator("#f-weight").fill("50")
    phone.page.get_by_role("button", name="Keep the weighing").click()
    phone.until_kept("5 ticks and one weighing.")
    phone.tick(2)
    assert phone.done() == 30
    phone.context.set_offline(False)
    phone.until_sent()
    (one,) = book_in(folder).weighings
    assert (one.rows, one.mg) == (28, 50_000)
    assert body_rows(program) == 30


def test_an_answer_that_was_lost_counts_once(phone, program):
    """The program has counted the tick, but its answer never came: it is sent again."""
    phone.go(BODY)
    lost = []

    def lose(route):
        lost.append(route.fetch().status)
        route.abort()

    phone.page.route("**/ticks", lose)
    phone.tick(3)
    phone.until_kept()
    phone.page.wait_for_timeout(300)
    assert lost[0] == 200
    assert phone.done() == 23
    phone.page.unroute("**/ticks")
    phone.until_sent()
    assert body_rows(program) == 23
    assert phone.done() == 23


def test_two_devices_on_one_garment(browser, phone, program):
    other = Phone(browser, program)
    other.go(BODY)
    phone.go(BODY)
    phone.context.set_offline(True)
    phone.tick(3)
    other.tick(2)
    other.until_sent()
    assert other.done() == 22
    phone.context.set_offline(False)
    phone.until_sent()
    assert phone.done() == 25
    assert body_rows(program) == 25
    other.tick()
    other.until_sent()
    assert other.done() == 26
    other.context.close()


def test_an_odd_weighing_kept_without_a_connection_is_asked_about_later(phone, folder):
    phone.go(NEEDLES)
    phone.context.set_offline(True)
    phone.page.locator("#f-weight").fill("104")
    phone.page.get_by_role("button", name="Keep the weighing").click()
    phone.until_kept()
    phone.context.set_offline(False)
    phone.page.get_by_role("button", name="Look at it").click()
    assert "is more. Is it this ball?" in plain(phone.page.locator("#asked").inner_text())
    assert book_in(folder).weighings == ()
    phone.page.get_by_role("button", name="Yes, it is right").click()
    phone.page.locator("#said").wait_for()
    assert phone.kept() == 0
    assert [one.mg for one in book_in(folder).weighings] == [104_000]


def test_an_odd_weighing_is_left_out(phone, folder):
    phone.go(NEEDLES)
    phone.page.locator("#f-weight").fill("104")
    phone.page.get_by_role("button", name="Keep the weighing").click()
    phone.page.get_by_role("link", name="No, leave it out").click()
    phone.page.locator("#weigh").wait_for()
    assert phone.kept() == 0
    assert book_in(folder).weighings == ()


def test_weighed_in_three_taps_after_the_number(phone, folder):
    phone.go(BODY)
    phone.page.get_by_text("Weigh a ball").click()
    phone.page.locator("#f-weight").fill("61")
    phone.page.get_by_role("button", name="Keep the weighing").click()
    assert "G-1 weighs 61 g at row 20." in plain(phone.page.locator("#said").inner_text())
    phone.page.get_by_role("button", name="Undo").first.click()
    assert "Undone" in plain(phone.page.locator("#said").inner_text())
    assert book_in(folder).weighings == ()


def test_one_back_and_several_at_once(phone, program):
    phone.go(BODY)
    phone.page.locator("#f-up_to").fill("26")
    phone.page.get_by_role("button", name="Tick them off").click()
    assert phone.done() == 26
    phone.page.get_by_role("button", name="One back").click()
    assert phone.done() == 25
    phone.until_sent()
    assert body_rows(program) == 25


def test_to_the_end(phone, program):
    phone.go(BODY)
    phone.page.locator("#f-up_to").fill("119")
    phone.page.get_by_role("button", name="Tick them off").click()
    assert "then cast off 229" in plain(phone.page.locator(".now").inner_text())
    phone.tick()
    assert phone.page.locator("[data-all]").is_visible()
    assert not phone.page.locator("button.now").is_visible()
    phone.until_sent()
    assert body_rows(program) == 120


def test_both_sleeves_without_scripts(browser, program):
    phone = Phone(browser, program, java_script_enabled=False)
    phone.go(f"{NEEDLES}/sleeves/1?together=1")
    phone.tick(2)
    assert phone.done() == 2
    phone.go(f"{NEEDLES}/sleeves/2")
    assert phone.done() == 2
    phone.page.get_by_role("button", name="One back").click()
    assert phone.done() == 1
    phone.go(NEEDLES)
    phone.page.locator("#f-weight").fill("104")
    phone.page.get_by_role("button", name="Keep the weighing").click()
    phone.page.get_by_role("button", name="Yes, it is right").click()
    assert "G-1 weighs 104 g" in plain(phone.page.locator("#said").inner_text())
    phone.context.close()


SMALL = """least => [...document.querySelectorAll(
  'main a, main button, main input:not([type=hidden]), main select, main summary')]
  .filter(one => one.checkVisibility() && !one.closest('p:not(.press), li:not(.pieces li)'))
  .map(one => [one.outerHTML.slice(0, 80), one.getBoundingClientRect()])
  .filter(([, box]) => box.height < least - 0.5 || box.width < least - 0.5)
  .map(([html, box]) => `${html} ${box.width} × ${box.height}`)"""
TYPE = """one => parseFloat(getComputedStyle(one).fontSize)"""


@pytest.mark.parametrize("path", [NEEDLES, BODY, f"{NEEDLES}/sleeves/1?together=1"])
def test_every_target_on_a_narrow_screen(phone, path):
    phone.go(path)
    assert phone.page.evaluate("document.documentElement.scrollWidth") <= NARROW["width"]
    assert phone.page.evaluate(SMALL, LEAST_PX) == []


def test_the_strip_is_read_at_arm_s_length(phone):
    phone.go(BODY)
    assert phone.page.locator(".now .row-number").evaluate(TYPE) >= 2 * ARMS_LENGTH_PX
    for what in (
        ".now .count",
        ".now .yarn",
        ".strip li:visible .row-number",
        ".strip li:visible .count",
    ):
        assert phone.page.locator(what).first.evaluate(TYPE) >= ARMS_LENGTH_PX, what
    top = phone.page.locator("button.now").bounding_box()
    assert top["width"] >= NARROW["width"] - 40
    assert top["height"] >= 2 * LEAST_PX


@pytest.mark.parametrize("theme", ["light", "dark"])
@pytest.mark.parametrize("path", [NEEDLES, BODY])
def test_axe_finds_nothing(phone, path, theme):
    from axe_playwright_python.sync_playwright import Axe

    phone.page.emulate_media(color_scheme=theme)
    phone.go(path)
    found = Axe().run(phone.page).response["violations"]
    assert [(one["id"], one["nodes"][0]["html"]) for one in found] == []
