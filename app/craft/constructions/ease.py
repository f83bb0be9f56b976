"""Ease by part: how much wider than the body each part of a garment is meant to be, in cm."""

from collections.abc import Mapping
from dataclasses import dataclass

from app.craft.sizes import EASES, Ease

USUAL = "standard"


@dataclass(frozen=True, slots=True)
class PartEase:
    """A part's ease: a share of the chest's, a share of the part itself, and cm besides."""

    of_chest: float = 0.0
    of_part: float = 0.0
    cm: float = 0.0


PARTS: dict[str, PartEase] = {
    "chest": PartEase(of_chest=1.0),
    "waist": PartEase(of_chest=1.0),
    "hips": PartEase(of_chest=0.5),
    "cross back": PartEase(of_chest=0.25),
    "armhole depth": PartEase(of_chest=0.25),
    "upper arm": PartEase(of_chest=0.6),
    "wrist": PartEase(cm=3.0),
    "head": PartEase(of_part=-0.08),
    "hand": PartEase(of_part=0.08),
    "foot": PartEase(of_part=-0.08),
    "foot length": PartEase(of_part=-0.06),
}
"""What each part takes where nobody said (practice): socks and hats are smaller than the body."""


def ease_named(name: str) -> Ease:
    """The ease of that name in the Craft Yarn Council's charts, with the chart's version;
    ValueError for a name no chart has."""
    for one in EASES:
        if one.name == name:
            return one
    raise ValueError(f"no chart of ease has {name!r}")


def chest_ease(name: str = USUAL) -> float:
    """The middle of a chart's range, in cm around the chest."""
    one = ease_named(name)
    return (one.low_cm + one.high_cm) / 2


def ease_by_part(
    chest_cm: float, measures: Mapping[str, float], own: Mapping[str, float]
) -> dict[str, float]:
    """The ease of every part, from that of the chest; the wearer's own wishes come first. A tight
    garment is tight at the chest: its armholes and arms never take less than none."""
    loose = max(own.get("chest", chest_cm), 0.0)
    usual = {
        name: (chest_cm if name in ("chest", "waist") else loose) * part.of_chest
        + measures[name] * part.of_part
        + part.cm
        for name, part in PARTS.items()
        if name in measures
    }
    return usual | dict(own)
