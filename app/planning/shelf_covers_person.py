"""Standard garments for somebody, each in the yarn of the shelf that makes it with the least left
over: what could be planned beside what is planned."""

from collections.abc import Iterator
from dataclasses import dataclass

from app.book.book import Book
from app.book.person import Person
from app.craft.garments import KINDS
from app.planning.answers import Reckoning
from app.planning.quick import Question, QuickAnswer, quick
from app.planning.yarns import Lots

LEAST_M = 50.0
"""A yarn with less than this free makes nothing worth a plan (assumed)."""


@dataclass(frozen=True, slots=True)
class Standard:
    """A garment of a kind in a yarn of which `free_m` is free; `answer` to whether it reaches."""

    kind: str
    yarn_id: str
    yarn: str
    free_m: float
    answer: QuickAnswer


def standards(book: Book, reckoning: Reckoning, person: Person | None) -> tuple[Standard, ...]:
    """Each kind of garment in its best yarn; those that reach first, then those short the least."""
    lots = Lots(book)
    free = {one.id: _free_m(lots, reckoning, one.id) for one in book.yarns}
    measures = {one.name: one.mm / 10 for one in person.measures} if person else {}
    found = [best for kind in KINDS if (best := _best(_tried(lots, free, kind, measures)))]
    return tuple(sorted(found, key=lambda one: (not one.answer.enough, one.answer.short_m)))


def _best(tried: Iterator[Standard]) -> Standard | None:
    """Where it reaches with the least left over, else where it lacks the least."""
    return min(
        tried,
        key=lambda one: (not one.answer.enough, one.answer.short_m, one.answer.left_m),
        default=None,
    )


def _tried(
    lots: Lots, free: dict[str, float], kind: str, measures: dict[str, float]
) -> Iterator[Standard]:
    settings = lots.book.settings
    for yarn in lots.book.yarns:
        tex, metres = lots.tex(yarn.id), free[yarn.id]
        if tex is None or metres < LEAST_M:
            continue
        question = Question(
            kind, metres, tex=tex, measures=measures, sureness_pct=settings.sureness_pct
        )
        try:
            yield Standard(kind, yarn.id, yarn.name, metres, quick(question, settings))
        except ValueError:
            continue


def _free_m(lots: Lots, reckoning: Reckoning, yarn_id: str) -> float:
    shelf = reckoning.shelf
    return sum(shelf[one.id].free_m for one in lots.skeins.get(yarn_id, []) if one.id in shelf)
