"""One running copy for one folder."""

import subprocess
import sys
from pathlib import Path

import pytest

from app.store.alone import alone
from app.store.errors import Busy

HOLD = "import sys; from pathlib import Path; from app.store.alone import alone\n"
HOLD += "with alone(Path(sys.argv[1])): print('held', flush=True); sys.stdin.read()"


def test_a_second_copy_is_told(tmp_path: Path) -> None:
    with alone(tmp_path / "data"):
        with pytest.raises(Busy, match="already running"), alone(tmp_path / "data"):
            pass
        with alone(tmp_path / "other"):
            pass
    with alone(tmp_path / "data"):
        pass


def test_a_copy_that_was_killed_lets_go(tmp_path: Path) -> None:
    command = [sys.executable, "-c", HOLD, str(tmp_path)]
    with subprocess.Popen(command, stdin=subprocess.PIPE, stdout=subprocess.PIPE) as other:
        assert other.stdout is not None
        assert other.stdout.readline() == b"held\n"
        with pytest.raises(Busy), alone(tmp_path):
            pass
        other.kill()
        other.wait()
        with alone(tmp_path):
            pass
