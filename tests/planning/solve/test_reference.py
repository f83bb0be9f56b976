"""Columns and branching against three independent routes to the same least cost."""

from random import Random

import pytest

from app.planning.solve.problem import Kind, Part, Prices, Problem, Skein, faults
from app.planning.solve.solver import solve
from tests.planning.solve import compact, enumerated, flow

TRANSPORT = """\
Seattle,350,New-York,325,0.225
Seattle,350,Chicago,300,0.153
Seattle,350,Topeka,275,0.162
San-Diego,600,New-York,325,0.225
San-Diego,600,Chicago,300,0.162
San-Diego,600,Topeka,275,0.126
"""
"""Plant, capacity, market, demand, cost of a case in thousands of dollars: Dantzig's transport
problem (Linear Programming and Extensions, 1963), as printed with the solvers that use it."""


def small(seed, plain=False, skeins=6, parts=4):
    """A shelf of up to 6 skeins, 4 parts, 2 yarns; sometimes with a mixture of them, a fleece that
    gives too little, or prices of another maker. A plain one has neither mixture nor fleece."""
    chance = Random(f"small {seed}")
    mixed = chance.random() < 0.3 and not plain
    kinds = 3 if mixed else 2
    spun = chance.random() < 0.4 and not plain
    names = (("a",), ("b",), ("a", "b"))[:kinds]
    prices = Prices(
        join=chance.choice((1.0, 1.0, 0.5)),
        cut=chance.choice((2.0, 2.0, 0.7)),
        scrap=chance.choice((0.5, 0.3) if plain else (1.5, 1.5, 4.0)),
        scrap_below=chance.choice((10, 10, 1, 25)),
        miss=chance.choice((50.0, 3.0)),
        lack=120.0,
    )
    return Problem(
        parts=tuple(_part(chance, j, kinds) for j in range(chance.randint(1, parts))),
        skeins=tuple(
            Skein(f"S-{i}", chance.choice("ab"), chance.randint(10, 60))
            for i in range(chance.randint(0, skeins))
        ),
        kinds=tuple(Kind(one, 0 if spun else None, 0.5 if spun else 0.0) for one in names),
        fleeces=(chance.choice((0.0, 8.0, 500.0)),) if spun else (),
        prices=prices,
    )


def _part(chance, j, kinds):
    prices = [chance.choice((0.0, 0.0, 0.5, 1.25, None)) for _ in range(kinds)]
    if all(one is None for one in prices):
        prices[chance.randrange(kinds)] = 0.0
    return Part(f"part {j}", chance.randint(8, 90), tuple(prices))


@pytest.mark.parametrize("tens", range(30))
def test_columns_reach_what_enumeration_and_the_compact_model_find(tens):
    for seed in range(10 * tens, 10 * tens + 10):
        problem = small(seed)
        found = solve(problem)
        assert faults(problem, found.groups) == []
        assert found.best_possible, seed
        assert found.value == pytest.approx(enumerated.least(problem), abs=1e-5), seed
        assert found.value == pytest.approx(compact.least(problem), abs=1e-5), seed


@pytest.mark.parametrize("tens", range(30))
def test_dividing_into_groups_loses_nothing_against_metres(tens):
    """Where a scrap costs no more than a join. If it costs more, metres could begin a skein that is
    not needed, only to leave two larger remnants; groups never do."""
    for seed in range(1000 + 10 * tens, 1010 + 10 * tens):
        problem = small(seed, plain=True, skeins=4, parts=3)
        assert solve(problem).value == pytest.approx(flow.least(problem), abs=1e-4), seed


@pytest.mark.published
def test_the_flow_model_solves_dantzigs_transport_problem():
    rows = [line.split(",") for line in TRANSPORT.splitlines()]
    supply = {plant: float(most) for plant, most, *_ in rows}
    demand = {market: float(least) for _, _, market, least, _ in rows}
    costs = {(plant, market): float(cost) for plant, _, market, _, cost in rows}
    assert flow.transport(supply, demand, costs) == pytest.approx(153.675, abs=1e-9)
