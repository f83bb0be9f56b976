"""What is installed is what is tracked, no more and no less, and runs from any folder."""

import subprocess
import zipfile
from pathlib import Path, PurePosixPath

import pytest
from hatchling.builders.wheel import WheelBuilder

from tests.running import running

ROOT = Path(__file__).parents[2]
BUNDLED = ("templates", "static", "migrations", "demo_data")


@pytest.fixture(scope="module")
def wheel(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("wheel")
    (built,) = WheelBuilder(str(ROOT)).build(directory=str(folder), versions=["standard"])
    return Path(built)


def _tracked() -> set[str]:
    """Files that git keeps, or would keep at the next commit."""
    asked = ["git", "ls-files", "--cached", "--others", "--exclude-standard"]
    told = subprocess.run(asked, cwd=ROOT, capture_output=True, text=True, check=True)
    return {name for name in told.stdout.splitlines() if (ROOT / name).exists()}


def _installed_as(name: str) -> str | None:
    top = PurePosixPath(name).parts[0]
    if top == "app":
        return name
    return f"app/_bundled/{name}" if top in BUNDLED else None


def test_the_wheel_holds_what_is_tracked_and_nothing_else(wheel: Path) -> None:
    with zipfile.ZipFile(wheel) as archive:
        found = {name for name in archive.namelist() if ".dist-info/" not in name}
    wanted = {name for tracked in _tracked() if (name := _installed_as(tracked))}
    assert found == wanted
    assert {name.split("/")[2] for name in found if "_bundled" in name} == {*BUNDLED}


def test_an_installed_copy_runs_from_any_folder(wheel: Path, tmp_path: Path) -> None:
    place = tmp_path / "site 100%"
    with zipfile.ZipFile(wheel) as archive:
        archive.extractall(place)
    with running("--data", tmp_path / "data", here=place) as program:
        page = program.page()
        assert "<h1" in page
        style = page.split('rel="stylesheet" href="/')[1].split('"')[0]
        assert "{" in program.page(style)
