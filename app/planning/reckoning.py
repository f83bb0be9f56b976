"""The one big sum: the whole shelf against every plan."""

from app.book.book import Book
from app.planning.answer import FreeYarn, answer
from app.planning.answers import FleeceAnswer, PlanAnswer, Reckoning, ShelfLine
from app.planning.cover import Shelf, cover
from app.planning.fleeces import becomes, wool_g, wool_of
from app.planning.learning import Learnt, learn
from app.planning.netting import Netting, PlanTally
from app.planning.supply import stock
from app.planning.turn import in_turn
from app.planning.used import Used
from app.planning.wool_called import WoolCalled
from app.planning.work_list import WorkList
from app.planning.yarns import Lots


def reckon(book: Book) -> Reckoning:
    """Needs against the shelf for every plan: promises, reserves, odds, shortfalls and the work
    that follows. Pure; the same book always gives the same reckoning."""
    lots = Lots(book)
    plans = in_turn(book.plans)
    shelf = cover(book, plans, stock(lots))
    netting = Netting(lots, shelf, Used(book))
    tallies = [netting.take(plan) for plan in plans]
    learnt = learn(book)
    answers = _answers(tallies, lots, shelf, learnt)
    wool = WoolCalled(book, learnt)
    work = WorkList(lots, wool)
    for one in answers:
        work.add(one)
    return Reckoning(
        plans=answers,
        shelf=_shelf_lines(shelf, netting),
        fleeces=_fleece_answers(book, wool, learnt),
        work=work.finished(),
        uncovered=tuple(shelf.uncovered),
        learnt=learnt,
    )


def _answers(
    tallies: list[PlanTally], lots: Lots, shelf: Shelf, learnt: Learnt
) -> tuple[PlanAnswer, ...]:
    by_yarn: dict[str, float] = {}
    for holding_id, metres in shelf.free.items():
        yarn_id = shelf.stock[holding_id].holding.yarn_id
        if yarn_id:
            by_yarn[yarn_id] = by_yarn.get(yarn_id, 0.0) + metres
    free = FreeYarn(by_yarn)
    return tuple(answer(one, lots, free, shelf.covered, learnt) for one in tallies)


def _shelf_lines(shelf: Shelf, netting: Netting) -> dict[str, ShelfLine]:
    lines = {}
    for holding_id, one in shelf.stock.items():
        held = tuple(netting.held.get(holding_id, ()))
        lines[holding_id] = ShelfLine(
            holding_id=holding_id,
            held=one.held,
            held_g=one.held_g,
            promised_m=sum(each.m for each in held if each.part_id is not None),
            reserved_m=sum(each.m for each in held if each.part_id is None),
            free_m=shelf.free[holding_id],
            promised_to=held,
        )
    return lines


def _fleece_answers(book: Book, called: WoolCalled, learnt: Learnt) -> dict[str, FleeceAnswer]:
    wool = wool_of(book)
    found = {}
    for fleece in book.fleeces:
        holdings = wool.get(fleece.id, [])
        prepared, yarn, steps = becomes(book, fleece, holdings, learnt)
        now, called_g = wool_g(book, holdings), called.of_fleece(fleece.id)
        found[fleece.id] = FleeceAnswer(fleece.id, now, called_g, prepared, yarn, steps)
    return found
