"""Kills the program while it saves, again and again: what it said was saved must be there.

    python -m tests.kill 200

Fleeces are added through the program's own pages by several clients at once; at a random moment
the program is killed (SIGKILL), and its data is looked over: each acknowledged fleece is there with
its holding, weighing and event, none is there in part, and nothing is wrong with the file. The
control does the same to a program that answers before it saves (tests/lying.py) and must lose some.
"""

import argparse
import http.client
import random
import sys
from collections.abc import Iterator
from contextlib import suppress
from dataclasses import dataclass, field
from datetime import date
from itertools import count
from pathlib import Path
from tempfile import TemporaryDirectory
from threading import Thread
from time import sleep
from urllib.parse import urlencode, urlsplit

from app.book.book import Book
from app.store.engine import open_store
from app.store.records import load_book
from app.work.look_over import look_over
from tests.running import running

CLIENTS = 3
LONGEST_S = 0.4
KILLS_A_FOLDER = 10
"""The data of that many kills lies in one folder, so that what was mended is killed again."""


@dataclass
class Tally:
    """What became of the fleeces: `saved` were acknowledged, with their weight in g by name."""

    kills: int = 0
    saved: dict[str, int] = field(default_factory=dict)
    acknowledged: int = 0
    lost: list[str] = field(default_factory=list)
    wrong: list[str] = field(default_factory=list)

    @property
    def good(self) -> bool:
        return self.acknowledged > 0 and not self.lost and not self.wrong


def kill_while_saving(times: int, module: str = "app", seed: int = 1) -> Tally:
    """Start the program, add fleeces, kill it and look its data over, so many times."""
    chance, numbers, tally = random.Random(seed), count(1), Tally()
    while tally.kills < times:
        with TemporaryDirectory() as folder:
            tally.saved = {}
            for _ in range(min(KILLS_A_FOLDER, times - tally.kills)):
                before = len(tally.saved)
                _one_life(Path(folder), module, chance.uniform(0, LONGEST_S), numbers, tally.saved)
                tally.kills += 1
                tally.acknowledged += len(tally.saved) - before
                _look_at(Path(folder), tally)
    return tally


def _one_life(
    folder: Path, module: str, lasting_s: float, numbers: Iterator[int], saved: dict[str, int]
) -> None:
    with running("--data", folder, module=module) as program:
        address = program.address.rstrip("/")
        _add_fleece(_connected(address), address, numbers, saved)  # all is brought in from here on
        clients = [
            Thread(target=_add_fleeces, args=(address, numbers, saved)) for _ in range(CLIENTS)
        ]
        for client in clients:
            client.start()
        sleep(lasting_s)
        program.process.kill()
        for client in clients:
            client.join()


def _add_fleeces(address: str, numbers: Iterator[int], saved: dict[str, int]) -> None:
    connection = _connected(address)
    with suppress(OSError, http.client.HTTPException):
        while True:
            _add_fleece(connection, address, numbers, saved)


def _connected(address: str) -> http.client.HTTPConnection:
    return http.client.HTTPConnection(urlsplit(address).netloc)


def _add_fleece(
    connection: http.client.HTTPConnection,
    address: str,
    numbers: Iterator[int],
    saved: dict[str, int],
) -> None:
    number = next(numbers)
    form = {
        "name": f"Fleece {number}",
        "weight": f"{number} g",
        "state": "raw",
        "day": date.today().isoformat(),
    }
    headers = {"Origin": address, "Content-Type": "application/x-www-form-urlencoded"}
    connection.request("POST", "/fleeces/new", urlencode(form), headers)
    answer = connection.getresponse()
    answer.read()
    assert answer.status == 303, f"the form was not taken: {answer.status}"
    saved[form["name"]] = number


def _look_at(folder: Path, tally: Tally) -> None:
    store = open_store(folder)
    with store.reading() as session:
        tally.wrong += [str(one) for one in look_over(session)]
        book = load_book(session)
    store.close()
    whole = {fleece.name: _weight_g(book, fleece.id) for fleece in book.fleeces}
    tally.wrong += [f"{name} is torn" for name, weight_g in whole.items() if weight_g is None]
    tally.lost += [
        name
        for name, weight_g in tally.saved.items()
        if whole.get(name) != weight_g and name not in tally.lost
    ]


def _weight_g(book: Book, fleece_id: str) -> float | None:
    """What a fleece weighs by its one holding, one reading and one event; None if they differ."""
    holdings = [one for one in book.holdings if one.fleece_id == fleece_id]
    if len(holdings) != 1:
        return None
    weighed = [one.value for one in book.readings_of.get(holdings[0].id, ())]
    held = book.balances.get(holdings[0].id)
    return held.mg / 1000 if held and weighed == [held.mg] else None


def main() -> int:
    """The kills asked for, then the control; 0 if nothing was lost but by the control."""
    parser = argparse.ArgumentParser(prog="python -m tests.kill", description=__doc__)
    parser.add_argument("times", type=int, nargs="?", default=200)
    times = parser.parse_args().times
    true = kill_while_saving(times)
    control = kill_while_saving(max(5, times // 20), module="tests.lying")
    print(f"{_told(true)}. Control, which answers before it saves: {_told(control)}.")
    for text in true.wrong[:20]:
        print(text, file=sys.stderr)
    return 0 if true.good and control.lost else 1


def _told(tally: Tally) -> str:
    return (
        f"{tally.kills} kills, {tally.acknowledged} changes acknowledged, "
        f"{len(tally.lost)} lost, {len(tally.wrong)} torn or broken"
    )


if __name__ == "__main__":
    sys.exit(main())
