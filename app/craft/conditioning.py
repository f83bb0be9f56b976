"""What a blend weighs as the trade agrees: dried in thought, then given its agreed water back.

Shares of a blend are by dry mass, or as a label gives them, by conditioned mass; the two differ
where the fibres hold unlike amounts of water.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from math import fsum

from app.craft.domain import not_negative, positive
from app.craft.moisture import (
    Agreed,
    Rule,
    agreed_by,
    blend_regain,
    content_from_regain,
    dry_mass,
    dry_shares,
    mass_at,
    regain_from_content,
)
from app.craft.working import Standing, Step


@dataclass(frozen=True, slots=True)
class Conditioned:
    """A blend at its agreed regain: mass, dry mass and water in g, regain and content as shares,
    the shares of its fibres by dry mass, and the working."""

    g: float
    dry_g: float
    regain: float
    dry_shares: Mapping[str, float]
    steps: tuple[Step, ...]

    @property
    def water_g(self) -> float:
        return self.g - self.dry_g

    @property
    def content(self) -> float:
        return content_from_regain(self.regain)


def conditioned_mass(
    mass_g: float,
    shares: Mapping[str, float],
    regain_now: float,
    as_labelled: bool = False,
    rule: Rule = "EU",
) -> Conditioned:
    """What wool that weighs `mass_g` at `regain_now` (water per dry mass) weighs as agreed.

    `shares` by fibre of the regain table, in any measure; `as_labelled` where a label gave them.
    `regain_from_content` turns a moisture content into the regain asked for here. ValueError for a
    fibre the rule has no regain for, or no share above zero.
    """
    agreed = {fibre: agreed_by(rule, fibre) for fibre in shares}
    regains = {fibre: one.regain for fibre, one in agreed.items()}
    dry = dry_shares(shares, regains) if as_labelled else _to_one(shares)
    regain = blend_regain(dry, regains)
    dry_g = dry_mass(positive(mass_g, "mass in g"), regain_now)
    whole = mass_at(dry_g, regain)
    steps = (
        Step("Dry mass", f"{mass_g:g} g ÷ {1 + regain_now:.4g}", dry_g, "g"),
        _regain_step(dry, agreed, regain),
        Step("Conditioned mass", f"{dry_g:.2f} g × {1 + regain:.4f}", whole, "g"),
    )
    return Conditioned(whole, dry_g, regain, dry, steps)


def moisture_step(content: float) -> Step:
    """A moisture content, as a share of the wet mass, told as regain in percent of the dry."""
    regain = regain_from_content(content)
    how = f"{100 * content:g} ÷ (100 − {100 * content:g})"
    return Step("Regain", how, 100 * regain, "%", source="their definitions")


def _to_one(shares: Mapping[str, float]) -> dict[str, float]:
    whole = positive(fsum(shares.values()), "the shares of a blend")
    return {fibre: not_negative(part, fibre) / whole for fibre, part in shares.items()}


def _regain_step(dry: Mapping[str, float], agreed: Mapping[str, Agreed], regain: float) -> Step:
    parts = [f"{part:.3f} × {100 * agreed[fibre].regain:g} %" for fibre, part in dry.items()]
    sources = "; ".join(sorted({one.source for one in agreed.values()}))
    remembered = any(one.standing == "memory" for one in agreed.values())
    standing: Standing = "memory" if remembered else "published"
    what = "Agreed regain of the blend"
    return Step(what, " + ".join(parts), 100 * regain, "%", source=sources, standing=standing)
