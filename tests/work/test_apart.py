"""Work in another process: heard, stopped, and not missed when it breaks."""

import time
from collections.abc import Callable

from app.work.apart import Apart, apart


def counting(tell: Callable[[int], None], most: int) -> None:
    for number in range(1, most + 1):
        tell(number)


def endless(tell: Callable[[int], None]) -> None:
    tell(1)
    time.sleep(600)


def breaking(tell: Callable[[int], None]) -> None:
    tell(7)
    raise SystemExit(3)


def heard(work: Apart, wanted: int) -> bool:
    for _ in range(600):
        work.listen()
        if work.heard == wanted:
            return True
        time.sleep(0.05)
    return False


def ended(work: Apart) -> bool:
    for _ in range(600):
        work.listen()
        if work.ended:
            return True
        time.sleep(0.05)
    return False


def test_the_latest_is_heard_and_the_end_is_noticed() -> None:
    work = apart(counting, 5)
    assert heard(work, 5)
    assert ended(work)


def test_stopped_what_it_told_stays() -> None:
    work = apart(endless)
    assert heard(work, 1)
    work.stop()
    assert work.ended
    assert work.heard == 1
    work.stop()


def test_a_child_that_breaks_has_ended() -> None:
    work = apart(breaking)
    assert ended(work)
    assert work.heard == 7
