"""A fade is taken on a part, seen in the picture, knit from row for row, and undone."""

import pytest

from tests.browser.cowl import a_cowl, fills, is_as_it_was, rows_in_picture, told, two_yarns
from tests.browser.maker import Maker, plain

pytestmark = pytest.mark.browser


@pytest.mark.parametrize("scripts", [True, False], ids=["with scripts", "without scripts"])
def test_a_fade_from_the_shelf_to_the_needles_and_back(empty, page, scripts):
    maker = Maker(page, empty.address)
    two_yarns(maker)
    a_cowl(maker)
    maker.press("Fill this for me")
    maker.page.get_by_role("button", name="Keep the proposal").wait_for()
    before = fills(maker)
    _fade(maker)
    words = told(maker)
    maker.press("Knit it so")
    assert "Begin the fade at round" in plain(maker.page.locator(".said").first.inner_text())
    assert fills(maker) != before
    maker.press("Undo")
    is_as_it_was(maker, before)
    _fade(maker)
    maker.press("Knit it so")
    maker.press("Fill this for me")
    maker.reads("Enough")
    assert rows_in_picture(maker) == words
    _strip(maker, words)
    if scripts:
        _keeps_the_place(maker)
    _printed(maker)


def _fade(maker):
    maker.follow("Alternate or fade")
    maker.reads("Which yarns take turns?")
    maker.fill(yarn_2="Madder single", to_row=100)
    maker.press("See what comes of it")
    maker.reads("Begin the fade at round")
    maker.reads("Grey two-ply ends with round 100.")
    assert maker.page.locator(".told li").count() > 5


def _strip(maker, told):
    maker.follow("Knit from it")
    maker.reads(f"Round 1 of 120: {told[0]}")
    box = maker.page.locator(".strip .now a").bounding_box()
    assert box["height"] >= 44
    for row in (2, 3):
        maker.page.locator(".strip .now a").click()
        maker.reads(f"Round {row} of 120: {told[row - 1]}")
    maker.page.set_viewport_size({"width": 360, "height": 740})
    wide = maker.page.evaluate("document.documentElement.scrollWidth")
    assert wide <= 360


def _keeps_the_place(maker):
    address = maker.page.url.split("?")[0]
    maker.page.goto(address)
    maker.page.wait_for_url("**/rows?at=3")
    maker.reads("Round 3 of 120")


def _printed(maker):
    maker.follow("Sheet to print")
    assert maker.page.locator("table.to-tick tbody tr").count() > 5
    maker.page.set_viewport_size({"width": 1280, "height": 900})
    maker.follow("Back to Cowl")
