"""What a maker does on a page, in her words."""

import math
import re
import subprocess
from pathlib import Path
from shutil import which
from typing import Any

SWAPS = "one => typeof htmx !== 'undefined' && one.closest('[hx-get], [hx-post]') !== null"
"""Whether a control changes the page it stands on, rather than going to another."""


class Maker:
    """Somebody at a page of the program at `address`; works with scripts and without."""

    def __init__(self, page: Any, address: str) -> None:
        self.page = page
        self.address = address

    def go(self, path: str) -> None:
        self.page.goto(self.address + path.lstrip("/"))

    def follow(self, words: str) -> None:
        self._click(self.page.get_by_role("link", name=words).first)

    def press(self, words: str) -> None:
        self._click(self.page.get_by_role("button", name=words).first)

    def _click(self, control: Any) -> None:
        """Click, and wait for the next page; a swap within the page is waited for by its reader."""
        if control.evaluate(SWAPS):
            control.click()
        else:
            with self.page.expect_navigation():
                control.click()

    def fill(self, **fields: object) -> None:
        """Type into fields by their name in the form."""
        for name, value in fields.items():
            field = self.page.locator(f"#f-{name}").first
            folded = self.page.locator(f"details:not([open]):has(#f-{name}) > summary")
            if folded.count():
                folded.first.click()
            if field.evaluate("one => one.tagName") == "SELECT":
                field.select_option(label=str(value))
            else:
                field.fill(str(value))

    def choose(self, words: str | re.Pattern[str]) -> None:
        self.page.get_by_role("radio", name=words).first.check()

    def answer(self) -> str:
        """The sentence on top, on one line with plain spaces."""
        return plain(self.page.locator(".answer").first.inner_text())

    def reads(self, words: str) -> None:
        """Wait until the answer on top says so."""
        for _ in range(100):
            if words in self.answer():
                return
            self.page.wait_for_timeout(50)
        raise AssertionError(f"{words!r} is not in {self.answer()!r}")

    def cell(self, row: str, word: str) -> str:
        """The cell of a row that stands under a word."""
        rows = self.page.locator("tr", has_text=row)
        # Ways out come in by themselves, and may name the row before its own table does.
        return plain(rows.locator(f"[data-word='{word}']").first.inner_text())


def plain(text: str) -> str:
    """Text on one line; its narrow and unbreakable spaces are plain ones, but none in a number."""
    text = re.sub(r"(?<=\d)[\u2009\u202f\u00a0](?=\d{3})", "", text)
    return " ".join(text.split())


def metres(text: str) -> float:
    """The first length in a text."""
    found = re.search(r"(\d[\d.]*)(?: ± [\d.]+)? ?m\b", plain(text))
    assert found, f"no length in {text!r}"
    return float(found[1])


def printed(page: Any, folder: Path, paper: str) -> str:
    """What stands on the paper when a page is printed; what it would show, without pdftotext."""
    file = folder / f"{paper}.pdf"
    page.pdf(path=file, format=paper)
    assert paper_of(file) == paper
    tool = which("pdftotext")
    if tool is None:
        page.emulate_media(media="print")
        text = page.locator("body").inner_text()
        page.emulate_media(media="screen")
        return plain(text)
    told = subprocess.run([tool, "-raw", file, "-"], capture_output=True, check=True)
    return plain(told.stdout.decode())


def paper_of(file: Path) -> str:
    """The paper of a PDF's first page, by its size in points."""
    found = re.search(rb"/MediaBox ?\[0 0 ([\d.]+) ([\d.]+)\]", file.read_bytes())
    assert found, "no page in the PDF"
    wide, high = float(found[1]), float(found[2])
    return "A4" if abs(wide - 595) < 2 and abs(high - 842) < 2 else "Letter" if wide > 610 else "?"


def metres_of_plain_knit(stitches: int, rows: int, per_10_cm: tuple[float, float]) -> float:
    """Munden's plain knit, washed: a stitch takes √(21.6 / stitches per cm²) cm of yarn."""
    in_a_square_cm = per_10_cm[0] * per_10_cm[1] / 100
    return stitches * rows * math.sqrt(21.6 / in_a_square_cm) / 100
