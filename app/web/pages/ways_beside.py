"""Two ways out side by side: what each comes to beside what is planned now, and its picture."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from app.book.plan import Plan
from app.web.pages.answer import Sentence
from app.web.pages.picture_ink import Drawing
from app.web.pages.ways_out import Compared, WayShown, way_page
from app.web.shown import Shown
from app.work.ways_out import Seen

NOTHING = "–"


@dataclass(frozen=True, slots=True)
class Beside:
    """A line of the comparison: now, and with each of the two."""

    what: str
    now: str
    then: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class OneOfTwo:
    """A way out with the garment it is then about."""

    way: WayShown
    name: str
    answer: Sentence
    drawn: Drawing


@dataclass(frozen=True, slots=True)
class BesidePage:
    """The two as they would be, nothing saved."""

    plan: Plan
    two: tuple[OneOfTwo, ...]
    budget: tuple[Beside, ...]
    parts: tuple[Beside, ...]


def beside_page(seen: Sequence[Seen], shown: Shown) -> BesidePage:
    """Ways out of one plan beside each other."""
    pages = [way_page(one, shown) for one in seen]
    return BesidePage(
        plan=pages[0].plan,
        two=tuple(OneOfTwo(one.way, one.name, one.answer, one.drawn) for one in pages),
        budget=tuple(_lines([one.budget for one in pages])),
        parts=tuple(_lines([one.parts for one in pages])),
    )


def _lines(columns: Sequence[tuple[Compared, ...]]) -> Iterator[Beside]:
    """What stands in any of the columns, once; a column without it has nothing there."""
    found = [{one.what: one for one in column} for column in columns]
    for what in dict.fromkeys(name for column in found for name in column):
        now = next(column[what].before for column in found if what in column)
        then = (column[what].after if what in column else NOTHING for column in found)
        yield Beside(what, now, tuple(then))
