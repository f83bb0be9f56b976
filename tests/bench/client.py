"""A browser's stand-in that keeps its connection and reads the whole answer."""

import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from http.client import HTTPConnection
from pathlib import Path
from threading import Thread

ROOT = Path(__file__).parents[2]


class Client:
    """One kept connection to a served folder."""

    def __init__(self, port: int) -> None:
        self.connection = HTTPConnection("127.0.0.1", port, timeout=60)

    def get(self, path: str) -> bytes:
        """The body of a page; the bytes as they came over the wire."""
        self.connection.request("GET", path, headers={"Accept-Encoding": "gzip"})
        answer = self.connection.getresponse()
        body = answer.read()
        assert answer.status == 200, (path, answer.status)
        return body


@contextmanager
def served(folder: Path) -> Iterator[int]:
    """The port of a process that serves the folder, with the floor page beside its own."""
    process = subprocess.Popen(
        [sys.executable, "-m", "tests.bench.served", str(folder)],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        text=True,
        cwd=ROOT,
    )
    with process:
        assert process.stdin is not None
        assert process.stdout is not None
        yield int(process.stdout.readline())
        process.stdin.close()


def all_at_once(port: int, clients: int, each: int, path: str) -> None:
    """So many clients get a page so many times each."""

    def one() -> None:
        client = Client(port)
        for _ in range(each):
            client.get(path)

    threads = [Thread(target=one) for _ in range(clients)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
