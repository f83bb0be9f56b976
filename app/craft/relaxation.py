"""How plain knit wool settles: Munden's constants for a fabric dry, wetted and fully relaxed.

Courses per cm are Kc/l and wales per cm Kw/l, l the yarn in a stitch in cm. A fabric fresh off the
needles is at best dry-relaxed; washed and dried flat it has the constants of the second state.
"""

from dataclasses import dataclass
from typing import Literal

from app.craft.domain import positive
from app.craft.figure import Figure
from app.craft.working import Standing, Step

State = Literal["dry-relaxed", "wet-relaxed", "fully relaxed"]


@dataclass(frozen=True, slots=True)
class Relaxed:
    """Constants of a state: courses, wales, area (printed as rounded by itself), each per loop."""

    courses: float
    wales: float
    area: float
    standing: Standing
    source: str


RELAXED: dict[State, Relaxed] = {
    "dry-relaxed": Relaxed(5.0, 3.8, 19.0, "published", "Munden 1959"),
    "wet-relaxed": Relaxed(5.3, 4.1, 21.6, "published", "Munden 1959"),
    "fully relaxed": Relaxed(5.5, 4.2, 23.1, "published", "GATE TF 2015; area as their product"),
}

SETTLING_SHARE = 0.05
"""How far a hand-knit swatch strays from the constants when it is washed (practice)."""


def after_washing(stitches_per_10cm: float, rows_per_10cm: float) -> tuple[Figure, Figure]:
    """The gauge in 10 cm to expect of an unwashed swatch once it is washed and dried flat.

    By the ratios of Munden's constants, u 5 % each way: wash the swatch to know. ValueError for a
    gauge that is not above zero.
    """
    dry, wet = RELAXED["dry-relaxed"], RELAXED["wet-relaxed"]
    stitches = positive(stitches_per_10cm, "stitches in 10 cm") * wet.wales / dry.wales
    rows = positive(rows_per_10cm, "rows in 10 cm") * wet.courses / dry.courses
    return (
        Figure(stitches, "st/10 cm", {"settling in width": stitches * SETTLING_SHARE}),
        Figure(rows, "rows/10 cm", {"settling in length": rows * SETTLING_SHARE}),
    )


def washing_steps(stitches_per_10cm: float, rows_per_10cm: float) -> tuple[Step, Step]:
    """The working of `after_washing`."""
    stitches, rows = after_washing(stitches_per_10cm, rows_per_10cm)
    dry, wet = RELAXED["dry-relaxed"], RELAXED["wet-relaxed"]
    across = f"{stitches_per_10cm:g} × {wet.wales} ÷ {dry.wales}"
    along = f"{rows_per_10cm:g} × {wet.courses} ÷ {dry.courses}"
    source = "Munden 1959, dry-relaxed to wet-relaxed"
    return (
        Step("Stitches once washed", across, stitches.value, stitches.unit, stitches.u, source),
        Step("Rows once washed", along, rows.value, rows.unit, rows.u, source),
    )
