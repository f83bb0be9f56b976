"""A cowl of 120 rounds, two yarns for it, and what of them its words and its picture tell."""

import re

from tests.browser.maker import plain

GREY, MADDER = "#8a8a86", "#a3402f"


def two_yarns(maker):
    for name, colour in (("Grey two-ply", GREY), ("Madder single", MADDER)):
        maker.go("/yarns/new")
        maker.fill(name=name, plies=2)
        maker.page.locator("#f-colour").evaluate("(one, colour) => one.value = colour", colour)
        maker.page.locator("#f-colour-known").check()
        maker.press("Save")
        maker.go("/skeins/new")
        maker.fill(girth="1.5", turns=90, mass=60, yarn=name)
        maker.press("Add the skein")


def a_cowl(maker):
    """120 rounds of 80 stitches at 22 × 30: 174 m; there are 135 m of each yarn."""
    maker.go("/garments/new")
    maker.fill(name="Cowl", gauge_stitches=22, gauge_rows=30, yarn_id="Grey two-ply")
    maker.press("Plan it")
    maker.follow("Add a part")
    maker.fill(name="Body", counted_stitches=80, counted_rows=120)
    maker.press("Add the part")


def told(maker):
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


def is_as_it_was(maker, before):
    for _ in range(100):
        if fills(maker) == before:
            return
        maker.page.wait_for_timeout(50)
    raise AssertionError("the picture is not what it was before the fade")


def rows_in_picture(maker):
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


def fills(maker):
    found = maker.page.locator("figure.garment svg").first
    return found.evaluate("svg => svg.innerHTML")
