"""What skeins tell: how much shorter they came out of the wash, and their grist against the one
that was meant."""

from collections.abc import Iterator

from app.book.book import Book
from app.book.event import Balance
from app.book.reading import Reading
from app.book.words import YARN_KINDS
from app.planning.learning.observed import Names, Observation
from app.planning.learning.steps_seen import names_of
from app.planning.learning.usual import usual_kept

REEL_SHARE = 0.005
"""Two lengths off one reel differ by half a turn in a hundred or so (practice)."""

USED = ("use", "wind", "put away")


def shrink_seen(book: Book) -> Iterator[Observation]:
    """Every skein whose length was measured before and after it was finished."""
    for holding in book.holdings:
        lengths = [one for one in book.readings_of.get(holding.id, []) if _tells(one)]
        before = [one for one in lengths if not one.finished]
        after = [one for one in lengths if one.finished]
        if holding.kind in YARN_KINDS and before and after:
            yield Observation(
                key=f"shrink {holding.id}",
                day=after[0].day,
                factors=("shrink",),
                what=f"{holding.code}, length before and after finishing",
                measured=after[0].value / before[-1].value,
                usual=usual_kept("shrink", book.settings),
                unit="share",
                names=names_of(book, holding),
                error=REEL_SHARE,
                holding_id=holding.id,
            )


def grist_seen(book: Book) -> Iterator[Observation]:
    """Every skein she spun to a grist that was meant, and measured finished."""
    whole = _whole_skeins(book)
    for holding in book.holdings:
        yarn, held = book.yarn.get(holding.yarn_id or ""), whole.get(holding.id, Balance())
        readings = book.readings_of.get(holding.id, [])
        measured = [one for one in readings if _tells(one) and one.finished]
        spun = yarn is not None and yarn.target_tex and not yarn.bought
        if yarn and spun and measured and held.mg > 0 and held.mm > 0:
            yield Observation(
                key=f"grist {holding.id}",
                day=measured[-1].day,
                factors=("grist",),
                what=f"{holding.code}, grist against the one meant for {yarn.name}",
                measured=1000 * held.mg / held.mm / (yarn.target_tex or 1.0),
                usual=1.0,
                unit="times",
                names=Names(yarn=yarn.id),
                error=REEL_SHARE,
                holding_id=holding.id,
            )


def _tells(reading: Reading) -> bool:
    return reading.kind == "length" and reading.wool == "dry" and reading.value > 0


def _whole_skeins(book: Book) -> dict[str, Balance]:
    """What every holding held before anything was taken off it."""
    held: dict[str, Balance] = {}
    begun: set[str] = set()
    undone = {one.undoes for one in book.events}
    for event in sorted(book.events, key=lambda one: one.seq):
        if event.seq in undone or event.undoes is not None:
            continue
        for line in event.lines:
            if event.kind in USED and (line.mg < 0 or line.mm < 0):
                begun.add(line.holding_id)
            if line.holding_id not in begun:
                now = held.get(line.holding_id, Balance())
                held[line.holding_id] = Balance(now.mg + line.mg, now.mm + line.mm)
    return held
