"""A fade is taken on a part, seen in the picture, knit from row for row, and undone."""

import re

import pytest

from tests.browser.maker import Maker, plain

pytestmark = pytest.mark.browser

GREY, MADDER = "#8a8a86", "#a3402f"


@pytest.mark.parametrize("scripts", [True, False], ids=["with scripts", "without scripts"])
def test_a_fade_from_the_shelf_to_the_needles_and_back(empty, page, scripts):
    maker = Maker(page, empty.address)
    _two_yarns(maker)
    _a_cowl(maker)
    fills = _fills(maker)
    _fade(maker)
    told = _told(maker)
    maker.press("Knit it so")
    assert "Begin the fade at round" in plain(maker.page.locator(".said").first.inner_text())
    assert _fills(maker) != fills
    maker.press("Undo")
    _is_as_it_was(maker, fills)
    _fade(maker)
    maker.press("Knit it so")
    maker.press("Fill this for me")
    maker.reads("Enough")
    assert _rows_in_picture(maker) == told
    _strip(maker, told)
    if scripts:
        _keeps_the_place(maker)
    _printed(maker)


def _two_yarns(maker):
    for name, colour in (("Grey two-ply", GREY), ("Madder single", MADDER)):
        maker.go("/yarns/new")
        maker.fill(name=name, plies=2)
        maker.page.locator("#f-colour").evaluate("(one, colour) => one.value = colour", colour)
        maker.page.locator("#f-colour-known").check()
        maker.press("Save")
        maker.go("/skeins/new")
        maker.fill(girth="1.5", turns=90, mass=60, yarn=name)
        maker.press("Add the skein")


def _a_cowl(maker):
    """120 rounds of 80 stitches at 22 × 30: 174 m; there are 135 m of each yarn."""
    maker.go("/garments/new")
    maker.fill(name="Cowl", gauge_stitches=22, gauge_rows=30, yarn_id="Grey two-ply")
    maker.press("Plan it")
    maker.follow("Add a part")
    maker.fill(name="Body", counted_stitches=80, counted_rows=120)
    maker.press("Add the part")
    maker.press("Fill this for me")
    maker.page.get_by_role("button", name="Keep the proposal").wait_for()


def _fade(maker):
    maker.follow("Alternate or fade")
    maker.reads("Which yarns take turns?")
    maker.fill(yarn_2="Madder single", to_row=100)
    maker.press("See what comes of it")
    maker.reads("Begin the fade at round")
    maker.reads("Grey two-ply ends with round 100.")
    assert maker.page.locator(".told li").count() > 5


def _told(maker):
    """The yarn of every row, read from the text to knit from as a knitter would."""
    rows = []
    for line in maker.page.locator(".told li").all_inner_texts():
        which, words = plain(line).split(": ")
        first, last = (re.findall(r"\d+", which) * 2)[:2]
        assert int(first) == len(rows) + 1
        times = re.search(r"; (\d+) times in all", words)
        once = [
            yarn
            for part in words.split("; ")[0].split(", ")
            for yarn in _stretch(part, int(last) - int(first) + 1)
        ]
        rows += once * (int(times[1]) if times else 1)
        assert len(rows) == int(last)
    return rows


def _stretch(part, whole):
    counted = re.match(r"(\d+) rounds? (.+)", part)
    return [counted[2]] * int(counted[1]) if counted else [part] * whole


def _is_as_it_was(maker, fills):
    for _ in range(100):
        if _fills(maker) == fills:
            return
        maker.page.wait_for_timeout(50)
    raise AssertionError("the picture is not what it was before the fade")


def _rows_in_picture(maker):
    """The yarn of every row from below, by the colour and the height of its band in the picture."""
    bands = maker.page.locator("figure.garment svg").first.evaluate(BANDS, [GREY, MADDER])
    low = max(bottom for _, _, bottom in bands)
    high = min(top for _, top, _ in bands)
    row = (low - high) / 120
    names = {GREY: "Grey two-ply", MADDER: "Madder single"}
    rows = []
    for fill, top, bottom in sorted(bands, key=lambda one: -one[2]):
        rows += [names[fill]] * round((bottom - top) / row)
    return rows


BANDS = """(svg, colours) => [...svg.querySelectorAll('polygon')]
  .filter(one => colours.includes(one.getAttribute('fill')))
  .map(one => {
    const ys = one.getAttribute('points').trim().split(/\\s+/).map(p => Number(p.split(',')[1]));
    return [one.getAttribute('fill'), Math.min(...ys), Math.max(...ys)];
  })"""


def _fills(maker):
    found = maker.page.locator("figure.garment svg").first
    return found.evaluate("svg => svg.innerHTML")


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
