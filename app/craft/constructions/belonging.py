"""Measures that belong to one body: what no tape can have found beside that chest."""

from app.craft.constructions.drawing import Impossible, Reason, Wanted

MOST_OF_CHEST: dict[str, tuple[float, Reason]] = {
    "neck": (0.95, "neck too wide"),
    "upper arm": (0.60, "sleeve does not fit"),
    "cross back": (0.70, "nothing left"),
}
"""A measure is at most so much of the chest (assumed: babies of the table have 0.78, 0.40 and 0.51,
with a fifth more for bodies unlike it)."""

LEAST_HEAD_CM = 25.0
"""Around the smallest head a hat is made for (assumed: a child born too early)."""


def belonging(wanted: Wanted) -> None:
    """Impossible, in words, where a measure cannot be of the same body as its chest."""
    chest = wanted.measures["chest"]
    for name, (share, reason) in MOST_OF_CHEST.items():
        if wanted.measures.get(name, 0.0) > share * chest:
            cm = wanted.measures[name]
            told = f"{name} of {cm:g} cm does not belong to the same body as {chest:g} cm of chest"
            raise Impossible(reason, told)


def head_of(wanted: Wanted) -> float:
    """Around the head in cm; Impossible where nobody's is so small."""
    head = wanted.measures["head"]
    if head < LEAST_HEAD_CM:
        raise Impossible("nothing left", f"head of {head:g} cm is smaller than anyone's")
    return head
