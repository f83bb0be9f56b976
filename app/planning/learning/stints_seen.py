"""What her own log tells of her pace: metres or grams of an hour at each kind of work."""

from collections.abc import Iterator

from app.book.book import Book
from app.book.stint import Stint
from app.planning.learning.factors import PACE_NAME
from app.planning.learning.observed import Names, Observation
from app.planning.learning.usual import PACES, Pace

TIMER = 0.03
"""Minutes are noted roughly (practice)."""


def stints_seen(book: Book) -> Iterator[Observation]:
    """Every stint whose amount is known in the unit of its work."""
    for stint in book.stints:
        work = work_of(book, stint.work, stint.yarn_id)
        pace = PACES.get(work)
        amount = _amount(book, stint, pace) if pace else None
        if pace and amount and stint.minutes > 0:
            yield Observation(
                key=f"time {stint.id}",
                day=stint.day,
                factors=(PACE_NAME + work,),
                what=_words(book, stint, work),
                measured=amount * 60 / stint.minutes,
                usual=pace.per_hour,
                unit="m/h" if pace.unit == "m" else "g/h",
                names=Names(yarn=stint.yarn_id or ""),
                error=TIMER,
                holding_id=stint.holding_id,
            )


def work_of(book: Book, work: str, yarn_id: str | None) -> str:
    """The work as a pace has it: spinning on a spindle has one of its own."""
    yarn = book.yarn.get(yarn_id or "")
    wheel = book.wheel.get(yarn.spinning.wheel_id or "") if yarn and yarn.spinning else None
    spindle = work == "spin" and wheel is not None and wheel.kind == "spindle"
    return "spin on a spindle" if spindle else work


def _amount(book: Book, stint: Stint, pace: Pace) -> float | None:
    """Metres or grams that were done; grams of singles are metres by the grist meant."""
    if pace.unit == "g":
        return stint.mg / 1000 if stint.mg else None
    if stint.mm:
        return stint.mm / 1000
    yarn = book.yarn.get(stint.yarn_id or "")
    if not (stint.mg and yarn and yarn.target_tex):
        return None
    plies = (yarn.plies or 1) if stint.work == "spin" else 1
    return stint.mg / (yarn.target_tex / plies)


def _words(book: Book, stint: Stint, work: str) -> str:
    yarn = book.yarn.get(stint.yarn_id or "")
    return f"{work}, {stint.minutes} min" + (f" at {yarn.name}" if yarn else "")
