"""Pages that say what is at fault are as sound as those that do not: axe finds nothing in them."""

import re

import pytest

from tests.browser.maker import Maker

pytestmark = pytest.mark.browser

DESIGN = "/garments/new/design?construction=cardigan%2C+round+yoke&person_id="
GARMENT = re.compile(r"/garments/[0-9a-z]{20}")
WIDTHS = (360, 1280)
SIDEWAYS = "document.documentElement.scrollWidth > document.documentElement.clientWidth"


def faults_seen(page, status: int | None) -> list[str]:
    """What axe finds and what is wider than the window; the page itself must say its fault."""
    from axe_playwright_python.sync_playwright import Axe

    assert status in (None, 422)
    assert page.locator(".fault").count() >= 1
    found = []
    for width in WIDTHS:
        page.set_viewport_size({"width": width, "height": 800})
        found += [f"wide at {width}"] if page.evaluate(SIDEWAYS) else []
        for scheme in ("light", "dark"):
            page.emulate_media(color_scheme=scheme)
            violations = Axe().run(page).response["violations"]
            found += [f"{one['id']} at {width}, {scheme}" for one in violations]
    return found


def pressed(page, words: str) -> int:
    """The status of the page that a button which saves leads to."""
    with page.expect_response(lambda answer: answer.request.method == "POST") as gone:
        page.get_by_role("button", name=words, exact=True).first.click()
    page.wait_for_load_state()
    return gone.value.status


def test_a_design_that_is_posted_with_a_fault(empty, page):
    """A chest in a unit that is no length."""
    maker = Maker(page, empty.address)
    maker.go(DESIGN)
    maker.fill(gauge_stitches=22, gauge_rows=30, measure_chest="900 stone")
    status = pressed(page, "Plan it")
    assert page.locator("#e-measure_chest").count() == 1
    assert faults_seen(page, status) == []


def test_a_change_of_a_design_that_cannot_be(empty, page):
    maker = Maker(page, empty.address)
    maker.go(DESIGN)
    maker.fill(gauge_stitches=22, gauge_rows=30)
    assert pressed(page, "Plan it") == 303
    page.wait_for_url(GARMENT)
    maker.follow("Its measurements, ease and choices")
    maker.fill(measure_chest="6")
    status = pressed(page, "Save the change")
    assert faults_seen(page, status) == []
    assert page.locator("#f-measure_chest").input_value() == "6"


def test_small_sums_asked_with_a_fault(empty, page):
    maker = Maker(page, empty.address)
    maker.go(DESIGN)
    maker.fill(gauge_stitches=22, gauge_rows=30)
    assert pressed(page, "Plan it") == 303
    page.wait_for_url(GARMENT)
    garment = page.url.split("#")[0].split("?")[0]
    answer = page.goto(f"{garment}/sums?buttons=many&end=-1")
    assert faults_seen(page, answer.status) == []
    page.goto(garment)
    page.locator(".small-sums > summary").click()
    page.locator("#sums #f-buttons").fill("many")
    page.keyboard.press("Tab")
    page.locator("#sums .fault").first.wait_for()
    assert faults_seen(page, None) == []
