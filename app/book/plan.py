"""A plan: a garment, or so many metres for something else, to be made."""

from dataclasses import dataclass
from datetime import date

from app.book.design import Design
from app.book.gauge import Gauge
from app.book.knitting import CastOn, Took
from app.book.person import Measure
from app.book.sequence import Sequence
from app.book.shape import Shape
from app.book.words import Edges, Follows, Place, PlanState, PromiseState


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
    """`priority` 1 comes first; `sureness_pct` and `losses` of None mean the maker's settings.

    `design` is what its parts were drawn from; `pattern_id` the written pattern it is knit from,
    in `size`, and `follows` what is kept of that at another gauge. `cast_on` keeps the numbers
    it was begun with, `took` what its parts really took, `measured` its size once washed.
    """

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
    design: Design | None = None
    pattern_id: str | None = None
    size: str = ""
    follows: Follows = ""
    cast_on: CastOn | None = None
    finished_on: date | None = None
    took: tuple[Took, ...] = ()
    measured: tuple[Measure, ...] = ()
    notes: str = ""


@dataclass(frozen=True, slots=True)
class Extra:
    """Yarn beyond the stitches of a part (a cable panel, floats), in percent of its yarn."""

    name: str
    pct: float
    u_pct: float


@dataclass(frozen=True, slots=True)
class Worked:
    """The finished size of a piece in percent of its size off the needles: above 100 for lace that
    is blocked out, below for cloth that is fulled."""

    width_pct: float = 100.0
    length_pct: float = 100.0


@dataclass(frozen=True, slots=True)
class Part:
    """`copies` pieces alike (two sleeves are one part of 2); a gauge or yarn of its own wins.

    `shape_u_pct` is how unsure the shape itself is, in percent of its area: 0 for a counted piece,
    10 for one worked out from a chest measurement. It is one error, common to the plan's parts; of
    a stated amount it is how unsure its share of the plan's stated total is.
    `place` is where it lies in the garment; a piece worked `in_round` has no seam of its own.
    `worked` of None is a piece that keeps its size; `sequence` says where yarns take turns.
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
    place: Place = ""
    in_round: bool = False
    extras: tuple[Extra, ...] = ()
    worked: Worked | None = None
    sequence: Sequence | None = None
    notes: str = ""


@dataclass(frozen=True, slots=True)
class Promise:
    """`mm` of the yarn in a holding, promised to a role of a part of a plan.

    `position` is the order in which the skeins of the part are knit, `from_inside` tells that a
    skein is knit from its inner end first.
    """

    id: str
    plan_id: str
    part_id: str
    holding_id: str
    mm: int
    role: str = "main"
    state: PromiseState = "kept"
    why: str = ""
    position: int = 0
    from_inside: bool = False
