"""Yarn as it is knit, skein after skein: which of them reaches a row, and where along it."""

from collections.abc import Iterable
from dataclasses import dataclass, field, replace

from app.book.book import Book


@dataclass(frozen=True, slots=True)
class Length:
    """Metres of a skein, in the order in which they are knit. They begin `at` so many metres from
    its outer end and go inwards, or outwards where the skein is knit from its inside."""

    holding_id: str
    m: float
    done: bool = False
    at: float = 0.0
    inwards: bool = True

    def place(self, metres: float) -> float:
        """How far from the outer end it is, so many metres on from where it begins."""
        return self.at + metres if self.inwards else self.at - metres

    def after(self, metres: float) -> "Length":
        """What is left of it, so many metres on."""
        return replace(self, m=self.m - metres, at=self.place(metres))


@dataclass(frozen=True, slots=True)
class Working:
    """What knits a row: a skein, whether it is knit, and the metre of it in the row's middle."""

    holding_id: str | None
    done: bool = False
    at: float = 0.0


@dataclass(slots=True)
class Yarn:
    """Lengths in the order in which they are knit."""

    lengths: list[Length] = field(default_factory=list)

    def part_off(self, metres: float) -> list[Length]:
        """Take so many metres, or all there is, from its beginning."""
        taken = []
        while self.lengths and metres > 0:
            first = self.lengths.pop(0)
            now = min(first.m, metres)
            taken.append(replace(first, m=now))
            metres -= now
            if first.m > now:
                self.lengths.insert(0, first.after(now))
        return taken

    def along(self, rows: Iterable[float]) -> list[Working]:
        """The skein that knits most of each row, given the metres of the rows; none once the yarn
        has come to its end."""
        found: list[Working] = []
        at, begun, start = 0, 0.0, 0.0
        for metres in rows:
            middle = begun + metres / 2
            while at < len(self.lengths) and start + self.lengths[at].m < middle:
                start += self.lengths[at].m
                at += 1
            if at < len(self.lengths):
                one = self.lengths[at]
                found.append(Working(one.holding_id, one.done, one.place(max(0.0, middle - start))))
            else:
                found.append(Working(None))
            begun += metres
        return found


class Ends:
    """How far each skein has been knit from its outer end and from its inside, in m. A skein is
    taken to be as long as it is now with all that went into garments."""

    def __init__(self, book: Book, used: Iterable[tuple[str, str, float]]) -> None:
        self._whole = {one: held.mm / 1000 for one, held in book.balances.items()}
        for _, holding_id, metres in used:
            self._whole[holding_id] = self._whole.get(holding_id, 0.0) + metres
        self._outer: dict[str, float] = {}
        self._inner: dict[str, float] = {}

    def next(self, holding_id: str, metres: float, done: bool, from_inside: bool) -> Length:
        """The next so many metres of a skein, from one of its ends."""
        knit = self._inner if from_inside else self._outer
        begun = knit.get(holding_id, 0.0)
        knit[holding_id] = begun + metres
        at = self._whole.get(holding_id, 0.0) - begun if from_inside else begun
        return Length(holding_id, metres, done, at, not from_inside)
