"""Yarn already knitted into the garments, from the wool book."""

from collections.abc import Iterator

from app.book.book import Book
from app.book.event import Event, Line
from app.book.words import YARN_KINDS
from app.planning.groups import Group


def knitted_in(book: Book) -> Iterator[tuple[str, str, float]]:
    """(plan, holding, metres) of all that was knit into garments and not taken back, in order.

    What was ripped back comes off what was knit in last of its yarn.
    """
    found: list[tuple[str, str, float]] = []
    for event in used_and_ripped(book):
        if event.kind == "use":
            found += _of_event(book, event)
        else:
            for line in event.lines:
                _take_back(book, found, line)
    yield from (one for one in found if one[2] > 0)


def used_and_ripped(book: Book) -> Iterator[Event]:
    """The events in which yarn went into garments or came out of them, but for those undone."""
    undone = {event.undoes for event in book.events if event.undoes is not None}
    for event in book.events:
        if event.kind in ("use", "rip") and event.seq not in undone:
            yield event


def grams_in(book: Book, plan_id: str) -> dict[str, float]:
    """Grams of each yarn that went into a plan's garment, less what came out of it."""
    found: dict[str, float] = {}
    for event in used_and_ripped(book):
        holdings = [book.holding[line.holding_id] for line in event.lines]
        if any(one.kind == "garment" and one.plan_id == plan_id for one in holdings):
            for line, holding in zip(event.lines, holdings, strict=True):
                if holding.kind in YARN_KINDS:
                    key = holding.yarn_id or holding.id
                    found[key] = found.get(key, 0.0) - line.mg / 1000
    return found


class Used:
    """Metres that went from skeins into each plan's garment, by plan and yarn, less left-overs."""

    def __init__(self, book: Book) -> None:
        self._metres: dict[str, dict[str, float]] = {}
        for plan_id, holding_id, metres in knitted_in(book):
            into = self._metres.setdefault(plan_id, {})
            yarn_id = book.holding[holding_id].yarn_id or holding_id
            into[yarn_id] = into.get(yarn_id, 0.0) + metres

    def shares(self, plan_id: str, groups: tuple[Group, ...]) -> list[float]:
        """Metres knitted in so far for each group; yarn of no group counts for the first."""
        found = [0.0 for _ in groups]
        if groups:
            for yarn_id, metres in self._metres.get(plan_id, {}).items():
                at = [i for i, group in enumerate(groups) if yarn_id in group.yarn_ids]
                found[at[0] if at else 0] += metres
        return found


def _take_back(book: Book, found: list[tuple[str, str, float]], line: Line) -> None:
    holding = book.holding[line.holding_id]
    back = line.mm / 1000
    for at in reversed(range(len(found))):
        plan_id, holding_id, metres = found[at]
        same_yarn = book.holding[holding_id].yarn_id == holding.yarn_id
        if back > 0 and plan_id == holding.plan_id and same_yarn:
            now = min(back, metres)
            found[at] = plan_id, holding_id, metres - now
            back -= now


def _of_event(book: Book, event: Event) -> list[tuple[str, str, float]]:
    gained = (book.holding[line.holding_id].plan_id for line in event.lines if line.mg > 0)
    plan_id = next((one for one in gained if one), None)
    if plan_id is None:
        return []
    back = sum(line.mm for line in event.lines if line.mm > 0)
    taken = [(line.holding_id, -line.mm) for line in event.lines if line.mm < 0]
    last = len(taken) - 1
    return [
        (plan_id, holding_id, (mm - (back if place == last else 0)) / 1000)
        for place, (holding_id, mm) in enumerate(taken)
    ]
