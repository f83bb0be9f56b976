"""A small mixed-integer program, row by row, solved by HiGHS."""

from app.planning.solve.program import silent

INFINITE = 1e30


class Model:
    def __init__(self):
        self.costs, self.whole, self.highest, self.rows = [], [], [], []
        self.values = []

    def yes(self, cost):
        """A yes-or-no variable; answers its place."""
        return self._variable(cost, True, 1.0)

    def metres(self, cost, most=INFINITE):
        """A variable of zero or more; answers its place."""
        return self._variable(cost, False, most)

    def row(self, numbers, low, high):
        """low ≤ Σ number × variable ≤ high."""
        self.rows.append((numbers, low, high))

    def least(self):
        """The least cost, with the variables in `values`."""
        from highspy import _core

        solver = silent()
        solver.setOptionValue("mip_rel_gap", 0.0)
        solver.setOptionValue("mip_abs_gap", 1e-7)
        for cost, high in zip(self.costs, self.highest, strict=True):
            solver.addCol(cost, 0.0, high, 0, [], [])
        for place, whole in enumerate(self.whole):
            if whole:
                solver.changeColIntegrality(place, _core.HighsVarType.kInteger)
        for numbers, low, high in self.rows:
            low = -INFINITE if low is None else low
            high = INFINITE if high is None else high
            solver.addRow(low, high, len(numbers), list(numbers), list(numbers.values()))
        solver.run()
        assert solver.getModelStatus() == _core.HighsModelStatus.kOptimal
        self.values = list(solver.getSolution().col_value)
        return solver.getInfo().objective_function_value

    def _variable(self, cost, whole, highest):
        self.costs.append(cost)
        self.whole.append(whole)
        self.highest.append(highest)
        return len(self.costs) - 1
