"""Where the pieces of a picture lie: put together as they are worn where their places are known,
else side by side. In cm, to the right and down from the middle of the lower edge of the whole."""

from dataclasses import replace
from math import radians, sqrt, tan

from app.book.words import Place
from app.planning.picture_piece import Piece

TILT = 14.0
"""How far a sleeve stands off from the body, in degrees."""

GAP = 0.035
"""Room between pieces that belong together, as a share of the width of the middle."""

CAPTION = 0.2
"""Room for words below a row of pieces, as a share of the width of the whole."""

FOR_BORDERS = 0.09
"""Room for the words of hems and cuffs besides, likewise."""

LEAST = 0.3
"""The least room for a part in a row, with its words, as a share of the width of the whole."""

BESIDE = 0.12
"""Room between copies of a part that lie side by side, as a share of their width."""

AT_WIDEST = 0.98
"""From how much of its greatest width on a piece counts as being at its widest."""

FITS = (0.6, 1.15)
"""How much of the width of a piece a hem or cuff may have that hangs from it."""

HANG: dict[Place, tuple[Place, ...]] = {
    "sleeve": ("cuff",),
    "body": ("band", "cuff"),
    "back": ("band",),
    "front": ("band",),
}
"""What hangs from a piece, by its place."""

ABOVE: tuple[Place, ...] = ("yoke", "crown", "neck")


def laid_out(pieces: list[Piece]) -> tuple[Piece, ...]:
    """The pieces in their places."""
    hung, hosts = _hung(pieces)
    free = [one for one in pieces if _key(one) not in hung and one.view != "back"]
    middle = _middle(free)
    worn = _worn(free, middle, hosts) if middle else []
    worn = _beside(worn, [one for one in pieces if _key(one) not in hung], hosts)
    done = {_key(one) for one in worn}
    worn += _in_rows([one for one in free if _key(one) not in done], worn, hosts)
    placed = {_key(one): one for one in worn}
    placed |= {_key(one): one for one in _hanging(worn, hosts)}
    return tuple(placed[_key(one)] for one in pieces)


Key = tuple[str, int, str]


def _key(piece: Piece) -> Key:
    return piece.part_id, piece.copy, piece.view


def _hung(pieces: list[Piece]) -> tuple[set[Key], dict[Key, Piece]]:
    """Hems and cuffs by the piece they hang from, each from the first they fit."""
    taken: set[Key] = set()
    hosts: dict[Key, Piece] = {}
    for host in pieces:
        for one in pieces:
            if (
                one.place in HANG.get(host.place, ())
                and one.view == host.view
                and _key(one) not in taken
                and _fits(one, host)
            ):
                taken.add(_key(one))
                hosts[_key(host)] = one
                break
    return taken, hosts


def _fits(piece: Piece, host: Piece) -> bool:
    return FITS[0] <= piece.width / host.base <= FITS[1] and piece.height < host.height


def _under(host: Piece, piece: Piece) -> Piece:
    return replace(piece, at=host.point(0.0, -piece.height - _slit(host)), turn=host.turn)


def _slit(host: Piece) -> float:
    """Between a piece and what hangs from it, in cm."""
    return 0.02 * host.width


def _drop(piece: Piece, hosts: dict[Key, Piece]) -> float:
    """How far what hangs from a piece reaches down, in cm."""
    return hosts[_key(piece)].height + _slit(piece) if _key(piece) in hosts else 0.0


def _middle(pieces: list[Piece]) -> list[Piece]:
    """What the other pieces are put around: the body, else the fronts, else the back."""
    if not any(one.place in ("sleeve", *ABOVE) for one in pieces):
        return []
    for place in ("body", "front", "back"):
        found = [one for one in pieces if one.place == place]
        if found:
            return found
    return []


def _worn(pieces: list[Piece], middle: list[Piece], hosts: dict[Key, Piece]) -> list[Piece]:
    gap = GAP * sum(one.width for one in middle)
    bands, low = _upright(pieces, middle, hosts), _drop(middle[0], hosts)
    placed, left = [], 0.0
    for one in _between(middle, bands):
        wide = one.height if one in bands else one.width
        x = left + wide / 2
        placed.append(_stood(one, x, low) if one in bands else replace(one, at=(x, 0.0)))
        left += wide + gap
    wide = left - gap
    placed = [replace(one, at=(one.at[0] - wide / 2, one.at[1])) for one in placed]
    sleeves = [one for one in pieces if one.place == "sleeve"][:2]
    corner = (wide / 2 + gap, -_underarm(middle[0]))
    placed += [_sleeve(one, side, corner) for side, one in zip((-1, 1), sleeves, strict=False)]
    stood = [one for one in placed if one.place == middle[0].place]
    return placed + _above(pieces, stood, wide, gap if sleeves else 0.0)


def _above(pieces: list[Piece], middle: list[Piece], wide: float, beside: float) -> list[Piece]:
    """Yoke, crown and neck over the middle; of several, each over its own. A yoke clears the
    sleeves that begin so far beside the middle."""
    placed, top = [], -max(one.height for one in middle)
    for place in ABOVE:
        found = [one for one in pieces if one.place == place]
        for row in _paired(found, middle):
            reach = _reach(row) - wide / 2 - beside if place == "yoke" and beside else 0.0
            top -= GAP * wide + max(0.0, reach) * tan(radians(TILT))
            placed += [replace(one, at=(x, top)) for one, x in row]
            top -= max(one.height for one, _ in row)
    return placed


def _paired(found: list[Piece], middle: list[Piece]) -> list[list[tuple[Piece, float]]]:
    """Rows of pieces with where their middles lie: two halves over those of an opened front, edge
    over edge; a pair over the last pair of the middle, single ones over one another."""
    if _facing(middle):
        halves = [one for one in found if one.view]
        sides = zip(halves, middle, (-1, 1), strict=False)
        row = [(one, host.at[0] + side * (one.width - host.width) / 2) for one, host, side in sides]
        return [*([row] if row else []), *([(one, 0.0)] for one in found if not one.view)]
    pairs = [one for one in middle if 1 < one.copies == len(found)]
    if pairs:
        return [[(one, host.at[0]) for one, host in zip(found, pairs[-len(found) :], strict=True)]]
    return [[(one, 0.0)] for one in found]


def _reach(row: list[tuple[Piece, float]]) -> float:
    """How far the pieces of a row reach from the middle."""
    return max(abs(x) + one.width / 2 for one, x in row)


def _facing(middle: list[Piece]) -> bool:
    """Whether the middle is the two halves of an opened front, folded."""
    return middle[0].view == "left front"


def _upright(pieces: list[Piece], middle: list[Piece], hosts: dict[Key, Piece]) -> list[Piece]:
    """Bands as long as two fronts are high stand between them."""
    if len(middle) != 2 or not (middle[0].place == "front" or _facing(middle)):
        return []
    yokes = (one.height for one in pieces if one.view == middle[0].view and one.place == "yoke")
    high = middle[0].height + _drop(middle[0], hosts) + sum(yokes if _facing(middle) else ())
    bands = [one for one in pieces if one.place == "band"]
    fit = [one for one in bands if FITS[0] <= one.width / high <= FITS[1]]
    return fit if all(one.height < high / 4 for one in fit) else []


def _between(middle: list[Piece], bands: list[Piece]) -> list[Piece]:
    return [middle[0], *bands, middle[1]] if bands else middle


def _stood(band: Piece, x: float, low: float) -> Piece:
    """A band on its end, its top level with nothing in particular: it hangs to the lower edge."""
    return replace(band, at=(x + band.height / 2, low - band.width / 2), turn=-90.0)


def _sleeve(piece: Piece, side: int, corner: tuple[float, float]) -> Piece:
    """A sleeve beside the middle, its underarm level with the corner given."""
    turned = replace(piece, turn=-side * TILT)
    inner = min(side * x for x, _ in turned.lies(turned.outline))
    _, level = turned.point(-side * piece.width / 2, _underarm(piece))
    return replace(turned, at=(side * (corner[0] - inner), corner[1] - level))


def _underarm(piece: Piece) -> float:
    """How high a piece stays at its widest."""
    far = AT_WIDEST * max(x for x, _ in piece.outline)
    return max(up for x, up in piece.outline if x >= far)


def _beside(worn: list[Piece], pieces: list[Piece], hosts: dict[Key, Piece]) -> list[Piece]:
    """What is worn with its back to the right of it, every piece of it level with its front, and
    all of it around the middle."""
    backs = [one for one in pieces if one.view == "back"]
    if not backs:
        return worn
    level = {(one.part_id, one.copy): one.at[1] for one in worn}
    right = max(x for one in (*worn, *_hanging(worn, hosts)) for x, _ in one.lies(one.outline))
    half = max(one.width for one in backs) / 2
    x = right + GAP * 2 * half + half
    placed = [replace(one, at=(x, level[one.part_id, one.copy])) for one in backs]
    left = min(x for one in worn for x, _ in one.lies(one.outline))
    middle = (left + x + half) / 2
    return [replace(one, at=(one.at[0] - middle, one.at[1])) for one in (*worn, *placed)]


def _hanging(worn: list[Piece], hosts: dict[Key, Piece]) -> list[Piece]:
    return [_under(one, hosts[_key(one)]) for one in worn if _key(one) in hosts]


def _in_rows(pieces: list[Piece], worn: list[Piece], hosts: dict[Key, Piece]) -> list[Piece]:
    """Pieces side by side in rows, those of one part together, below what is put together."""
    by_part: dict[str, list[Piece]] = {}
    for one in pieces:
        by_part.setdefault(one.part_id, []).append(one)
    parts = list(by_part.values())
    points = [point for one in worn for point in one.lies(one.outline)]
    points += [one.point(0.0, -_drop(one, hosts)) for one in worn]
    wide = _wide(parts, [x for x, _ in points])
    down = max((y for _, y in points), default=0.0) + (_words(worn, hosts) * wide if worn else 0.0)
    placed: list[Piece] = []
    for row in _filled(parts, wide):
        each = [one for part in row for one in part]
        down += max(one.height for one in each)
        placed += _row(row, wide, down)
        down += _words(each, hosts) * wide + max(_drop(one, hosts) for one in each)
    return placed


def _words(pieces: list[Piece], hosts: dict[Key, Piece]) -> float:
    """Room for the words of a row of pieces, as a share of the width of the whole."""
    return CAPTION + (FOR_BORDERS if any(_key(one) in hosts for one in pieces) else 0.0)


def _wide(parts: list[list[Piece]], across: list[float]) -> float:
    area = sum((_span(one) * 1.3) * (one[0].height * 1.2) for one in parts)
    widest = max((_span(one) for one in parts), default=0.0)
    return max(max(across, default=0.0) - min(across, default=0.0), widest, sqrt(area))


def _span(part: list[Piece]) -> float:
    """How wide the copies of a part lie side by side."""
    return part[0].width * (len(part) + BESIDE * (len(part) - 1))


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
            x += one.width * (1 + BESIDE)
        left += _room(part, wide)
    return placed
