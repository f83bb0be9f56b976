"""The program running as its maker runs it: a process of its own that speaks HTTP."""

import re
import signal
import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from urllib.request import urlopen

ROOT = Path(__file__).parents[1]
ADDRESS = re.compile(r"http://127\.0\.0\.1:\d+/")


class Running:
    """A running copy, its address and what it said when it started."""

    def __init__(self, process: "subprocess.Popen[str]") -> None:
        self.process = process
        assert process.stdout is not None
        self.greeting = process.stdout.readline()
        found = ADDRESS.search(self.greeting)
        assert found, f"it did not start: {process.communicate(timeout=20)}"
        self.address = found[0]

    def page(self, path: str = "") -> str:
        with urlopen(self.address + path) as answer:
            return str(answer.read(), "utf-8")

    def interrupt(self) -> tuple[int, str]:
        """Ctrl-C; answers how it ended and all it said meanwhile."""
        self.process.send_signal(signal.SIGINT)
        out, error = self.process.communicate(timeout=20)
        return self.process.returncode, out + error


def command(*words: object, module: str = "app") -> list[str]:
    """The command line of the program with these words."""
    return [sys.executable, "-m", module, *(str(word) for word in words)]


@contextmanager
def running(*words: object, module: str = "app", here: Path = ROOT) -> Iterator[Running]:
    """The program that lies in `here`, started with these words on a free port."""
    with subprocess.Popen(
        command("--no-browser", "--port", 0, *words, module=module),
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
        cwd=here,
    ) as process:
        try:
            yield Running(process)
        finally:
            process.kill()
