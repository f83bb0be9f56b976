"""A real browser on the real program; skipped with a sentence where there is no browser."""

import subprocess
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from app import paths
from tests.browser.chromium import find_chromium, is_required, launched
from tests.browser.every_page import every_page
from tests.running import Running, command, running


@pytest.fixture(scope="session")
def browser() -> Iterator[Any]:
    path = find_chromium()
    if path is None:
        if is_required():
            pytest.fail("A browser is required here, and there is none.")
        pytest.skip("There is no Chromium, Chrome or Edge on this machine.")
    with launched(path) as found:
        yield found


@pytest.fixture(scope="session")
def demo(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Running]:
    """The program on the demo; tests only look at it."""
    folder = tmp_path_factory.mktemp("demo")
    subprocess.run(command("--data", folder, "import", paths.DEMO), check=True, capture_output=True)
    with running("--data", folder) as program:
        yield program


@pytest.fixture(scope="session")
def addresses(browser: Any, demo: Running) -> list[str]:
    """Every page of the demo, looked for only where there is a browser to show them."""
    assert browser.is_connected()
    return every_page(demo)


@pytest.fixture
def empty(tmp_path: Path) -> Iterator[Running]:
    """The program on a book with nothing in it."""
    with running("--data", tmp_path / "data") as program:
        yield program


class Watched:
    """A page of the browser, and all it did that it should not have done."""

    def __init__(self, context: Any) -> None:
        self.page = context.new_page()
        self.page.set_default_timeout(10_000)
        self.faults: list[str] = []
        self.page.on("console", self._console)
        self.page.on("pageerror", lambda error: self.faults.append(f"script: {error}"))
        context.on("request", self._request)

    def _console(self, message: Any) -> None:
        # A browser also tells of pages that say 404 or 422, which are asked for on purpose.
        told = "Failed to load resource: the server responded with a status of 4"
        if message.type in ("error", "warning") and not message.text.startswith(told):
            self.faults.append(f"{message.type} at {self.page.url}: {message.text}")

    def _request(self, request: Any) -> None:
        if not request.url.startswith(("http://127.0.0.1:", "data:")):
            self.faults.append(f"asked {request.url}")


@pytest.fixture
def scripts() -> bool:
    """Whether pages may run scripts; a test that goes both ways overrides it."""
    return True


@pytest.fixture
def page(request: pytest.FixtureRequest, browser: Any, scripts: bool) -> Iterator[Any]:
    """A page in a fresh profile; afterwards nothing has left the machine, no script has failed
    and the content policy had nothing to refuse. The program is there before it and closed after
    it, since a page may still ask for a part of itself."""
    if "empty" in request.fixturenames:
        request.getfixturevalue("empty")
    context = browser.new_context(java_script_enabled=scripts, locale="en-GB")
    watched = Watched(context)
    yield watched.page
    context.close()
    assert watched.faults == []
