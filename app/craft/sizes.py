"""Bodies and ease: the printed table, what is assumed beside it, and the wearer's own measures.

The printed table holds no garment lengths, and its upper arms and shoulders are known to run small
above a chest of 100 cm. A measure taken from the wearer always comes first.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import cache
from itertools import pairwise
from typing import cast

from app.craft.domain import positive
from app.craft.tables import Row, table
from app.craft.working import Standing

TABLE_SHARE = 0.05
"""How far one body lies from the table's at the same chest (assumed)."""

LEAST_CHEST_CM, MOST_CHEST_CM = 30.0, 180.0

Points = tuple[tuple[float, float], ...]

ASSUMED: dict[str, tuple[float, Points]] = {
    "body length": (0.08, ((41, 26), (53, 33), (64, 42), (80, 54), (92, 60), (112, 64), (132, 67))),
    "wrist": (0.10, ((41, 11), (64, 14), (92, 17), (132, 20))),
    "neck": (0.12, ((41, 32), (64, 38), (92, 46), (132, 52))),
    "hand": (0.08, ((41, 11), (64, 15), (92, 19.5), (132, 22))),
    "hand length": (0.08, ((41, 9), (64, 14), (92, 18.5), (132, 20))),
    "foot": (0.08, ((41, 12), (64, 18), (92, 23), (132, 26))),
    "foot length": (0.08, ((41, 11), (64, 19), (92, 25), (132, 28))),
}
"""Measures no table seen here holds, by chest in cm, and their standard uncertainty as a share
(assumed). Around the wrist, neck, hand and foot; body length from the neck at the back to the
hem."""

PRINTED = (
    "arm length to underarm",
    "upper arm",
    "armhole depth",
    "cross back",
    "waist",
    "hips",
    "back waist length",
)
"""Measures taken from the table. The men's has no back waist length: the women's stands for it."""

HEADS = {"baby": ("baby",), "child": ("toddler", "child"), "woman": ("woman",), "man": ("man",)}
"""Sizes of the head chart that belong to a group of the body table."""


@dataclass(frozen=True, slots=True)
class Measured:
    """A measure of a body in cm, its standard uncertainty, standing and source."""

    cm: float
    u: float
    standing: Standing
    source: str = ""


@dataclass(frozen=True, slots=True)
class Printed:
    """A row of the body table: a range in cm."""

    group: str
    size: str
    measure: str
    low_cm: float
    high_cm: float
    standing: Standing
    source: str

    @property
    def middle_cm(self) -> float:
        return (self.low_cm + self.high_cm) / 2


@dataclass(frozen=True, slots=True)
class Ease:
    """How much larger than the body a garment is meant to be, in cm; charts differ by year."""

    name: str
    low_cm: float
    high_cm: float
    standing: Standing
    source: str


_OLD = "an older chart of the Craft Yarn Council, quoted in print, 2011"
_NEW = "the chart of the Craft Yarn Council from 2018, remembered"

EASES = (
    Ease("very close (older chart)", -5, 0, "published", _OLD),
    Ease("close (older chart)", 2.5, 5, "published", _OLD),
    Ease("standard", 5, 10, "published", _OLD),
    Ease("loose", 10, 15, "published", _OLD),
    Ease("oversized", 15, 25, "published", _OLD),
    Ease("very close (2018 chart)", -10, -5, "memory", _NEW),
    Ease("close (2018 chart)", 0, 0, "memory", _NEW),
)
"""Ends the charts leave open (very close, oversized) are closed here by 5 and 10 cm."""


@cache
def printed() -> tuple[Printed, ...]:
    """Every row of the body table."""
    return tuple(_printed(row) for row in table("bodies"))


def groups_for(chest_cm: float) -> tuple[str, ...]:
    """Who a chest belongs to where nothing else is said: a baby below 52 cm, a child below 77,
    else an adult, who is taken as midway between the two adult tables."""
    if chest_cm < 52:
        return ("baby",)
    return ("child",) if chest_cm < 77 else ("woman", "man")


def body(chest_cm: float, own: Mapping[str, float] | None = None) -> dict[str, Measured]:
    """Every measure of a body known or assumed from its chest, in cm, by name; `own` ones win.

    Own names that are no measure of a body, such as "ease", are left alone. ValueError for a chest
    below 30 or above 180 cm, or an own measure that is not above zero.
    """
    if not LEAST_CHEST_CM <= chest_cm <= MOST_CHEST_CM:
        raise ValueError(f"a chest must lie between 30 and 180 cm, not {chest_cm:g} cm")
    known = {name: _assumed(name, chest_cm) for name in ASSUMED}
    known |= _from_table(chest_cm)
    taken = {"chest": chest_cm, **(own or {})}
    measured = {
        name: Measured(positive(cm, name), 0.0, "measured")
        for name, cm in taken.items()
        if name == "chest" or name in known
    }
    return known | measured


def _assumed(name: str, chest_cm: float) -> Measured:
    share, points = ASSUMED[name]
    cm = between(points, chest_cm)
    return Measured(cm, share * cm, "assumed")


def _from_table(chest_cm: float) -> dict[str, Measured]:
    groups = groups_for(chest_cm)
    known = {
        name: _middle(
            [_at_chest(group, name, chest_cm) for group in groups if _prints(group, name)]
        )
        for name in PRINTED
    }
    heads = [row for group in groups for row in _heads(group)]
    return known | {"head": _middle([(row.middle_cm, row) for row in heads])}


def _prints(group: str, measure: str) -> bool:
    return any((row.group, row.measure) == (group, measure) for row in printed())


def _middle(found: list[tuple[float, Printed]]) -> Measured:
    """The middle of several readings of the table, at least 5 % wide."""
    readings = [cm for cm, _ in found]
    cm = sum(readings) / len(readings)
    u = max(TABLE_SHARE * cm, (max(readings) - min(readings)) / 2)
    return Measured(cm, u, _weakest(row for _, row in found), found[0][1].source)


def _at_chest(group: str, measure: str, chest_cm: float) -> tuple[float, Printed]:
    by_size = {row.size: row for row in printed() if row.group == group and row.measure == "chest"}
    rows = [row for row in printed() if row.group == group and row.measure == measure]
    points = tuple(sorted((by_size[row.size].middle_cm, row.middle_cm) for row in rows))
    return between(points, chest_cm), rows[0]


def _heads(group: str) -> list[Printed]:
    return [row for row in printed() if row.group == "head" and row.size in HEADS[group]]


def _weakest(rows: Iterable[Printed]) -> Standing:
    return "memory" if any(row.standing == "memory" for row in rows) else "published"


def between(points: Points, x: float) -> float:
    """The value at x on the straight lines through points in order; the end's value beyond it."""
    if x <= points[0][0]:
        return points[0][1]
    for (x0, y0), (x1, y1) in pairwise(points):
        if x <= x1:
            return y0 + (y1 - y0) * (x - x0) / (x1 - x0)
    return points[-1][1]


def _printed(row: Row) -> Printed:
    return Printed(
        row["group"],
        row["size"],
        row["measure"],
        float(row["low_cm"]),
        float(row["high_cm"]),
        cast(Standing, row["standing"]),
        row["source"],
    )
