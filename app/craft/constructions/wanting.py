"""From what was measured and chosen to all a construction needs, with what had to be assumed."""

from collections.abc import Mapping
from dataclasses import dataclass

from app.craft.constructions.drawing import Band, Construction, Knit, Wanted
from app.craft.constructions.ease import USUAL, chest_ease, ease_by_part
from app.craft.garments import USUAL_CHEST
from app.craft.sizes import Measured, body

BAND_PATTERNS = ("2×2 rib", "1×1 rib", "garter stitch", "moss stitch", "stocking stitch")
"""What a band may be worked in, the usual one first."""

EASE = "ease"
"""The choice that names an ease of the charts; it is there where a chest is fitted."""


@dataclass(frozen=True, slots=True)
class Taken:
    """What is wanted, and the measures in it that nobody took."""

    wanted: Wanted
    assumed: Mapping[str, Measured]


def want(
    construction: Construction,
    measures: Mapping[str, float],
    knit: Knit,
    *,
    ease: Mapping[str, float] | None = None,
    choices: Mapping[str, str] | None = None,
    band_knits: Mapping[str, Knit] | None = None,
) -> Taken:
    """All a construction needs from measures and ease in cm and choices by name, the rest from the
    body table and what is usual. `band_knits` are the gauges of bands that have one of their own.

    ValueError for a chest outside the table, a measure that is not above zero, or a choice the
    construction does not have.
    """
    known = _known(construction, measures)
    cm = {name: one.cm for name, one in known.items()}
    chosen = _chosen(construction, choices or {})
    by_part = ease_by_part(chest_ease(chosen.get(EASE, USUAL)), cm, ease or {})
    fitted = {name: by_part[name] for name in construction.eases if name in by_part}
    bands = _bands(construction, cm, chosen, knit, band_knits or {})
    assumed = {name: one for name, one in known.items() if one.u > 0}
    return Taken(Wanted(cm, fitted, knit, chosen, bands), assumed)


def choices_of(construction: Construction) -> dict[str, tuple[str, ...]]:
    """Every choice of a construction with its values, the usual one first. A band may be worked in
    any pattern for bands, unless the construction says in which."""
    patterns = {f"{band} pattern": BAND_PATTERNS for band in construction.bands or {}}
    return {**patterns, **construction.choices}


def sizes_of(construction: Construction) -> dict[str, tuple[float, float]]:
    """The garment's own sizes with the mean and u in cm taken if nobody gave them: those of the
    construction, and the depth of each band, which is a wish and therefore sure."""
    depths = {f"{band} depth": (cm, 0.0) for band, cm in (construction.bands or {}).items()}
    return {**construction.sizes, **depths}


def _known(construction: Construction, taken: Mapping[str, float]) -> dict[str, Measured]:
    whole = body(taken.get("chest", USUAL_CHEST.cm), taken)
    if "chest" not in taken:
        whole["chest"] = USUAL_CHEST
    known = {name: whole[name] for name in construction.measures}
    for name, (cm, u) in sizes_of(construction).items():
        usual = Measured(cm, u, "assumed")
        known[name] = Measured(taken[name], 0.0, "measured") if name in taken else usual
    return known


def _chosen(construction: Construction, choices: Mapping[str, str]) -> dict[str, str]:
    allowed = choices_of(construction)
    for name, value in choices.items():
        if name in allowed and value not in allowed[name]:
            raise ValueError(f"{name} is one of {', '.join(allowed[name])}, not {value!r}")
    return {name: choices.get(name, values[0]) for name, values in allowed.items()}


def _bands(
    construction: Construction,
    cm: Mapping[str, float],
    chosen: Mapping[str, str],
    knit: Knit,
    own: Mapping[str, Knit],
) -> dict[str, Band]:
    return {
        name: Band(cm[f"{name} depth"], chosen[f"{name} pattern"], own.get(name, knit))
        for name in construction.bands or {}
    }
