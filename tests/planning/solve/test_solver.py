"""The search as a whole: never worse than greedy, no metre twice, the same work the same answer."""

import subprocess
import sys
from dataclasses import replace
from pathlib import Path
from random import Random

import pytest

from app.planning.solve.branch import branches
from app.planning.solve.greedy import greedy
from app.planning.solve.problem import Group, Kind, Part, Problem, Skein, Tally, faults, value
from app.planning.solve.program import Program
from app.planning.solve.relax import relax
from app.planning.solve.solved import Effort, Work
from app.planning.solve.solver import solve
from app.planning.solve.tidy import tidied
from tests.planning.solve.shelves import shelf
from tests.planning.solve.test_reference import small

SIZES = [(9, 5, 2), (20, 6, 3), (60, 12, 4)]


@pytest.mark.parametrize("size", SIZES)
@pytest.mark.parametrize("seed", range(4))
def test_it_is_never_worse_than_greedy_nor_better_than_its_bound(size, seed):
    problem = shelf(seed, *size)
    first, found = greedy(problem), solve(problem)
    assert faults(problem, first) == []
    assert faults(problem, found.groups) == []
    assert found.bound <= found.value == pytest.approx(value(problem, found.groups))
    assert found.value <= value(problem, first)


@pytest.mark.parametrize("seed", range(8))
def test_up_to_45_pairs_the_best_is_proven(seed):
    assert solve(shelf(seed, 9, 5, 2)).best_possible


@pytest.mark.property
@pytest.mark.parametrize("seed", range(40))
def test_another_skein_never_makes_it_worse(seed):
    problem = small(seed)
    more = replace(problem, skeins=(*problem.skeins, Skein("S-9", "a", 10 + seed)))
    assert solve(more).value <= solve(problem).value + 1e-6


@pytest.mark.property
@pytest.mark.parametrize("seed", range(40))
def test_other_names_and_another_order_cost_the_same(seed):
    problem = small(seed)
    chance = Random(seed)
    parts = [replace(one, name=f"piece {j}") for j, one in enumerate(problem.parts)]
    skeins = [replace(one, code=f"K-{i}") for i, one in enumerate(problem.skeins)]
    chance.shuffle(parts)
    chance.shuffle(skeins)
    other = replace(problem, parts=tuple(parts), skeins=tuple(skeins))
    assert solve(other).value == pytest.approx(solve(problem).value, abs=1e-6)


def test_the_same_problem_has_the_same_answer_in_another_process():
    told = (
        "from tests.planning.solve.shelves import shelf\n"
        "from app.planning.solve.solver import solve\n"
        "found = solve(shelf(3, 30, 8, 3))\n"
        "print(found.groups, found.value, found.bound, found.work)\n"
    )
    answers = {
        subprocess.run(
            [sys.executable, "-c", told],
            env={"PYTHONHASHSEED": seed, "PYTHONPATH": ":".join(sys.path)},
            capture_output=True,
            text=True,
            check=True,
        ).stdout
        for seed in ("1", "2")
    }
    assert len(answers) == 1
    assert answers.pop().count("\n") == 1, "nothing but the answer is printed"


def test_no_solver_is_loaded_before_it_is_needed():
    told = (
        "import sys, app.planning.solve.solver\n"
        "print([one for one in ('highspy', 'numpy') if one in sys.modules])"
    )
    path = {"PYTHONPATH": ":".join(sys.path)}
    ran = subprocess.run(
        [sys.executable, "-c", told], env=path, capture_output=True, text=True, check=True
    )
    assert ran.stdout == "[]\n"


def test_nothing_to_divide():
    found = solve(Problem((), (Skein("S-1", "a", 90),), (Kind(("a",)),)))
    assert (found.groups, found.value, found.tally) == ((), 0.0, Tally(0, 0, 0, 0))
    assert found.best_possible
    assert found.work == Work()


def test_without_any_skein_all_is_to_be_made_in_one_piece_each():
    problem = Problem((Part("body", 90, (0.0,)),), (), (Kind(("a",)),))
    found = solve(problem)
    assert found.groups == (Group(0, (0,), ()),)
    assert found.tally == Tally(0, 0, 0, 90)
    assert found.best_possible


def test_more_work_finds_no_worse_and_raises_the_bound():
    problem = shelf(4, 60, 12, 4)
    first = solve(problem, Effort(tries=0))
    more = solve(problem, Effort(nodes=6), first.pool, first.groups)
    assert more.value <= first.value
    assert more.bound >= first.bound - 1e-6
    assert more.work.nodes > 0


def test_the_watcher_is_told_of_each_node():
    told = []
    found = solve(shelf(4, 60, 12, 4), Effort(tries=20, nodes=4, listed=50), watch=told.append)
    assert [one.work.nodes for one in told] == list(range(1, found.work.nodes + 1))
    assert all(one.bound <= found.value + 1e-6 for one in told)


def test_a_start_is_kept_if_nothing_better_is_found():
    problem = shelf(2, 60, 12, 4)
    good = solve(problem)
    again = solve(problem, Effort(tries=0, listed=0), start=good.groups)
    assert again.value <= good.value


def test_a_start_or_a_pool_of_another_problem_does_no_harm():
    problem = shelf(1, 9, 5, 2)
    strange = Group(0, (0, 1), (0, 1, 2, 3, 4, 5, 6, 7, 8))
    found = solve(problem, pool=(strange,), start=(strange,))
    assert faults(problem, found.groups) == []


def test_rounds_cut_short_still_bound_the_answer():
    problem = shelf(0, 9, 5, 2)
    assert solve(problem, Effort(rounds=1, listed=0)).bound <= solve(problem).value


def test_the_two_halves_of_a_branch_leave_no_answer_out():
    problem = shelf(4, 60, 12, 4)
    program = Program(problem)
    program.add(greedy(problem))
    bounded = relax(program, problem, 200)
    one, other = branches(problem, program, bounded.relaxed)
    split = [
        (j, k)
        for j, part in enumerate(problem.parts)
        for k in range(len(problem.kinds))
        if (one.parts[j].unlike[k] is None)
        and (other.parts[j].unlike[k] is None)
        and part.unlike[k] is not None
    ]
    assert split == []
    bounds = [relax(program, half, 200).bound for half in (one, other)]
    assert min(bounds) >= bounded.bound - 1e-6
    assert relax(program, problem, 200).bound == pytest.approx(bounded.bound)


def test_of_skeins_that_serve_as_well_the_long_one_stays_whole():
    part = Part("cuff", 60, (0.0,))
    skeins = tuple(Skein(f"S-{i}", "a", m) for i, m in enumerate((400, 65, 120, 50)))
    found = solve(Problem((part,), skeins, (Kind(("a",)),)))
    assert found.groups == (Group(0, (0,), (2,)),)


def test_changing_for_a_shorter_skein_never_costs_more():
    problem = shelf(5, 60, 12, 4)
    found = greedy(problem)
    tidy = tidied(problem, found)
    assert faults(problem, tidy) == []
    assert value(problem, tidy) <= value(problem, found)


def test_a_better_start_is_taken():
    problem = shelf(2, 60, 12, 4)
    good = solve(problem)
    again = solve(problem, Effort(tries=0, listed=0, rounds=1), start=good.groups)
    assert again.value <= good.value < value(problem, greedy(problem))


def test_only_this_room_names_a_solver():
    app = Path(__file__).parents[3] / "app"
    naming = [one for one in app.rglob("*.py") if "import highspy" in one.read_text("utf-8")]
    naming += [one for one in app.rglob("*.py") if "from highspy" in one.read_text("utf-8")]
    assert naming
    assert {one.parent.name for one in naming} == {"solve"}
