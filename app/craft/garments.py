"""The quick reckoning's garments: from a body to plain pieces of fabric, roughly.

Good enough to answer "will it do?" before anything is drawn up, not to knit from: each garment
carries a model error of 10 %, and every measure that was assumed widens it further.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from app.craft.sizes import Measured, body

MODEL_SHARE = 0.10
"""Standard uncertainty of a garment's area as drawn here, common to its pieces (practice)."""

USUAL_CHEST = Measured(96.0, 8.0, "assumed")
"""The chest taken where none was measured, in cm."""


@dataclass(frozen=True, slots=True)
class Piece:
    """A piece that goes evenly from `width_cm` to `width_to_cm` over `length_cm`; `copies` alike.
    A piece knit in the round is as wide as it is round."""

    name: str
    width_cm: float
    width_to_cm: float
    length_cm: float
    copies: int = 1

    @property
    def area_cm2(self) -> float:
        """Of all copies."""
        return (self.width_cm + self.width_to_cm) / 2 * self.length_cm * self.copies


@dataclass(frozen=True, slots=True)
class Garment:
    """The pieces of a garment and why its area is unsure: `causes` are shares of the area, 0.10
    being 10 %. `assumed` are the measures it used that nobody took."""

    kind: str
    pieces: tuple[Piece, ...]
    causes: Mapping[str, float]
    assumed: Mapping[str, Measured]

    @property
    def area_cm2(self) -> float:
        return sum(piece.area_cm2 for piece in self.pieces)


Sizes = Mapping[str, float]
Drawing = Callable[[Sizes], tuple[Piece, ...]]


@dataclass(frozen=True, slots=True)
class Kind:
    """How a garment is drawn, the measure that sizes it first, and the sizes that are the
    garment's and no body's: mean and standard uncertainty in cm (assumed)."""

    draw: Drawing
    chief: str
    sizes: Mapping[str, tuple[float, float]]
    uses: tuple[str, ...] = ()


def _upper_body(size: Sizes) -> tuple[Piece, ...]:
    """Body to the underarm in one, back and front above it with the neck left open."""
    round_cm = size["chest"] + size["ease"]
    across = min(size["cross back"] + size["ease"] / 4, round_cm / 2)
    depth = size["armhole depth"] + size["ease"] / 4
    return (
        Piece("body", round_cm, round_cm, size["body length"] - depth),
        Piece("upper back", across, across * 0.9, depth),
        Piece("upper front", across, across * 0.55, depth),
        Piece("neck band", size["neck"], size["neck"], 3),
    )


def _sleeves(size: Sizes) -> tuple[Piece, ...]:
    upper = size["upper arm"] + size["ease"] * 0.6
    cap = 0.65 * (size["armhole depth"] + size["ease"] / 4)
    return (
        Piece("sleeves", size["wrist"] + 3, upper, size["arm length to underarm"], 2),
        Piece("sleeve caps", upper, upper * 0.3, cap, 2),
    )


def _pullover(size: Sizes) -> tuple[Piece, ...]:
    return (*_upper_body(size), *_sleeves(size))


def _cardigan(size: Sizes) -> tuple[Piece, ...]:
    return (*_pullover(size), Piece("button bands", 3.5, 3.5, size["body length"], 2))


def _waistcoat(size: Sizes) -> tuple[Piece, ...]:
    armhole = 2 * (size["armhole depth"] + size["ease"] / 4)
    return (*_upper_body(size), Piece("armhole bands", armhole, armhole, 2.5, 2))


def _hat(size: Sizes) -> tuple[Piece, ...]:
    round_cm = size["head"] * 0.92
    return (
        Piece("sides", round_cm, round_cm, size["head"] * 0.30),
        Piece("crown", round_cm, round_cm * 0.1, size["head"] * 0.14),
    )


def _mittens(size: Sizes) -> tuple[Piece, ...]:
    round_cm = size["hand"] * 1.08
    return (
        Piece("cuffs", round_cm * 0.9, round_cm * 0.9, size["cuff"], 2),
        Piece("hands", round_cm, round_cm * 0.8, size["hand length"], 2),
        Piece("thumbs", size["hand"] * 0.42, size["hand"] * 0.36, size["hand length"] * 0.33, 2),
    )


def _socks(size: Sizes) -> tuple[Piece, ...]:
    round_cm = size["foot"] * 0.92
    return (
        Piece("legs", round_cm, round_cm, size["leg"], 2),
        Piece("heels", round_cm / 2, round_cm / 2, size["foot"] * 0.42, 2),
        Piece("feet", round_cm, round_cm * 0.85, size["foot length"] * 0.92, 2),
    )


def _flat(name: str) -> Drawing:
    return lambda size: (Piece(name, size["width"], size["width"], size["length"]),)


def _shawl(size: Sizes) -> tuple[Piece, ...]:
    return (Piece("shawl", size["span"], 0, size["depth"]),)


_UPPER = ("chest", "cross back", "armhole depth", "body length", "neck")
_ARMS = ("upper arm", "wrist", "arm length to underarm")
_EASE = {"ease": (7.5, 2.5)}

KINDS: dict[str, Kind] = {
    "pullover": Kind(_pullover, "chest", _EASE, _UPPER + _ARMS),
    "cardigan": Kind(_cardigan, "chest", _EASE, _UPPER + _ARMS),
    "waistcoat": Kind(_waistcoat, "chest", _EASE, _UPPER),
    "hat": Kind(_hat, "head", {}, ("head",)),
    "cowl": Kind(_flat("cowl"), "width", {"width": (64, 8), "length": (25, 5)}),
    "mittens": Kind(_mittens, "hand", {"cuff": (7, 1.5)}, ("hand", "hand length")),
    "socks": Kind(_socks, "foot", {"leg": (17, 3)}, ("foot", "foot length")),
    "scarf": Kind(_flat("scarf"), "length", {"width": (22, 4), "length": (170, 20)}),
    "shawl": Kind(_shawl, "span", {"span": (150, 20), "depth": (65, 10)}),
    "blanket": Kind(_flat("blanket"), "width", {"width": (100, 15), "length": (130, 20)}),
}
"""Every garment the quick reckoning knows, by name."""


def garment(kind: str, own: Mapping[str, float] | None = None) -> Garment:
    """A garment of that kind from the measures that were taken, in cm, by name; the chest finds
    the rest. ValueError for an unknown kind, a measure that is not above zero, or a body the
    pieces do not fit on."""
    if kind not in KINDS:
        raise ValueError(f"no garment is called {kind!r}")
    taken = dict(own or {})
    known = _sizes(KINDS[kind], taken)
    cm = {name: one.cm for name, one in known.items()}
    pieces = _drawn(kind, cm)
    assumed = {name: one for name, one in known.items() if one.u > 0}
    causes = {f"the shape of a {kind} as drawn here": MODEL_SHARE}
    causes |= {f"{name}, assumed": _effect(kind, cm, name, one) for name, one in assumed.items()}
    return Garment(kind, pieces, causes, assumed)


def _sizes(kind: Kind, taken: Mapping[str, float]) -> dict[str, Measured]:
    """The body measures and the garment's own sizes a drawing uses; taken ones win."""
    whole = body(taken.get("chest", USUAL_CHEST.cm), taken)
    if "chest" not in taken:
        whole["chest"] = USUAL_CHEST
    used = {name: whole[name] for name in kind.uses}
    for name, (cm, u) in kind.sizes.items():
        own = name in taken
        used[name] = Measured(taken[name], 0.0, "measured") if own else Measured(cm, u, "assumed")
    return used


def _drawn(kind: str, cm: Sizes) -> tuple[Piece, ...]:
    pieces = KINDS[kind].draw(cm)
    for piece in pieces:
        if piece.length_cm <= 0 or piece.width_cm <= 0:
            raise ValueError(f"these measures leave nothing for the {piece.name} of a {kind}")
    return pieces


def _effect(kind: str, cm: Sizes, name: str, one: Measured) -> float:
    """What one standard uncertainty of a measure does to the area, as a share of it."""
    draw = KINDS[kind].draw
    area = sum(piece.area_cm2 for piece in draw(cm))
    wider = sum(piece.area_cm2 for piece in draw({**cm, name: one.cm + one.u}))
    return (wider - area) / area
