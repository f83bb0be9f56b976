"""Yarn already knitted into the garments, from the wool book."""

from app.book.book import Book
from app.planning.groups import Group


class Used:
    """Metres that went from skeins into each plan's garment, by plan and yarn, less left-overs."""

    def __init__(self, book: Book) -> None:
        self._metres: dict[str, dict[str, float]] = {}
        undone = {event.undoes for event in book.events if event.undoes is not None}
        for event in book.events:
            if event.kind == "use" and event.seq not in undone:
                self._note(book, [(line.holding_id, line.mg, line.mm) for line in event.lines])

    def shares(self, plan_id: str, groups: tuple[Group, ...]) -> list[float]:
        """Metres knitted in so far for each group; yarn of no group counts for the first."""
        found = [0.0 for _ in groups]
        if groups:
            for yarn_id, metres in self._metres.get(plan_id, {}).items():
                at = [i for i, group in enumerate(groups) if yarn_id in group.yarn_ids]
                found[at[0] if at else 0] += metres
        return found

    def _note(self, book: Book, lines: list[tuple[str, int, int]]) -> None:
        gained = (book.holding[one].plan_id for one, mg, _ in lines if mg > 0)
        plan_id = next((one for one in gained if one), None)
        if plan_id is None:
            return
        into = self._metres.setdefault(plan_id, {})
        for holding_id, _, mm in lines:
            if mm:
                yarn_id = book.holding[holding_id].yarn_id or holding_id
                into[yarn_id] = into.get(yarn_id, 0.0) - mm / 1000
