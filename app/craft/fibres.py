"""What wool is made of: shares of its fibres, the water they hold, and what a label says of them.

Shares are as a label gives them: of the mass with the agreed water in it (EU 1007/2011, Annex IX).
A fibre that is not known stays "unknown", and what follows from it is wide.
"""

from collections.abc import Iterable, Mapping
from math import floor, fsum

from app.craft.domain import positive
from app.craft.figure import Figure
from app.craft.moisture import agreed_by, blend_regain, dry_shares, regains

UNKNOWN = "unknown"
"""A fibre nobody has named."""

WOOLS = ("wool", "lambswool", "merino", "fleece wool")
HAIRS = ("alpaca", "angora", "camel", "cashmere", "guanaco", "hair", "llama", "mohair", "vicuna",
         "yak")  # fmt: skip
OTHER_NAMES = {"flax": "linen", "nylon": "nylon, staple", "polyamide": "nylon, staple"}
"""Names that makers use, and the regain table's."""

UNKNOWN_REGAIN = "water in a fibre that is not known"


def regain_name(fibre: str, combed: bool = False) -> str | None:
    """The name of a fibre in the regain table; None for one it lacks."""
    plain = " ".join(fibre.lower().split())
    way = "combed" if combed else "carded"
    if plain in WOOLS:
        return f"wool, {way}"
    if plain in HAIRS:
        return f"animal hair, {way}"
    named = OTHER_NAMES.get(plain, plain)
    return next((one.fibre for one in regains() if one.fibre == named and one.by_eu), None)


def known_regains(fibres: Iterable[str], combed: bool = False) -> dict[str, float]:
    """The agreed regain, as a share of dry mass, of each fibre the EU's list has."""
    named = {fibre: regain_name(fibre, combed) for fibre in fibres}
    return {fibre: agreed_by("EU", name).regain for fibre, name in named.items() if name}


def regain_range() -> Figure:
    """What a fibre that is not known may hold: as likely as any from the least to the most of the
    EU's list (rectangular, JCGM 100:2008, 4.3.7)."""
    found = [one.eu for one in regains() if one.eu is not None]
    least, most = min(found), max(found)
    return Figure((least + most) / 2, "share", {UNKNOWN_REGAIN: (most - least) / 12**0.5})


def regain_of_shares(shares: Mapping[str, float], combed: bool = False) -> Figure:
    """The agreed regain of a blend, by its shares on a label, as a share of its dry mass; wide
    where fibres of it are not known. ValueError without a share above zero."""
    unknown = regain_range()
    known = known_regains(shares, combed)
    regain = {fibre: known.get(fibre, unknown.value) for fibre in shares}
    dry = dry_shares(shares, regain)
    mean = blend_regain(dry, regain)
    open_share = fsum(part for fibre, part in dry.items() if fibre not in known)
    causes = {UNKNOWN_REGAIN: open_share * unknown.u} if open_share > 0 else {}
    return Figure(mean, "share", causes)


def label_percents(shares: Mapping[str, float]) -> dict[str, int]:
    """Whole percents that sum to 100, the most first and what is not known last; what rounds to
    nothing is left out. ValueError without a share above zero."""
    whole = positive(fsum(shares.values()), "the shares of a blend")
    exact = {fibre: 100 * part / whole for fibre, part in shares.items()}
    percents = {fibre: floor(part) for fibre, part in exact.items()}
    nearest = sorted(exact, key=lambda one: (percents[one] - exact[one], one))
    for fibre in nearest[: 100 - sum(percents.values())]:
        percents[fibre] += 1
    order = sorted(percents, key=lambda one: (one == UNKNOWN, -percents[one], one))
    return {fibre: percents[fibre] for fibre in order if percents[fibre]}


def label(shares: Mapping[str, float]) -> str:
    """ "70 % wool, 30 % silk" """
    parts = label_percents(shares).items()
    return ", ".join(f"{percent} % {_said(fibre)}" for fibre, percent in parts)


def _said(fibre: str) -> str:
    return "unknown fibre" if fibre == UNKNOWN else fibre
