"""What comes with the program is found, beside it or in an installed copy."""

import importlib.util
import shutil
from pathlib import Path

import pytest

from app import paths


def test_what_lies_beside_the_program_is_found() -> None:
    assert (paths.TEMPLATES / "base.html").is_file()
    assert (paths.STATIC / "css").is_dir()
    assert (paths.MIGRATIONS / "env.py").is_file()


def test_an_installed_copy_finds_its_own(tmp_path: Path) -> None:
    package = tmp_path / "app"
    (package / "_bundled").mkdir(parents=True)
    shutil.copy(paths.__file__, package / "paths.py")
    spec = importlib.util.spec_from_file_location("installed_paths", package / "paths.py")
    assert spec is not None
    assert spec.loader is not None
    installed = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(installed)
    for place in (installed.TEMPLATES, installed.STATIC, installed.MIGRATIONS, installed.DEMO):
        assert place.is_relative_to(package / "_bundled")


def test_the_demo_lies_apart_from_her_own_data(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    monkeypatch.setenv("HOME", str(tmp_path))
    for name in ("XDG_DATA_HOME", "XDG_CACHE_HOME"):
        monkeypatch.delenv(name, raising=False)
    own, demo = paths.own_data(), paths.demo_data()
    assert own.name == "tallyhank"
    assert not demo.is_relative_to(own)
    assert not own.is_relative_to(demo)
    assert not own.exists()
