"""Labels on paper lie where the sheet has them, to half a millimetre, and are read on a screen."""

import re
import subprocess
from pathlib import Path
from shutil import which
from typing import Any

import pytest

from app.craft.label_sheets import SHEETS, LabelSheet

pytestmark = pytest.mark.browser

POINTS_PER_MM = 72 / 25.4
WITHIN_MM = 0.5
WHERE = """() => [...document.querySelectorAll(".label")].map(one => {
  const box = one.getBoundingClientRect();
  const sheet = one.closest(".label-sheet").getBoundingClientRect();
  return [box.left - sheet.left, box.top - sheet.top, box.width, box.height]
    .map(px => px * 25.4 / 96);
})"""


def boxes(page: Any, address: str) -> list[list[float]]:
    """Left, top, width and height in mm of every place of a label, on its sheet."""
    page.goto(address)
    page.emulate_media(media="print")
    found = page.evaluate(WHERE)
    page.emulate_media(media="screen")
    return found


@pytest.mark.parametrize("sheet", SHEETS, ids=lambda sheet: sheet.key)
def test_every_label_is_in_its_place_and_true_to_size(page, demo, sheet: LabelSheet):
    found = boxes(page, f"{demo.address}labels?sheet={sheet.key}&start=2")
    assert len(found) > 20
    for at, box in enumerate(found):
        row, column = divmod(at % sheet.count, sheet.columns)
        left = sheet.left_mm + column * sheet.across_mm
        top = sheet.top_mm + row * sheet.down_mm
        assert box == pytest.approx([left, top, sheet.width_mm, sheet.height_mm], abs=0.1), at


@pytest.mark.parametrize("key", ["a4-24", "a4-tags", "letter-30"])
def test_the_paper_has_them_there_too(page, demo, tmp_path: Path, key: str):
    sheet = next(one for one in SHEETS if one.key == key)
    page.goto(f"{demo.address}labels?sheet={key}")
    codes = page.locator(".label .code").all_inner_texts()
    file = tmp_path / "labels.pdf"
    page.pdf(path=file, prefer_css_page_size=True)
    media = re.findall(rb"/MediaBox ?\[0 0 ([\d.]+) ([\d.]+)\]", file.read_bytes())
    assert len(media) == -(-len(codes) // sheet.count)
    for size in media:
        in_mm = [float(one) / POINTS_PER_MM for one in size]
        assert in_mm == pytest.approx(sheet.paper_mm, abs=WITHIN_MM)
    if tool := which("pdftotext"):
        for code, (x, y) in places_of(tool, file, codes[: sheet.count]).items():
            row, column = divmod(codes.index(code), sheet.columns)
            left = sheet.left_mm + column * sheet.across_mm + sheet.qr_mm
            top = sheet.top_mm + row * sheet.down_mm
            assert left - 1 < x < left + 4, code
            assert top < y < top + sheet.height_mm / 2, code


def places_of(tool: str, file: Path, words: list[str]) -> dict[str, tuple[float, float]]:
    """Where words of the first page begin, in mm from its left and top."""
    told = subprocess.run([tool, "-bbox", "-l", "1", file, "-"], capture_output=True, check=True)
    found = re.findall(r'xMin="([\d.]+)" yMin="([\d.]+)"[^>]*>([^<]+)<', told.stdout.decode())
    places = {
        word: (float(x) / POINTS_PER_MM, float(y) / POINTS_PER_MM)
        for x, y, word in found
        if word in words
    }
    assert len(places) > len(words) / 2
    return places


def test_nothing_of_the_page_but_labels_is_on_paper(page, demo):
    page.goto(f"{demo.address}labels")
    page.emulate_media(media="print")
    assert "Begin at label" not in page.locator("body").inner_text()
    assert page.evaluate("() => getComputedStyle(document.body).backgroundColor") in (
        "rgb(255, 255, 255)",
        "rgba(0, 0, 0, 0)",
    )


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("width", [360, 390, 1280])
def test_the_page_fits_its_window_and_axe_finds_nothing(page, demo, scheme: str, width: int):
    from axe_playwright_python.sync_playwright import Axe

    page.emulate_media(color_scheme=scheme)
    page.set_viewport_size({"width": width, "height": 800})
    page.goto(f"{demo.address}labels?sheet=letter-6&start=3")
    assert page.evaluate("() => document.documentElement.scrollWidth") == width
    assert [one["id"] for one in Axe().run(page).response["violations"]] == []


@pytest.mark.parametrize("scripts", [True, False])
def test_one_is_left_out_by_its_tick(page, demo, scripts: bool):
    page.goto(f"{demo.address}labels")
    before = page.locator(".label .code").all_inner_texts()
    page.locator("summary", has_text="Which of them").click()
    page.get_by_label(before[1], exact=True).uncheck()
    with page.expect_navigation():
        page.get_by_role("button", name="Show").click()
    assert page.locator(".label .code").all_inner_texts() == [before[0], *before[2:]], scripts
