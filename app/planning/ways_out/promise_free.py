"""Promise what the shelf has free of the plan's own yarn, and of yarn that suits where none was
chosen."""

from collections.abc import Iterator

from app.planning.ways_out.situation import Situation
from app.planning.ways_out.way import Amount, Effort, Proposal, Said, Way, simple

EVENINGS = 0.05
"""To fetch the skeins from the shelf (assumed)."""


def find(situation: Situation) -> Iterator[Proposal]:
    """All that is free and of use, in one proposal."""
    change = situation.changed()
    if change.nothing:
        return
    before = sum(one.mm for one in situation.book.promises_of.get(situation.plan_id, []))
    after = sum(one.mm for one in change.in_book(situation.book).promises_of[situation.plan_id])
    title = Said("Promise {} that the shelf has free", (Amount((after - before) / 1000, "yarn"),))
    effort = Effort(EVENINGS, Said("only the skeins to put aside"))
    yield simple(situation, "promise", title, effort, change)


WAY = Way("promise", find, at_once=True)
