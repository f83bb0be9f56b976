"""Whole groups chosen out of those known, at the least cost."""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import accumulate
from typing import Any

from app.planning.solve.problem import Group, Problem, price
from app.planning.solve.program import INFINITE, column, silent


@dataclass(frozen=True, slots=True)
class Chosen:
    """The groups chosen; `proven` where no choice among those offered costs less."""

    groups: tuple[Group, ...]
    proven: bool


def choose(problem: Problem, offered: Sequence[Group], nodes: int) -> Chosen:
    """The cheapest division into groups offered, within so many nodes of the search.

    No answer in hand is given to start from: HiGHS 1.16 can take such a one for the best there is.
    """
    from highspy import _core

    solver = silent()
    solver.setOptionValue("mip_max_nodes", nodes)
    solver.setOptionValue("mip_rel_gap", 0.0)
    _pass(solver, problem, offered)
    solver.run()
    shares = solver.getSolution().col_value
    groups = sorted(one for one, share in zip(offered, shares, strict=False) if share > 0.5)
    proven = solver.getModelStatus() == _core.HighsModelStatus.kOptimal
    return Chosen(tuple(groups), proven)


def _pass(solver: Any, problem: Problem, offered: Sequence[Group]) -> None:
    """Give the solver a column for each group, then one for what each fleece lacks."""
    from highspy import _core

    parts, skeins, fleeces = len(problem.parts), len(problem.skeins), len(problem.fleeces)
    columns = [column(problem, one) for one in offered]
    columns += [([parts + skeins + place], [-1.0]) for place in range(fleeces)]
    program = _core.HighsLp()
    program.num_col_, program.num_row_ = len(columns), parts + skeins + fleeces
    lacks = [problem.prices.lack] * fleeces
    program.col_cost_ = [*(price(problem, one) for one in offered), *lacks]
    program.col_lower_ = [0.0] * len(columns)
    program.col_upper_ = [1.0] * len(offered) + [INFINITE] * fleeces
    program.row_lower_ = [1.0] * parts + [-INFINITE] * (skeins + fleeces)
    program.row_upper_ = [1.0] * (parts + skeins) + list(problem.fleeces)
    whole, shared = _core.HighsVarType.kInteger, _core.HighsVarType.kContinuous
    program.integrality_ = [whole] * len(offered) + [shared] * fleeces
    matrix = program.a_matrix_
    matrix.format_ = _core.MatrixFormat.kColwise
    matrix.num_col_, matrix.num_row_ = program.num_col_, program.num_row_
    matrix.start_ = [0, *accumulate(len(rows) for rows, _ in columns)]
    matrix.index_ = [row for rows, _ in columns for row in rows]
    matrix.value_ = [number for _, numbers in columns for number in numbers]
    solver.passModel(program)
