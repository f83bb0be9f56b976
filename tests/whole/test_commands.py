"""The commands one after another on the demo, as processes of their own, from another folder."""

import json
import os
import subprocess
from pathlib import Path

import pytest

from app import paths
from tests.running import ROOT, command


@pytest.fixture
def told(tmp_path: Path) -> object:
    """Runs a command in an empty folder and answers what it printed; it must go well."""

    def run(*words: object) -> str:
        return subprocess.run(
            command(*words),
            cwd=tmp_path,
            env={**os.environ, "PYTHONPATH": str(ROOT)},
            capture_output=True,
            text=True,
            check=True,
        ).stdout

    return run


def test_the_demo_survives_export_import_backup_and_restore(told, tmp_path: Path) -> None:
    told("--data", "D", "import", paths.DEMO)
    assert told("check", "--data", "D") == "Nothing wrong.\n"
    told("--data", "D", "export", "a.json")
    told("--data", "E", "import", "a.json")
    told("--data", "E", "export", "b.json")
    told("--data", "E", "backup")
    (kept,) = (tmp_path / "E" / "backups").iterdir()
    told("--data", "F", "restore", kept)
    told("--data", "F", "export", "c.json")
    written = [(tmp_path / name).read_bytes() for name in ("a.json", "b.json", "c.json")]
    assert written == [paths.DEMO.read_bytes()] * 3


def test_the_reckoning_of_the_demo_is_json_alone(told) -> None:
    answer = json.loads(told("reckon", paths.DEMO, "--json"))
    assert len(answer["plans"]) == 7
    assert answer["work_list"]
    assert told("reckon", paths.DEMO).count("\n") > 20
