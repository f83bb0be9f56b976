"""Something the program can learn from: where it was seen, what it tells of, and what was usual."""

from dataclasses import dataclass
from datetime import date
from math import hypot, log
from typing import Literal

from app.craft.learning import Effect, Judged, Observed, Standing
from app.planning.learning.factors import factor_of

Unit = Literal["share", "times", "m/h", "g/h"]


@dataclass(frozen=True, slots=True)
class Names:
    """Whose a case is: the names of its levels, empty where one is not known."""

    breed: str = ""
    fleece: str = ""
    preparation: str = ""
    yarn: str = ""
    place: str = ""
    pattern: str = ""
    source: str = ""

    def effects(self, factor: str) -> tuple[Effect, ...]:
        """The effects that bear on a factor of this case."""
        return factor_of(factor).effects(
            breed=self.breed,
            fleece=self.fleece,
            preparation=self.preparation,
            yarn=self.yarn,
            place=self.place,
            pattern=self.pattern,
            source=self.source,
        )


@dataclass(frozen=True, slots=True)
class Observation:
    """`measured` where `usual` was to be expected, of the factors together. `key` is that of its
    mark; `what` says in words what was measured; `holding_id` leads there, if to a holding.
    `error` is the share by which the measurement itself may be off."""

    key: str
    day: date
    factors: tuple[str, ...]
    what: str
    measured: float
    usual: float
    unit: Unit
    names: Names
    error: float = 0.0
    holding_id: str | None = None

    @property
    def seen(self) -> Observed:
        """The observation as the kernel takes it, in logs."""
        effects = tuple(one for name in self.factors for one in self.names.effects(name))
        sd = hypot(self.error, *(factor_of(name).batch for name in self.factors))
        return Observed(self.key, effects, log(self.measured / self.usual), sd)


@dataclass(frozen=True, slots=True)
class Told:
    """An observation, how far off it was, and what became of it."""

    observation: Observation
    judged: Judged

    @property
    def standing(self) -> Standing:
        return self.judged.standing

    @property
    def counts(self) -> bool:
        """True where it is learned from."""
        return self.standing in ("counts", "let in")
