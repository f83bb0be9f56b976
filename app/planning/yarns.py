"""What a yarn is, taken over its skeins: grist, usual skein, shrinkage in finishing."""

from functools import cached_property

from app.book.book import Book
from app.book.event import Balance
from app.book.holding import Holding
from app.book.words import YARN_KINDS
from app.craft.figure import Figure
from app.craft.reel import shrink_default

MEASURED_SHARE = 0.03
"""Standard uncertainty of a yarn's grist, weighed and measured, as a share (practice)."""

TARGET_SHARE = 0.10
"""How far a handspun yarn strays from the grist aimed at, as a share (practice)."""

RATIO_U = 0.03
"""Spread of finished to unfinished length from skein to skein of one yarn (practice)."""


class Lots:
    """The yarns of a book with what their skeins tell of them. Each yarn is looked at once."""

    def __init__(self, book: Book) -> None:
        self.book = book
        self._tex: dict[str, Figure | None] = {}
        self._shrink: dict[str, Figure] = {}

    @cached_property
    def skeins(self) -> dict[str, list[Holding]]:
        """The skeins, balls and left-overs of each yarn that are on the shelf, by code."""
        found: dict[str, list[Holding]] = {}
        for holding in sorted(self.book.holdings, key=lambda one: one.code):
            if holding.kind in YARN_KINDS and holding.yarn_id and holding.put_away is None:
                found.setdefault(holding.yarn_id, []).append(holding)
        return found

    def tex(self, yarn_id: str) -> Figure | None:
        """Linear density in tex, one variable for all skeins: over those weighed and measured,
        else from the ball's label, else the target; None where nothing is known."""
        if yarn_id not in self._tex:
            self._tex[yarn_id] = self._find_tex(yarn_id)
        return self._tex[yarn_id]

    def shrinkage(self, yarn_id: str | None) -> Figure:
        """Share of its length the yarn loses in finishing: from skeins measured before and after,
        else a wide default. One variable for all skeins of the yarn."""
        key = yarn_id or ""
        if key not in self._shrink:
            self._shrink[key] = self._find_shrinkage(key)
        return self._shrink[key]

    def usual_skein_m(self, yarn_id: str) -> float | None:
        """Metres in a usual skein or ball of the yarn; None where none is known."""
        yarn = self.book.yarn[yarn_id]
        if yarn.ball_mm:
            return yarn.ball_mm / 1000
        lengths = [one.mm / 1000 for one in self._held(yarn_id) if one.mm > 0]
        return sum(lengths) / len(lengths) if lengths else None

    def _held(self, yarn_id: str) -> list[Balance]:
        skeins = self.skeins.get(yarn_id, [])
        return [self.book.balances[one.id] for one in skeins if one.id in self.book.balances]

    def _find_tex(self, yarn_id: str) -> Figure | None:
        yarn = self.book.yarn[yarn_id]
        measured = [one for one in self._held(yarn_id) if one.mm > 0 and one.mg > 0]
        if measured:
            tex = 1000 * sum(one.mg for one in measured) / sum(one.mm for one in measured)
            share = MEASURED_SHARE
        elif yarn.ball_mg and yarn.ball_mm:
            tex, share = 1000 * yarn.ball_mg / yarn.ball_mm, MEASURED_SHARE
        elif yarn.target_tex:
            tex, share = yarn.target_tex, TARGET_SHARE
        else:
            return None
        return Figure(tex, "tex", {f"grist of {yarn.name}": tex * share})

    def _find_shrinkage(self, yarn_id: str) -> Figure:
        skeins = self.skeins.get(yarn_id, [])
        ratios = [one for one in map(self._finished_ratio, skeins) if one is not None]
        yarn = self.book.yarn.get(yarn_id)
        cause = f"shrinkage of {yarn.name}" if yarn else "shrinkage in finishing"
        if not ratios:
            default = shrink_default()
            return Figure(default.value, "share", {cause: default.u})
        mean = sum(ratios) / len(ratios)
        return Figure(1 - mean, "share", {cause: RATIO_U * (1 + 1 / len(ratios)) ** 0.5})

    def _finished_ratio(self, holding: Holding) -> float | None:
        lengths = [one for one in self.book.readings_of.get(holding.id, []) if one.kind == "length"]
        before = [one.value for one in lengths if not one.finished]
        after = [one.value for one in lengths if one.finished]
        return after[-1] / before[-1] if before and after and before[-1] > 0 else None
