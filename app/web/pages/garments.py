"""The list of garments, in the order in which they are served from the shelf."""

from dataclasses import dataclass

from app.book.book import Book
from app.book.words import OPEN_STATES
from app.planning.answers import Reckoning
from app.web.pages.answer import counted, listed, number_word
from app.web.pages.plan_line import PlanLine, plan_lines
from app.web.shown import Shown


@dataclass(frozen=True, slots=True)
class Movable:
    """A plan's line, and whether it can be served earlier or later among those in its state."""

    line: PlanLine
    earlier: bool
    later: bool


@dataclass(frozen=True, slots=True)
class GarmentsPage:
    """`under_way` still want yarn, `done` are finished or put away; `summary` is the answer."""

    summary: str
    under_way: tuple[Movable, ...]
    done: tuple[PlanLine, ...]


def garments_page(book: Book, reckoning: Reckoning, shown: Shown) -> GarmentsPage:
    lines = plan_lines(book, reckoning, shown)
    under_way = tuple(one for one in lines if one.state in OPEN_STATES)
    done = tuple(one for one in lines if one.state not in OPEN_STATES)
    movable = tuple(_movable(under_way, place) for place in range(len(under_way)))
    return GarmentsPage(shelf_sentence(under_way), movable, done)


def shelf_sentence(lines: tuple[PlanLine, ...]) -> str:
    """What the shelf does for the garments that want yarn, in a sentence or two."""
    wanting = [one for one in lines if one.state in OPEN_STATES]
    if not wanting:
        return "No garment waits for yarn."
    covered = [one for one in wanting if one.answer.tone == "enough"]
    short = [one.name for one in wanting if one.answer.tone == "short"]
    of_all = _covered(len(covered), len(wanting))
    return f"Short of yarn: {listed(short)}. {of_all}" if short else of_all


def _movable(lines: tuple[PlanLine, ...], place: int) -> Movable:
    line = lines[place]
    before, after = lines[max(0, place - 1) : place], lines[place + 1 : place + 2]
    return Movable(
        line,
        earlier=any(one.state == line.state for one in before),
        later=any(one.state == line.state for one in after),
    )


def _covered(covered: int, all_of_them: int) -> str:
    if covered == all_of_them:
        return "Every garment is covered."
    if not covered:
        return "No garment is covered yet."
    verb = "is" if covered == 1 else "are"
    number = number_word(covered).capitalize()
    return f"{number} of {counted(all_of_them, 'garment')} {verb} covered."
