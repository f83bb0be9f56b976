"""Pictures of every page of the demo: `python -m tests.browser.screenshots FOLDER`.

Each page at 360, 390 and 1280 px, light and dark, and the printed pages as PDF, to be looked at.
"""

import subprocess
import sys
from pathlib import Path
from tempfile import TemporaryDirectory

from app import paths
from tests.browser.chromium import find_chromium, launched
from tests.browser.every_page import every_page, kind_of
from tests.running import Running, command, running

WIDTHS = (360, 390, 1280)
SCHEMES = ("light", "dark")


def main(folder: Path) -> None:
    """Take every picture into a folder."""
    browser_path = find_chromium()
    if browser_path is None:
        sys.exit("There is no Chromium, Chrome or Edge on this machine.")
    folder.mkdir(parents=True, exist_ok=True)
    with TemporaryDirectory() as data, launched(browser_path) as browser:
        subprocess.run(command("--data", data, "import", paths.DEMO), check=True)
        with running("--data", data) as program:
            take_all(browser.new_page(), program, folder)


def take_all(page, program: Running, folder: Path) -> None:
    for number, address in enumerate(every_page(program)):
        name = f"{number:02}{kind_of(address).replace('/', '-').replace('*', 'one')}"
        page.goto(program.address + address[1:])
        for scheme in SCHEMES:
            page.emulate_media(color_scheme=scheme)
            for width in WIDTHS:
                page.set_viewport_size({"width": width, "height": 900})
                page.screenshot(path=folder / f"{name}-{width}-{scheme}.png", full_page=True)
        if address.endswith("/print"):
            page.emulate_media(color_scheme="light")
            for paper in ("A4", "Letter"):
                page.pdf(path=folder / f"{name}-{paper}.pdf", format=paper)


if __name__ == "__main__":
    main(Path(sys.argv[1]))
