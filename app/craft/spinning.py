"""At the wheel: the twist to put in, how to share out the fibre, and what to change on the way."""

from dataclasses import dataclass
from math import ceil, log

from app.craft.domain import not_negative, positive, share
from app.craft.figure import Figure
from app.craft.thickness import tex_expected
from app.craft.twist import balanced_ply_twist
from app.craft.twist_uses import draft_for_treadles, treadles_for_draft, twist_uses

CLOSE = 0.10
"""A single within this share of the grist meant is as even as a hand spins (practice)."""

DUST = 1e-9

WEIGHED_ALONE = 0.5
"""A weighed length shorter than this many metres tells of one place only (practice)."""


@dataclass(frozen=True, slots=True)
class TwistPlan:
    """Turns per cm of the plied yarn and of its singles; of a single the two are the same."""

    ply_per_cm: float
    singles_per_cm: float


def twist_for_use(use: str, tex: float) -> float:
    """Turns per cm of a yarn of that tex in the middle of the band of its use (practice).

    KeyError for a use that is not in the table, ValueError for no tex.
    """
    found = {one.use: one for one in twist_uses()}[use]
    low, high = found.turns(tex)
    return (low + high) / 2


def twist_plan(ply_per_cm: float, plies: int, singles_per_cm: float | None = None) -> TwistPlan:
    """The twist of singles that a ply of so many turns per cm balances: (n+1)/n of it (practice),
    unless she has chosen their twist herself. ValueError for less than one ply or no twist."""
    positive(ply_per_cm, "the yarn's twist")
    if plies == 1:
        return TwistPlan(ply_per_cm, ply_per_cm)
    if singles_per_cm is not None:
        return TwistPlan(ply_per_cm, positive(singles_per_cm, "the singles' twist"))
    return TwistPlan(ply_per_cm, ply_per_cm / balanced_ply_twist(1.0, plies))


@dataclass(frozen=True, slots=True)
class AtRatio:
    """At a ratio of the wheel: treadles while a draft runs in, and the cm to draft for one."""

    ratio: float
    treadles: float
    draft_cm: float


def at_ratio(turns_per_cm: float, ratio: float, draft_cm: float) -> AtRatio:
    """How to put a twist in at a ratio. ValueError for a number that is not above zero."""
    treadles = treadles_for_draft(turns_per_cm, ratio, draft_cm)
    return AtRatio(ratio, treadles, draft_for_treadles(turns_per_cm, ratio, 1.0))


@dataclass(frozen=True, slots=True)
class Shared:
    """Fibre shared out: `loads` of the plying bobbin, each of `bobbins` singles of `each_g`."""

    loads: int
    bobbins: int
    each_g: float

    @property
    def in_all(self) -> int:
        """Bobbins of singles in all."""
        return self.loads * self.bobbins


def shared_out(fibre_g: float, plies: int, bobbin_g: float | None, chained: bool) -> Shared:
    """How to weigh out fibre so that the plies end together: a plied load fills one bobbin at
    most, and every single of a load has the same weight. A chain ply, like a single, is of one
    bobbin a load. ValueError for fibre, plies or a bobbin that is not above zero."""
    positive(fibre_g, "the fibre in g")
    bobbins = 1 if chained else round(positive(plies, "the number of plies"))
    loads = 1
    if bobbin_g is not None:
        loads = ceil(fibre_g / positive(bobbin_g, "what a bobbin holds in g") - DUST)
    return Shared(loads, bobbins, fibre_g / (loads * bobbins))


def sample_correction(
    target_tex: float, sample_tex: float, meant_tex: float, spun_tex: float
) -> float:
    """What to multiply the singles' tex by after a sample skein, so that the next one comes true.

    The sample was spun at `spun_tex` where `meant_tex` was meant, and came to `sample_tex` where
    `target_tex` was wanted: spun so, every tex of the single became sample/spun of the yarn.
    ValueError for a linear density that is not above zero.
    """
    for one in (target_tex, sample_tex, meant_tex, spun_tex):
        positive(one, "linear density in tex")
    return (target_tex / meant_tex) / (sample_tex / spun_tex)


def checked_tex(length_m: float, mass_g: float, division_g: float = 0.1) -> Figure:
    """Linear density in tex of a length of single drawn off a bobbin and weighed; unsure by the
    scale's half division and, of a short length, by how uneven a hand spins (practice).
    ValueError for a length, a mass or a division that is not above zero."""
    tex = 1000 * positive(mass_g, "mass in g") / positive(length_m, "length in m")
    scale = tex * positive(division_g, "the scale's division") / mass_g / 12**0.5
    place = tex * CLOSE * min(1.0, (WEIGHED_ALONE / length_m) ** 0.5)
    return Figure(tex, "tex", {"the scale's half division": scale, "one place only": place})


def wrapped_tex(wraps_per_inch: float) -> Figure:
    """Linear density in tex of a single from its wraps per inch, u 20 %."""
    return tex_expected(wraps_per_inch)


@dataclass(frozen=True, slots=True)
class Check:
    """A single against what is meant: heavier by so much of it (below zero: finer), and a word."""

    tex: Figure
    meant_tex: float
    heavier: float
    word: str

    @property
    def close(self) -> bool:
        """True within what a hand spins unevenly, or within what the check can tell."""
        return abs(self.heavier) <= CLOSE


def check_of(tex: Figure, meant_tex: float) -> Check:
    """How a checked single compares. ValueError for a grist that is not above zero."""
    meant = positive(meant_tex, "the single meant, in tex")
    heavier = tex.value / meant - 1
    if abs(heavier) <= CLOSE:
        word = "as meant"
    else:
        word = "heavier than meant" if heavier > 0 else "finer than meant"
    return Check(tex, meant, heavier, word)


def drift(tex: list[float], meant_tex: float) -> Figure | None:
    """How far a bobbin strays from what was meant, as the mean of the logarithms of its checks and
    their spread; None without a check. Of one check the spread is that of a hand (practice)."""
    if not tex:
        return None
    logs = [log(positive(one, "a grist in tex") / meant_tex) for one in tex]
    mean = sum(logs) / len(logs)
    if len(logs) == 1:
        return Figure(mean, "ln", {"drift along the bobbin": CLOSE})
    spread = (sum((one - mean) ** 2 for one in logs) / (len(logs) - 1)) ** 0.5
    return Figure(mean, "ln", {"drift along the bobbin": spread})


def end_becomes(mass_g: float, tex: float, plies: int, take_up: float) -> float:
    """Metres of yarn that the end of a bobbin gives: as it is (1), plied on itself (2) or
    chain-plied (3). ValueError for a mass below zero, no tex, or a take-up out of its domain."""
    singles = not_negative(mass_g, "mass in g") * 1000 / positive(tex, "the single in tex")
    taken = share(take_up, "take-up") if plies > 1 else 0.0
    return singles / positive(plies, "the number of plies") * (1 - taken)
