"""Water in fibre: regain, content, what a dry mass weighs as the trade agrees, and when it is dry.

Regain is water per dry mass, content is water per wet mass; they are not the same number. Shares
of a blend are by dry mass here; shares on a label are of conditioned mass and are converted first.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from math import fsum
from typing import Literal, cast

from app.craft.domain import not_negative, positive, share
from app.craft.tables import Row, table
from app.craft.working import Standing

DRY_ENOUGH = 0.005
"""Wool is dry when two weighings, an hour or more apart, agree within this share (practice)."""


Rule = Literal["EU", "ASTM"]


@dataclass(frozen=True, slots=True)
class Agreed:
    """An agreed regain as a share of dry mass, how far to trust it, and where it stands."""

    regain: float
    standing: Standing
    source: str


@dataclass(frozen=True, slots=True)
class Regain:
    """Agreed regain of a fibre, None where the source is silent: by EU 1007/2011 Annex IX, and by
    ASTM D1909 or the trade."""

    fibre: str
    by_eu: Agreed | None
    by_astm: Agreed | None

    @property
    def eu(self) -> float | None:
        """The share agreed in the EU."""
        return self.by_eu.regain if self.by_eu else None

    @property
    def astm(self) -> float | None:
        """The share agreed by ASTM or the trade."""
        return self.by_astm.regain if self.by_astm else None

    @property
    def standing(self) -> Standing:
        """How far to trust the row: as its weakest number."""
        return "memory" if any(one.standing == "memory" for one in self._agreed) else "published"

    @property
    def source(self) -> str:
        """Where its numbers stand."""
        return "; ".join(one.source for one in self._agreed)

    @property
    def _agreed(self) -> list[Agreed]:
        return [one for one in (self.by_eu, self.by_astm) if one]


@cache
def regains() -> tuple[Regain, ...]:
    """Every fibre of the table."""
    return tuple(
        Regain(row["fibre"], _agreed(row, "eu"), _agreed(row, "astm")) for row in table("regain")
    )


def regain_of(fibre: str) -> Regain:
    """The agreed regain of a fibre by its name in the table; ValueError for one it lacks."""
    for row in regains():
        if row.fibre == fibre:
            return row
    raise ValueError(f"no agreed regain is known here for {fibre!r}")


def agreed_by(rule: Rule, fibre: str) -> Agreed:
    """The regain of a fibre by one rule; ValueError where that rule has none for it."""
    row = regain_of(fibre)
    agreed = row.by_eu if rule == "EU" else row.by_astm
    if agreed is None:
        raise ValueError(f"the {rule} rule has no regain for {fibre!r} here")
    return agreed


def regain_from_content(content: float) -> float:
    """Regain from moisture content, both as shares: c/(1−c). 12 % content is 13.6 % regain."""
    return share(content, "moisture content") / (1 - content)


def content_from_regain(regain: float) -> float:
    """Moisture content from regain, both as shares: R/(1+R)."""
    return not_negative(regain, "regain") / (1 + regain)


def mass_at(dry_g: float, regain: float) -> float:
    """Mass in g of a dry mass at a regain: dry·(1+R)."""
    return not_negative(dry_g, "dry mass in g") * (1 + not_negative(regain, "regain"))


def dry_mass(mass_g: float, regain: float) -> float:
    """Dry mass in g of what weighs `mass_g` at a regain."""
    return not_negative(mass_g, "mass in g") / (1 + not_negative(regain, "regain"))


def blend_regain(dry_shares: Mapping[str, float], regain: Mapping[str, float]) -> float:
    """Regain of a blend from the dry shares of its fibres, by any measure: they are made to sum to
    1. ValueError for no share above zero; KeyError for a fibre without a regain."""
    whole = positive(fsum(dry_shares.values()), "the shares of a blend")
    parts = (not_negative(part, fibre) * regain[fibre] for fibre, part in dry_shares.items())
    return fsum(parts) / whole


def dry_shares(label_shares: Mapping[str, float], regain: Mapping[str, float]) -> dict[str, float]:
    """Shares by dry mass, summing to 1, from shares of conditioned mass as labels give them."""
    dry = {fibre: dry_mass(part, regain[fibre]) for fibre, part in label_shares.items()}
    whole = positive(fsum(dry.values()), "the shares of a blend")
    return {fibre: part / whole for fibre, part in dry.items()}


def invoice_mass(mass_g: float, content: float, regain: float) -> float:
    """Mass in g at the agreed regain of what was weighed at a moisture content (not regain)."""
    return mass_at(mass_g * (1 - share(content, "moisture content")), regain)


def is_dry(earlier_g: float, later_g: float) -> bool:
    """True where the later weighing agrees with the earlier within half a percent."""
    earlier = positive(earlier_g, "mass in g")
    return abs(earlier - positive(later_g, "mass in g")) <= DRY_ENOUGH * earlier


def _agreed(row: Row, rule: str) -> Agreed | None:
    if not row[f"{rule}_pct"]:
        return None
    standing = cast(Standing, row[f"{rule}_standing"])
    return Agreed(float(row[f"{rule}_pct"]) / 100, standing, row[f"{rule}_source"])
