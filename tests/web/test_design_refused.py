"""A refusal stands beside the measure it is about."""

import pytest

from app.craft.constructions import construction_of
from app.craft.constructions.drawing import Impossible
from app.web.forms.design_refused import refused_at

YOKE, HAT, SCARF, SHAWL = (
    construction_of(one) for one in ("pullover, round yoke", "hat", "scarf", "shawl, triangular")
)


@pytest.mark.parametrize(
    ("refusal", "construction", "field"),
    [
        (Impossible("nothing left", "the body is too short"), YOKE, "measure_body_length"),
        (Impossible("nothing left", "the sleeve is too short for its cuff"), YOKE, None),
        (Impossible("neck too wide", "the neck takes 200 of 180 stitches"), YOKE, "measure_neck"),
        (Impossible("too steep", "the yoke is too shallow"), YOKE, "measure_armhole_depth"),
        (Impossible("too steep", "the crown would lose too much"), HAT, "measure_head"),
        (Impossible("sleeve does not fit", "all of it"), YOKE, "measure_upper_arm"),
        (Impossible("too steep", "the shawl is too wide for its depth"), SHAWL, "measure_depth"),
        (Impossible("too steep", "it cannot lie flat"), SCARF, "gauge_stitches"),
        (ValueError("a chest must lie between 30 and 180 cm"), YOKE, "measure_chest"),
        (ValueError("something else"), HAT, "measure_chest"),
    ],
)
def test_a_refusal_stands_beside_its_measure(refusal, construction, field) -> None:
    assert refused_at(refusal, construction) == (field or "measure_cuff_depth")
