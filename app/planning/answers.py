"""What a reckoning answers. Metres in `_m`, grams in `_g`, odds between 0 and 1."""

from collections.abc import Mapping
from dataclasses import dataclass, field

from app.book.words import ErrandKind, PlanState, PromiseState, WoolState
from app.craft.figure import Figure
from app.craft.working import Step
from app.planning.learning import Learnt


@dataclass(frozen=True, slots=True)
class Taken:
    """Yarn a part has from one skein: pegging from the part to the shelf."""

    promise_id: str
    holding_id: str
    code: str
    yarn_id: str | None
    role: str
    m: float
    g: float
    state: PromiseState
    why: str


@dataclass(frozen=True, slots=True)
class Remark:
    """Something to know about a yarn in a part; `doubt` tells an objection from a plain fact."""

    text: str
    doubt: bool = False


@dataclass(frozen=True, slots=True)
class PartAnswer:
    """A part's need against what is promised to it. Stitches and rows are of one copy, and None
    where the part is only an amount. `need` (m) is for all copies. `used_m` is already knitted in,
    `short_m` the expected need neither used nor promised."""

    part_id: str
    name: str
    copies: int
    stitches: int | None
    rows: int | None
    need: Figure
    yarn_id: str | None
    used_m: float
    promised_m: float
    short_m: float
    skeins: tuple[Taken, ...]
    remarks: tuple[Remark, ...]
    working: tuple[Step, ...]


@dataclass(frozen=True, slots=True)
class Allowance:
    """Yarn no part holds: tails and joins, a swatch, unusable ends, mending."""

    name: str
    m: float


@dataclass(frozen=True, slots=True)
class GroupAnswer:
    """Parts that draw on the same yarns, reckoned together.

    `need` and `supply` in m; `supply` is what is knitted in already, what is promised and what the
    reserve really holds. `reserve_m` is the reserve wanted, `reserved_m` what it found.
    `short_m`, `short_g` and `short_skeins` are what to add to reach the wanted sureness;
    `short_skeins` is None where no skein of the yarn is known. `yarn_id` is the yarn to make more
    of, None where none has been chosen. `free_m` of the group's yarns could be promised now, after
    what plans of higher priority still want; `free_yarn_ids` are the yarns it is of. `to_make_m`,
    `to_make_g` and `to_make_skeins` are what is short beyond that: what must be spun or bought.
    """

    yarn_id: str | None
    yarn_ids: tuple[str, ...]
    part_ids: tuple[str, ...]
    need: Figure
    supply: Figure
    used_m: float
    promised_m: float
    reserve_m: float
    reserved_m: float
    free_m: float
    free_yarn_ids: tuple[str, ...]
    odds: float
    short_m: float
    short_g: float | None
    short_skeins: int | None
    to_make_m: float
    to_make_g: float | None
    to_make_skeins: int | None
    left_m: float
    left_at_least_m: float


@dataclass(frozen=True, slots=True)
class PlanAnswer:
    """The answer to "is it enough?" for one plan.

    `need` = parts + allowances, in m. `odds` that all its yarns suffice together, `odds_u` their
    numerical half-width. `left_m` is the expected left-over, `left_at_least_m` what is left 9 times
    in 10. `begun` is False while the plan has no part, or a part whose need cannot be known for
    want of a gauge: then there is nothing to answer yet.
    """

    plan_id: str
    name: str
    state: PlanState
    begun: bool
    sureness: float
    need: Figure
    used_m: float
    promised_m: float
    reserved_m: float
    odds: float
    odds_u: float
    short_m: float
    short_g: float | None
    short_skeins: int | None
    to_make_m: float
    to_make_g: float | None
    to_make_skeins: int | None
    left_m: float
    left_at_least_m: float
    parts: tuple[PartAnswer, ...]
    groups: tuple[GroupAnswer, ...]
    allowances: tuple[Allowance, ...]
    working: tuple[Step, ...]

    @property
    def enough(self) -> bool:
        """True where the plan is as sure as the maker asked."""
        return self.begun and self.short_m == 0.0

    @property
    def free_to_promise_m(self) -> float:
        """Of what is short, the metres the shelf has free: the rest must be made."""
        return self.short_m - self.to_make_m

    @property
    def waiting(self) -> bool:
        """True where the shelf could cover it, but too little has been promised yet."""
        return self.begun and self.short_m > 0.0 and self.to_make_m == 0.0


@dataclass(frozen=True, slots=True)
class Held:
    """A promise or reserve on one holding: pegging from the shelf to the plans."""

    plan_id: str
    part_id: str | None
    m: float


@dataclass(frozen=True, slots=True)
class ShelfLine:
    """What a holding of yarn holds, in m and g, and to whom it is promised.

    How `held` was worked out is `app.planning.supply.working(book, holding_id)`.
    """

    holding_id: str
    held: Figure
    held_g: float
    promised_m: float
    reserved_m: float
    free_m: float
    promised_to: tuple[Held, ...]


@dataclass(frozen=True, slots=True)
class FleeceAnswer:
    """What a fleece can still become. Grams now, the part of them already called for by plans,
    prepared fibre (g) and finished yarn (g) it gives; metres follow from a chosen grist."""

    fleece_id: str
    now_g: float
    called_for_g: float
    prepared_g: Figure
    yarn_g: Figure
    working: tuple[Step, ...]


@dataclass(frozen=True, slots=True)
class WorkLine:
    """A line of the work list. Amounts are rounded up; None where they do not apply.

    `prepared_g`, `raw_g` and `fleece_g` are the prepared fibre, the raw fleece and the fleece as it
    is now (in `state`; None where in several) behind `g` of finished yarn.
    """

    kind: ErrandKind
    text: str
    yarn_id: str | None = None
    yarn: str = ""
    m: int | None = None
    g: int | None = None
    balls: int | None = None
    skeins: int | None = None
    prepared_g: int | None = None
    raw_g: int | None = None
    fleece_g: int | None = None
    state: WoolState | None = None
    holding_id: str | None = None
    fleece_id: str | None = None
    fleece: str = ""
    plan_id: str | None = None
    plan: str = ""
    parts: tuple[str, ...] = ()
    errand_id: str | None = None
    done: bool = False


@dataclass(frozen=True, slots=True)
class Uncovered:
    """A promise, or part of one, that the shelf no longer holds."""

    promise_id: str
    plan_id: str
    plan: str
    part: str
    code: str
    m: float


@dataclass(frozen=True, slots=True)
class Reckoning:
    """The whole: every plan, holding and fleece, and the work that follows from them; `learnt` is
    what the maker's own measurements tell."""

    plans: tuple[PlanAnswer, ...]
    shelf: Mapping[str, ShelfLine]
    fleeces: Mapping[str, FleeceAnswer]
    work: tuple[WorkLine, ...]
    uncovered: tuple[Uncovered, ...]
    learnt: Learnt = field(default_factory=Learnt, compare=False, repr=False)

    def plan(self, plan_id: str) -> PlanAnswer:
        """The answer for one plan; KeyError for a plan that is not in the book."""
        for one in self.plans:
            if one.plan_id == plan_id:
                return one
        raise KeyError(plan_id)
