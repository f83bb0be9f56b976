"""A yarn's construction in one line, after ISO 1139, written and read back.

The standard knows two orders, both in tex and turns per metre. From the fold to the single tells
first what the user of the yarn holds, from the single to the fold what its maker did:

    R 450 tex S 160 / 2 Z 320; 225 tex        225 tex Z 320 × 2 S 160; R 450 tex

R marks a resultant linear density, a letter with a number the direction and amount of a twist, the
letter alone a direction, t0 no twist. Scope and the two orders are the standard's own summary; the
signs are remembered, not seen. It is not for fancy yarns.
"""

import re
from dataclasses import dataclass
from itertools import pairwise

from app.craft.domain import positive
from app.craft.twist_direction import Direction, direction
from app.craft.working import Standing

SOURCE = "ISO 1139, designation of yarns; its signs remembered"
STANDING: Standing = "memory"


@dataclass(frozen=True, slots=True)
class Turns:
    """A twist: its direction and turns per metre; None for turns that are not known. Turns of 0
    are t0, and then the direction means nothing."""

    direction: Direction
    per_m: float | None = None


UNTWISTED = Turns("Z", 0.0)


@dataclass(frozen=True, slots=True)
class Fold:
    """So many pieces joined by a twist, None where it is not told; a single is one piece."""

    pieces: int
    turns: Turns | None = None


@dataclass(frozen=True, slots=True)
class Designation:
    """A yarn of like components: its resultant and its single's linear density in tex, None where
    not told, and its folds from the single (first, one piece) outwards."""

    resultant_tex: float | None
    single_tex: float | None
    folds: tuple[Fold, ...]

    def __post_init__(self) -> None:
        if self.resultant_tex is None and self.single_tex is None:
            raise ValueError("a designation needs a linear density")
        for tex in (self.resultant_tex, self.single_tex):
            if tex is not None:
                positive(tex, "linear density in tex")
        if not self.folds or self.folds[0].pieces != 1:
            raise ValueError("the first fold of a yarn is its single")
        if any(fold.pieces < 2 for fold in self.folds[1:]):
            raise ValueError("at least two pieces make a fold")


def designation_of(tex: float, plies: int, last: Direction | None) -> Designation:
    """The designation of a yarn measured as a whole: its tex, plies, and the way it was twisted
    last. Tex is told to the whole from 100 up, to a tenth below. ValueError for less than one ply
    or no tex."""
    told = round(positive(tex, "linear density in tex"), 0 if tex >= 100 else 1)
    turns = Turns(last) if last else None
    if plies == 1:
        return Designation(None, told, (Fold(1, turns),))
    return Designation(told, None, (Fold(1), Fold(plies, turns)))


def fold_to_single(yarn: Designation) -> str:
    """The designation as the user of a yarn tells it; a single yarn has only one order.
    ValueError for a folded yarn whose resultant is not known."""
    single, *outer = yarn.folds
    if not outer:
        return single_to_fold(yarn)
    if yarn.resultant_tex is None:
        raise ValueError("the resultant of this yarn is not known")
    inwards = [*reversed(outer), single]
    text = f"R {yarn.resultant_tex:.10g} tex{_turns(inwards[0].turns)}"
    for outside, inside in pairwise(inwards):
        text += f" / {outside.pieces}{_turns(inside.turns)}"
    return text + ("" if yarn.single_tex is None else f"; {yarn.single_tex:.10g} tex")


def single_to_fold(yarn: Designation) -> str:
    """The designation as the maker of a yarn tells it; ValueError where the single's linear
    density is not known."""
    if yarn.single_tex is None:
        raise ValueError("the single of this yarn is not known")
    single, *outer = yarn.folds
    text = f"{yarn.single_tex:.10g} tex{_turns(single.turns)}"
    for fold in outer:
        text += f" × {fold.pieces}{_turns(fold.turns)}"
    return text + ("" if yarn.resultant_tex is None else f"; R {yarn.resultant_tex:.10g} tex")


NUMBER = r"(\d+(?:[.,]\d+)?)"
TWIST = r"(?:\s*(t0|[SZ](?:\s*\d+(?:[.,]\d+)?)?))?"
DENSITY = rf"{NUMBER}\s*tex"

FOLD_FIRST = re.compile(rf"R\s*{DENSITY}{TWIST}((?:\s*/\s*\d+{TWIST})+)(?:\s*;\s*{DENSITY})?")
SINGLE_FIRST = re.compile(rf"{DENSITY}{TWIST}((?:\s*[×x]\s*\d+{TWIST})*)(?:\s*;\s*R\s*{DENSITY})?")
PIECE = re.compile(rf"[/×x]\s*(\d+){TWIST}")


def read_designation(text: str) -> Designation:
    """A designation in either order, spaces and decimal sign as they come; ValueError in words.

    In the order from the fold the letter after the tex is the last twist, that after /2 the twist
    of the two: "R 450 tex S / 2" is a two-ply of S twist.
    """
    plain = text.strip()
    if found := FOLD_FIRST.fullmatch(plain):
        resultant, last, middle, _, single = found.groups()
        pairs = PIECE.findall(middle)
        twists = [last, *(twist for _, twist in pairs)]
        pieces = [*(int(count) for count, _ in pairs), 1]
        folds = [Fold(n, _read_turns(t)) for n, t in zip(pieces, twists, strict=True)]
        return Designation(_value(resultant), _value(single), tuple(reversed(folds)))
    if found := SINGLE_FIRST.fullmatch(plain):
        density, own, outside, _, whole = found.groups()
        outer = [Fold(int(count), _read_turns(t)) for count, t in PIECE.findall(outside)]
        return Designation(_value(whole), _value(density), (Fold(1, _read_turns(own)), *outer))
    raise ValueError(f"“{plain}” is no designation: write it as “R 450 tex S / 2” or “225 tex Z”")


def _turns(turns: Turns | None) -> str:
    if turns is None:
        return ""
    if turns.per_m == 0:
        return " t0"
    return f" {turns.direction}" + ("" if turns.per_m is None else f" {turns.per_m:.10g}")


def _read_turns(text: str | None) -> Turns | None:
    if not text:
        return None
    if text == "t0":
        return UNTWISTED
    return Turns(direction(text[0]), _value(text[1:].strip() or None))


def _value(text: str | None) -> float | None:
    return None if text is None else float(text.replace(",", "."))
