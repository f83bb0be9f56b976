"""The picture of a garment in a real browser: words with room, ink that is seen, and how it changes
with what is put in its places."""

import re
import subprocess

import pytest

from app import paths
from tests.browser.maker import Maker
from tests.running import command, running

pytestmark = pytest.mark.browser

WORDS_IN_EACH_OTHERS_WAY = """() => {
  const drawn = document.querySelector(".garment-picture");
  if (!drawn) return null;
  const words = [...drawn.querySelectorAll("text")]
    .map(one => [one.textContent.trim(), one.getBBox()]);
  const meet = (a, b) => a.x < b.x + b.width && b.x < a.x + a.width
    && a.y < b.y + b.height && b.y < a.y + a.height;
  const faults = words.filter(([_, box]) => box.x < 0 || box.x + box.width > 360)
    .map(one => one[0]);
  words.forEach(([one, a], at) => words.slice(at + 1).forEach(([other, b]) => {
    if (meet(a, b)) faults.push(`${one} and ${other}`);
  }));
  return faults;
}"""
OUTLINE_AND_GROUND = """() => [
  getComputedStyle(document.querySelector(".garment .outline")).stroke,
  getComputedStyle(document.querySelector(".garment")).backgroundColor,
]"""


def garments(addresses: list[str]) -> list[str]:
    return [one for one in addresses if re.fullmatch(r"/garments/[0-9a-z]{20}", one)]


def test_no_words_are_in_each_others_way(page, demo, addresses):
    page.set_viewport_size({"width": 390, "height": 900})
    seen = 0
    for address in garments(addresses):
        page.goto(demo.address + address[1:])
        faults = page.evaluate(WORDS_IN_EACH_OTHERS_WAY)
        seen += faults is not None
        assert not faults, f"{address}: {faults}"
    assert seen >= 5


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_outlines_are_seen_against_the_ground(page, demo, addresses, scheme):
    page.emulate_media(color_scheme=scheme)
    for address in garments(addresses):
        page.goto(demo.address + address[1:])
        if page.locator(".garment").count():
            outline, ground = page.evaluate(OUTLINE_AND_GROUND)
            assert contrast(outline, ground) >= 3


def contrast(one: str, other: str) -> float:
    """Of two colours as a browser tells them, by WCAG 2.2."""
    dark, light = sorted(
        luminance([int(part) for part in re.findall(r"\d+", each)[:3]]) for each in (one, other)
    )
    return (light + 0.05) / (dark + 0.05)


def luminance(rgb: list[int]) -> float:
    linear = [c / 3294.6 if c <= 10 else ((c / 255 + 0.055) / 1.055) ** 2.4 for c in rgb]
    return sum(part * weight for part, weight in zip(linear, (0.2126, 0.7152, 0.0722), strict=True))


@pytest.fixture
def own_demo(tmp_path):
    subprocess.run(command("--data", tmp_path, "import", paths.DEMO), check=True)
    with running("--data", tmp_path) as program:
        yield program


@pytest.mark.parametrize("scripts", [True, False], ids=["with scripts", "without scripts"])
def test_a_skein_put_in_its_place_is_seen_at_once(own_demo, page):
    maker = Maker(page, own_demo.address)
    maker.go("/garments")
    maker.follow("Grey cardigan")
    picture = page.locator(".garment-picture")
    before = picture.inner_html()
    told = page.locator(".picture-words").inner_text()
    assert "T-01" in told
    assert "T-03" not in told
    page.get_by_role("link", name=re.compile("Put a skein here.*Fronts")).click()
    page.get_by_role("radio", name=re.compile("^T-03")).check()
    maker.press("Put it here")
    page.locator(".picture-words", has_text="T-03").wait_for()
    assert picture.inner_html() != before
    assert page.locator(".garment-picture text", has_text="T-03").count() >= 1
