"""How a garment is washed, by its fibre, for the one it is given to (common practice)."""

import re
from collections.abc import Iterable

WOOL = (
    "Wash by hand in lukewarm water with a mild wool soap. Do not rub, wring or soak it, and keep "
    "all waters equally warm, or it may felt. Press it out in a towel and dry it flat, away from "
    "heat."
)
DROOPS = "Lift it with both hands while it is wet and never hang it up: the fibre stretches."
SILK = "Keep it out of the sun while it dries, and use no bleach."
PLANT = (
    "Wash it by hand or in a gentle wash at 30 °C. Pull it into shape while it is damp and dry it "
    "flat; it may shrink a little at the first wash."
)
UNKNOWN = "Wash it by hand in cool water, press it out in a towel and dry it flat."

PLANTS = "cotton|linen|flax|hemp|nettle|ramie"
ANIMALS = "wool|merino|lamb|alpaca|llama|mohair|angora|cashmere|yak|camel|silk"
DROOPING = "alpaca|llama|mohair|silk"


def care(fibres: Iterable[str]) -> tuple[str, ...]:
    """What to tell of washing it: the gentlest way that any of its fibres wants."""
    named = " ".join(fibres).lower()
    lines = [WOOL if _has(ANIMALS, named) else PLANT if _has(PLANTS, named) else UNKNOWN]
    lines += [DROOPS] if _has(DROOPING, named) else []
    lines += [SILK] if _has("silk", named) else []
    return tuple(lines)


def _has(words: str, text: str) -> bool:
    return re.search(words, text) is not None
