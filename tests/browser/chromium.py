"""The browser that is already on the machine, driven by Playwright and kept from the network."""

import os
import shutil
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from playwright.sync_api import Browser

NAMES = (
    "chromium",
    "chromium-browser",
    "google-chrome",
    "google-chrome-stable",
    "chrome",
    "msedge",
)
PLACES = (
    "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
    "/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge",
    r"C:\Program Files\Google\Chrome\Application\chrome.exe",
    r"C:\Program Files (x86)\Microsoft\Edge\Application\msedge.exe",
)
FLAGS = (
    "--headless",
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
)
ASKED = "TALLYHANK_BROWSER"
"""Environment: "required" makes a missing browser a failure, "none" does as if there were none."""


def find_chromium() -> str | None:
    """The path of a browser, or None."""
    if os.environ.get(ASKED) == "none":
        return None
    found = (shutil.which(name) for name in NAMES)
    there = (place for place in PLACES if Path(place).exists())
    return next((one for one in found if one), None) or next(there, None)


def is_required() -> bool:
    return os.environ.get(ASKED) == "required"


@contextmanager
def launched(path: str) -> Iterator["Browser"]:
    """The running browser."""
    from playwright.sync_api import sync_playwright

    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=path, args=list(FLAGS))
        yield browser
        browser.close()
