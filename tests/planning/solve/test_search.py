"""A search in its course: what it closes unseen, and what it does not take."""

from app.planning.solve import search as searching
from app.planning.solve.branch import Node
from app.planning.solve.search import Search
from app.planning.solve.solved import Effort
from app.planning.solve.whole import Chosen
from tests.planning.solve.shelves import shelf


def a_search():
    return Search(shelf(1, 9, 5, 2), Effort(nodes=10))


def test_what_can_be_no_better_than_the_best_is_not_split():
    search = a_search()
    search.open = [Node(search.best_value + 1.0, 1, search.problem)]
    search.branch(None)
    assert search.nodes == 0


def test_a_choice_that_leaves_a_part_out_is_not_taken(monkeypatch):
    search = a_search()
    before = search.best
    monkeypatch.setattr(searching, "choose", lambda *_: Chosen((), False))
    assert not search._choose([], 1)
    assert search.best == before
