"""A plan: a garment, or so many metres for something else, to be made."""

from dataclasses import dataclass
from datetime import date

from app.book.gauge import Gauge
from app.book.shape import Shape
from app.book.words import Edges, PlanState, PromiseState


@dataclass(frozen=True, slots=True)
class RoleYarn:
    """The yarn meant for a role of a plan or part ("main", "contrast" …)."""

    role: str
    yarn_id: str


@dataclass(frozen=True, slots=True)
class Losses:
    """Yarn that no stitch holds.

    `tail_mm` is one tail (a change of skein leaves two), `swatch_mm` the swatch if it is kept,
    `unusable_pct` knots and thin places in percent of the need, `mending_mm` kept for mending.
    """

    tail_mm: int = 175
    swatch_mm: int = 10_000
    unusable_pct: float = 1.0
    mending_mm: int = 5_000


@dataclass(frozen=True, slots=True)
class Plan:
    """`priority` 1 comes first; `sureness_pct` and `losses` of None mean the maker's settings."""

    id: str
    name: str
    person_id: str | None = None
    state: PlanState = "intended"
    priority: int = 1
    wanted_by: date | None = None
    gauge: Gauge | None = None
    yarns: tuple[RoleYarn, ...] = ()
    sureness_pct: float | None = None
    losses: Losses | None = None
    notes: str = ""


@dataclass(frozen=True, slots=True)
class Part:
    """`copies` pieces alike (two sleeves are one part of 2); a gauge or yarn of its own wins.

    `shape_u_pct` is how unsure the shape itself is, in percent of its area: 0 for a counted piece,
    10 for one worked out from a chest measurement. It is one error, common to the plan's parts.
    """

    id: str
    plan_id: str
    name: str
    shape: Shape
    position: int = 1
    copies: int = 1
    gauge: Gauge | None = None
    yarns: tuple[RoleYarn, ...] = ()
    edges: Edges = "none"
    shape_u_pct: float = 0.0
    notes: str = ""


@dataclass(frozen=True, slots=True)
class Promise:
    """`mm` of the yarn in a holding, promised to a role of a part of a plan."""

    id: str
    plan_id: str
    part_id: str
    holding_id: str
    mm: int
    role: str = "main"
    state: PromiseState = "kept"
    why: str = ""
