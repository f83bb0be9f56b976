"""Work in a process of its own, so that the program stays quick and the work can be stopped."""

from collections.abc import Callable
from multiprocessing.connection import Connection
from multiprocessing.process import BaseProcess
from typing import Any

YIELDING = 10
"""How far the child stands back for others, as `nice` has it."""


class Apart:
    """Work that goes on beside the program: `heard` is the latest it told, None before that."""

    def __init__(self, process: BaseProcess, ear: Connection) -> None:
        self._process, self._ear = process, ear
        self.heard: Any = None
        self.ended = False

    def listen(self) -> None:
        """Take in what has been told since; the work has ended when the child has gone, however."""
        try:
            while not self.ended and self._ear.poll():
                self.heard = self._ear.recv()
        except (EOFError, OSError):
            self._end()

    def stop(self) -> None:
        """End the work; what it had told stays."""
        self.listen()
        if not self.ended:
            self._process.terminate()
            self._end()

    def _end(self) -> None:
        self.ended = True
        self._ear.close()
        self._process.join()


def apart(work: Callable[..., None], *given: Any) -> Apart:
    """Begin `work(tell, *given)` in another process; what it tells can be heard here."""
    from multiprocessing import get_context

    context = get_context("spawn")
    ear, mouth = context.Pipe(duplex=False)
    process = context.Process(target=_working, args=(mouth, work, given), daemon=True)
    process.start()
    mouth.close()
    return Apart(process, ear)


def _working(mouth: Connection, work: Callable[..., None], given: tuple[Any, ...]) -> None:
    """In the child: stand back for others, then do the work; nothing is told to a closed ear."""
    import os

    if hasattr(os, "nice"):
        os.nice(YIELDING)
    try:
        work(mouth.send, *given)
    except BrokenPipeError:
        return
