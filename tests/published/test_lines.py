"""NIST Statistical Reference Datasets, Norris: the certified line through 36 observations.

Tolerance: nine figures, far finer than a swatch needs and within the certified fifteen.
"""

import pytest

from app.craft.lines import fitted_line
from tests.published.printed import printed

pytestmark = pytest.mark.published

CERTIFIED = {row["quantity"]: float(row["certified"]) for row in printed("nist_norris_certified")}
LINE = fitted_line([(float(row["x"]), float(row["y"])) for row in printed("nist_norris")])


@pytest.mark.parametrize(
    ("quantity", "found"),
    [
        ("n", LINE.points),
        ("beta0", LINE.intercept),
        ("beta1", LINE.slope),
        ("beta0_sd", LINE.intercept_u),
        ("beta1_sd", LINE.slope_u),
        ("residual_sd", LINE.residual_sd),
        ("r_squared", LINE.fitted_share),
        ("ss_regression", LINE.slope**2 * LINE.spread),
        ("ss_residual", LINE.residual_sd**2 * (LINE.points - 2)),
        ("ms_regression", LINE.slope**2 * LINE.spread),
        ("ms_residual", LINE.residual_sd**2),
        ("F", (LINE.slope / LINE.slope_u) ** 2),
        ("df_residual", LINE.points - 2),
    ],
)
def test_the_certified_value(quantity, found):
    assert found == pytest.approx(CERTIFIED[quantity], rel=1e-9)
