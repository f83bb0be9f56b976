"""A longer look goes on from what is there, and tells of each step without its pool."""

import pytest

from app.book.plan import RoleYarn
from app.book.shape import Metres
from app.planning import assign_search, reckon
from app.planning.assign import propose
from app.planning.assign_search import Begun, search_on
from app.planning.solve.solved import Effort
from app.planning.solve.solver import solve
from tests.books import a_book, a_part, a_plan, a_skein, a_yarn

SOME = Effort(tries=0, nodes=3, listed=0, offered=0)


def shelf():
    """Three yarns that read as one another in turn, so that parts have a choice."""
    held = {f"G-{n}": (45 * (0.9 + 0.11 * n), 90.0 + 11 * n) for n in range(9)}
    yarns = [a_yarn(f"yarn {n}", fibre="wool", colour=f"#30303{n}") for n in range(3)]
    skeins = [a_skein(code, f"yarn {place % 3}") for place, code in enumerate(held)]
    parts = [
        a_part(
            f"part {n}",
            shape=Metres(1000 * (60 + 37 * n)),
            position=n,
            yarns=(RoleYarn("main", f"yarn {n % 3}"),),
        )
        for n in range(1, 5)
    ]
    return a_book(*yarns, *skeins, a_plan(yarns=()), *parts, held=held)


def told(begun):
    heard = []
    search_on(heard.append, shelf(), "pullover", begun, SOME)
    return heard


def test_a_first_answer_is_told_before_the_look_goes_on():
    first, *rest = told(None)
    expected = propose(shelf(), reckon(shelf()), "pullover")
    assert (first.share, first.problem) == (expected.share, expected.problem)
    assert first.solved.groups == expected.solved.groups
    assert not first.done
    assert rest[-1].done
    assert rest[-1].solved.value <= first.solved.value


def test_from_an_answer_it_goes_on_with_its_share():
    start = propose(shelf(), reckon(shelf()), "pullover")
    heard = told(Begun(start.share, start.solved.groups))
    assert [one.done for one in heard] == [False] * (len(heard) - 1) + [True]
    assert all(one.share == start.share for one in heard)
    assert heard[-1].solved.value <= start.value


def test_nothing_is_sent_that_nobody_needs():
    assert all(one.solved.pool == () for one in told(None))


def test_each_node_is_told(monkeypatch: pytest.MonkeyPatch):
    def of_one_node(problem, effort, pool, start, watch):
        found = solve(problem, effort, pool, start)
        watch(found)
        return found

    monkeypatch.setattr(assign_search, "solve", of_one_node)
    heard = told(None)
    assert [one.done for one in heard] == [False, False, True]
    assert heard[1].solved == heard[2].solved
