"""Where the pieces of a picture lie: put together as they are worn where their places are known,
else side by side. In cm, across to the right and down from the middle of the lower edge."""

from dataclasses import replace
from math import radians, sqrt, tan

from app.planning.picture_piece import Piece

TILT = 14.0
"""How far a sleeve stands off from the body, in degrees."""

GAP = 0.035
"""Room between pieces that belong together, as a share of the width of the middle."""

CAPTION = 0.19
"""Room for words below a row of pieces, and the least room for a part in it, as shares of the
width of the whole."""
LEAST = 0.3

WIDEST_MIDDLE = 0.98
"""From how much of its greatest width on a piece counts as being at its widest."""


def laid_out(pieces: list[Piece]) -> tuple[Piece, ...]:
    """The pieces in their places."""
    middle = _middle(pieces)
    worn = _worn(pieces, middle) if middle else []
    placed = {(one.part_id, one.copy): one for one in worn}
    rest = [one for one in pieces if (one.part_id, one.copy) not in placed]
    for one in _in_rows(rest, worn):
        placed[one.part_id, one.copy] = one
    return tuple(placed[one.part_id, one.copy] for one in pieces)


def _middle(pieces: list[Piece]) -> list[Piece]:
    """What the other pieces are put around: the body, else the fronts, else the back."""
    if not any(one.place in ("sleeve", "yoke", "crown", "neck") for one in pieces):
        return []
    for place in ("body", "front", "back"):
        found = [one for one in pieces if one.place == place]
        if found:
            return found
    return []


def _worn(pieces: list[Piece], middle: list[Piece]) -> list[Piece]:
    wide = sum(one.width for one in middle)
    gap = GAP * wide
    wide += gap * (len(middle) - 1)
    placed, left = [], -wide / 2
    for one in middle:
        placed.append(replace(one, at=(left + one.width / 2, 0.0)))
        left += one.width + gap
    sleeves = [one for one in pieces if one.place == "sleeve"][:2]
    under = -_underarm(middle[0])
    for side, one in zip((-1, 1), sleeves, strict=False):
        placed.append(_sleeve(one, side, (wide / 2 + gap, under)))
    above = -max(one.height for one in middle)
    for one in (
        each for place in ("yoke", "crown", "neck") for each in pieces if each.place == place
    ):
        reach = one.base / 2 - wide / 2 - gap if sleeves and one.place == "yoke" else 0.0
        above -= gap + max(0.0, reach) * tan(radians(TILT))
        placed.append(replace(one, at=(0.0, above)))
        above -= one.height
    return placed


def _sleeve(piece: Piece, side: int, corner: tuple[float, float]) -> Piece:
    """A sleeve beside the middle, its underarm level with the corner given."""
    turned = replace(piece, turn=-side * TILT)
    points = turned.outline()
    inner = min(side * x for x, _ in points)
    _, level = turned.point(-side * piece.width / 2, _underarm(piece))
    return replace(turned, at=(side * (corner[0] - inner), corner[1] - level))


def _underarm(piece: Piece) -> float:
    """How high a piece stays at its widest."""
    edge = [each for band in piece.bands for each in band.edge]
    return max(up for up, wide in edge if wide >= WIDEST_MIDDLE * piece.width)


def _in_rows(pieces: list[Piece], worn: list[Piece]) -> list[Piece]:
    """Pieces side by side in rows, those of one part together, below what is put together."""
    parts: dict[str, list[Piece]] = {}
    for one in pieces:
        parts.setdefault(one.part_id, []).append(one)
    points = [point for one in worn for point in one.outline()]
    wide = _wide(list(parts.values()), [x for x, _ in points])
    down = max((y for _, y in points), default=-CAPTION * wide) + CAPTION * wide
    placed: list[Piece] = []
    for row in _filled(list(parts.values()), wide):
        down += max(one.height for part in row for one in part)
        placed += _row(row, wide, down)
        down += CAPTION * wide
    return placed


def _wide(parts: list[list[Piece]], across: list[float]) -> float:
    area = sum((_span(one) * 1.3) * (one[0].height * 1.2) for one in parts)
    widest = max((_span(one) for one in parts), default=0.0)
    return max(max(across, default=0.0) - min(across, default=0.0), widest, sqrt(area))


def _span(part: list[Piece]) -> float:
    """How wide the copies of a part lie side by side."""
    return part[0].width * (len(part) + 0.12 * (len(part) - 1))


def _filled(parts: list[list[Piece]], wide: float) -> list[list[list[Piece]]]:
    rows: list[list[list[Piece]]] = []
    left = 0.0
    for part in parts:
        room = _room(part, wide)
        if not rows or room > left + 1e-9:
            rows.append([])
            left = wide
        rows[-1].append(part)
        left -= room
    return rows


def _room(part: list[Piece], wide: float) -> float:
    return min(wide, max(_span(part) + 0.04 * wide, LEAST * wide))


def _row(row: list[list[Piece]], wide: float, down: float) -> list[Piece]:
    placed = []
    left = -sum(_room(part, wide) for part in row) / 2
    for part in row:
        x = left + (_room(part, wide) - _span(part)) / 2
        for one in part:
            placed.append(replace(one, at=(x + one.width / 2, down)))
            x += one.width * 1.12
        left += _room(part, wide)
    return placed
