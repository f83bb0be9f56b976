"""A photo is added from a file, its colour taken by a press, with scripts and without."""

import re
import subprocess
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from app import paths
from tests.browser.maker import Maker
from tests.pictures import halves, written
from tests.running import Running, command, running

pytestmark = pytest.mark.browser


@pytest.fixture
def skein(page: Any, own: Running) -> str:
    """The address of a skein of the demo, in a book of one's own."""
    page.goto(f"{own.address}skeins")
    return page.locator("tbody th a").first.get_attribute("href")


@pytest.fixture
def own(tmp_path: Path) -> Iterator[Running]:
    subprocess.run(
        command("--data", tmp_path / "d", "import", paths.DEMO), check=True, capture_output=True
    )
    with running("--data", tmp_path / "d") as program:
        yield program


def is_red(colour: str) -> bool:
    found = re.search("#([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})", colour)
    assert found, colour
    red, green, blue = (int(one, 16) for one in found.groups())
    return red > 150 and green < 60 and blue < 60


@pytest.mark.parametrize("scripts", [True, False])
def test_the_colour_is_that_of_the_place_that_was_pressed(
    page: Any, own: Running, skein: str, tmp_path: Path, scripts: bool
) -> None:
    from axe_playwright_python.sync_playwright import Axe

    picture = tmp_path / "two halves.png"
    picture.write_bytes(written(halves(900, 1200), "PNG"))
    page.set_viewport_size({"width": 360, "height": 800})
    maker = Maker(page, own.address)
    maker.go(skein)
    maker.follow("Add a photo")
    page.set_input_files("#f-picture", picture)
    maker.fill(caption="on the line")
    maker.press("Keep this photo")
    photo = page.locator(".photos a").first
    assert photo.locator("img").evaluate("one => one.decode().then(() => one.naturalWidth)") == 900
    with page.expect_navigation():
        photo.click()
    for half, red in ((80, True), (240, False)):
        page.locator("summary", has_text="Take the colour").click()
        with page.expect_navigation():
            page.locator("input[type=image]").click(position={"x": half, "y": 200})
        assert is_red(page.locator("#colour + p").inner_text()) == red, scripts
        assert page.evaluate("() => document.documentElement.scrollWidth") == 360
    if scripts:
        for address in (page.url, f"{own.address}{skein[1:]}/photos"):
            page.goto(address)
            assert [one["id"] for one in Axe().run(page).response["violations"]] == []


def test_the_keyboard_alone_takes_a_colour(
    page: Any, own: Running, skein: str, tmp_path: Path
) -> None:
    picture = tmp_path / "a.jpg"
    picture.write_bytes(written(halves(800, 600)))
    maker = Maker(page, own.address)
    maker.go(f"{skein}/photos")
    page.set_input_files("#f-picture", picture)
    maker.press("Keep this photo")
    with page.expect_navigation():
        page.locator(".photos a").first.click()
    page.locator("summary", has_text="Take the colour").focus()
    page.keyboard.press("Enter")
    page.locator("#f-place").select_option("left")
    page.locator("input[type=image]").focus()
    with page.expect_navigation():
        page.keyboard.press("Enter")
    assert is_red(page.locator("#colour + p").inner_text())
