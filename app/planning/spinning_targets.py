"""What a yarn is meant to be: what the maker chose, and what follows where she chose nothing."""

from dataclasses import dataclass

from app.book.book import Book
from app.book.spinning import Spinning
from app.book.wheel import Wheel
from app.book.yarn import Yarn
from app.craft.chain import CHAIN_PLIES
from app.craft.figure import Figure
from app.craft.spinning import TwistPlan, twist_for_use, twist_plan
from app.craft.thickness import tex_expected
from app.craft.twist import balanced_ply_twist
from app.planning.answers import Reckoning
from app.planning.learning.observed import Names
from app.planning.yarns import TARGET_SHARE, Lots

USUAL_USE = "jumpers, hats and most knitting"
"""What a yarn is for where nothing is said of it (assumed)."""

KNOWN_U = 0.05
"""A shrinkage surer than this was measured, not assumed."""


@dataclass(frozen=True, slots=True)
class Targets:
    """The yarn to be made: tex, plies, metres, use, twist, and the wheel it is spun on. `said` are
    the choices as she made them."""

    yarn: Yarn
    said: Spinning
    tex: Figure
    plies: int
    metres: float
    use: str
    twist: TwistPlan
    wheel: Wheel | None

    @property
    def names(self) -> Names:
        """Whose the learned numbers are."""
        return Names(preparation=self.said.preparation, yarn=self.yarn.id)

    @property
    def ratios(self) -> tuple[float, ...]:
        """The ratio she chose, or all of her wheel's."""
        if self.said.ratio:
            return (self.said.ratio,)
        return tuple(one.value for one in self.wheel.ratios) if self.wheel else ()


def targets(book: Book, reckoning: Reckoning, yarn: Yarn) -> Targets | str:
    """The targets of a yarn, or what must be said first, in words."""
    said = yarn.spinning or Spinning()
    plies = CHAIN_PLIES if said.chained else yarn.plies
    tex, metres = _tex(book, yarn, said), wanted_m(reckoning, yarn)
    if yarn.bought:
        return "It is bought, not spun."
    if tex is None:
        return "Say what grist it is to have, or how many wraps in an inch."
    if not plies:
        return "Say how many plies it is to have."
    if not metres:
        return "Say how many metres you want: no garment waits for any of it."
    use = said.use or USUAL_USE
    twist = _twist(said, plies, twist_for_use(use, tex.value))
    return Targets(yarn, said, tex, plies, metres, use, twist, book.wheel.get(said.wheel_id or ""))


def wanted_m(reckoning: Reckoning, yarn: Yarn) -> float:
    """Metres to spin: as she said, else what garments wait for."""
    if yarn.spinning and yarn.spinning.wanted_mm:
        return yarn.spinning.wanted_mm / 1000
    lines = (one for one in reckoning.work if one.kind == "spin" and one.yarn_id == yarn.id)
    return float(sum(one.m or 0 for one in lines))


def _twist(said: Spinning, plies: int, usual: float) -> TwistPlan:
    """As she stated it; else what her ratio and draft put into a single; else by the use."""
    single = said.singles_twist_per_m / 100 if said.singles_twist_per_m else None
    if single is None and said.ratio and said.draft_mm:
        single = said.ratio / (said.draft_mm / 10)
    if said.ply_twist_per_m:
        return twist_plan(said.ply_twist_per_m / 100, plies, single)
    if single is None:
        return twist_plan(usual, plies)
    ply = balanced_ply_twist(single, plies) if plies > 1 else single
    return twist_plan(ply, plies, single)


def _tex(book: Book, yarn: Yarn, said: Spinning) -> Figure | None:
    if yarn.target_tex:
        cause = {f"grist of {yarn.name}": yarn.target_tex * TARGET_SHARE}
        return Figure(yarn.target_tex, "tex", cause)
    return tex_expected(said.wraps) if said.wraps else Lots(book).tex(yarn.id)
