"""The picture of a garment in words: its sizes, and which rows are knit in which skein."""

from collections.abc import Mapping
from dataclasses import dataclass
from itertools import groupby, pairwise

from app.planning.picture import Picture, Skein
from app.planning.picture_piece import Piece
from app.planning.picture_rows import Band, Knit, Thread, by_skein
from app.web.pages.answer import listed, number_word
from app.web.shown import Shown

MOST_LINES = 12
"""More changes than these are counted, not listed."""

BORDERS = ("band", "cuff", "neck")

TRUNK = ("body", "front", "back")

ORDINALS = ("first", "second", "third", "fourth", "fifth", "sixth")


@dataclass(frozen=True, slots=True)
class RowsLine:
    """Some rows and what they are knit in; `colours` of it, as "#rrggbb"."""

    rows: str
    knit_in: str
    colours: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class PieceWords:
    """A piece, or pieces alike: its name, its size, its stitches and its rows."""

    name: str
    size: str
    lines: tuple[RowsLine, ...]
    joins: str


def in_words(picture: Picture, shown: Shown) -> tuple[PieceWords, ...]:
    """Every piece in the order it is knit; copies that are knit alike stand together."""
    found = []
    named = [one for one in picture.pieces if one.foremost]
    for _, part in groupby(named, key=lambda one: one.part_id):
        for _, alike in groupby(part, key=_knit_alike):
            pieces = list(alike)
            size = _size(pieces[0], shown)
            lines, joins = _lines(pieces[0], picture), _joins(pieces[0])
            found.append(PieceWords(_named(pieces), size, lines, joins))
    return tuple(found)


def in_one_sentence(picture: Picture) -> str:
    """What the picture shows, for those who cannot see it, in short."""
    names = list(dict.fromkeys(one.name for one in picture.pieces))
    views = {one.view for one in picture.pieces}
    lies = "folded as it is worn, its back beside its front" if "back" in views else "laid flat"
    lies += ", which is open," if "left front" in views else ""
    return f"{picture.name}, {lies} and to scale: {listed(names)}."


def size_lines(piece: Piece, shown: Shown) -> tuple[str, ...]:
    """A piece's width, its stitches, and its length with its rows, as short as they can be said: a
    body's at its widest, of a border stitches and rows alone."""
    first, most, last = piece.stitches
    length = shown.size(round(10 * piece.height))
    rows = f"{piece.rows} {_rows(piece)}"
    if piece.place in BORDERS:
        return (f"{_stitches(piece.stitches, shown)}, {rows}",)
    told = (most, most, most) if piece.place in TRUNK or most > max(first, last) else piece.stitches
    at_most = " at most" if most > max(first, last) and piece.place not in TRUNK else ""
    width = f"{_width(piece, told, shown)}{at_most}"
    return width, f"{_stitches(told, shown)}{at_most}", f"{length}, {rows}"


def joined(before: Band, after: Band) -> bool:
    """Whether a new skein takes over where one band meets the next."""
    held = {one.role: one.holding_id for one in before.knit.threads}
    return any(
        one.holding_id and held.get(one.role) not in (None, one.holding_id)
        for one in after.knit.threads
    )


def _width(piece: Piece, stitches: tuple[int, int, int], shown: Shown) -> str:
    if piece.rings:
        return f"{shown.size(round(10 * piece.width))} wide"
    sizes = _from_to(*(shown.size(round(10 * piece.stitch_cm * count)) for count in stitches))
    return f"{sizes} round" if piece.in_round else sizes


def _stitches(stitches: tuple[int, int, int], shown: Shown) -> str:
    return f"{_from_to(*(shown.number(count) for count in stitches))} stitches"


def part_name(pieces: list[Piece]) -> str:
    """The name of a part with the number of its pieces."""
    name, count = titled(pieces[0].name), pieces[0].copies
    return name if count == 1 else f"{name} × {count}"


def titled(name: str) -> str:
    """A name as it stands above what is said of it."""
    return name[:1].upper() + name[1:]


def codes(band: Band, skeins: Mapping[str, Skein]) -> str:
    """The codes of the skeins that knit a band; empty where it has none."""
    held = [one.holding_id for one in band.knit.threads if one.holding_id]
    return " + ".join(skeins[one].code for one in held)


def _size(piece: Piece, shown: Shown) -> str:
    width, stitches = _width(piece, piece.stitches, shown), _stitches(piece.stitches, shown)
    length = shown.size(round(10 * piece.height))
    rings = " that lie in half rings" if piece.rings else ""
    return f"{width}, {length} long; {stitches} in {piece.rows} {_rows(piece)}{rings}"


def _rows(piece: Piece) -> str:
    return "rounds" if piece.in_round else "rows"


def _knit_alike(piece: Piece) -> tuple[tuple[int, Knit], ...]:
    return tuple((band.last, band.knit) for band in by_skein(piece.bands))


def _joins(piece: Piece) -> str:
    """Where joins fall; empty where there is none, or where changes are too many to list."""
    found = [str(after.first) for before, after in pairwise(piece.bands) if joined(before, after)]
    if not found or len(found) > MOST_LINES:
        return ""
    row = _rows(piece)[:-1]
    return f"{'Join' if len(found) == 1 else 'Joins'} at {row} {listed(found)}"


def _from_to(first: str, widest: str, last: str) -> str:
    """ "36", "48 to 80", or "48, 80 at the widest, 20"; a unit that both have is said once."""
    if widest not in (first, last):
        return f"{first} to {widest}, then to {last}"
    if first == last:
        return first
    unit = first.rpartition("\u202f")[2] if "\u202f" in first else ""
    both = unit and not unit.isdigit() and last.endswith(unit)
    return f"{first.removesuffix(unit).rstrip() if both else first} to {last}"


def _named(alike: list[Piece]) -> str:
    first = alike[0]
    if first.copies == 1:
        return titled(first.name)
    if len(alike) == first.copies:
        return f"{titled(first.name)}, {number_word(first.copies)} pieces alike"
    which = [_ordinal(one.copy) for one in alike]
    return f"{titled(first.name)}, the {listed(which)}"


def _ordinal(copy: int) -> str:
    return ORDINALS[copy - 1] if copy <= len(ORDINALS) else f"{copy}th"


def _lines(piece: Piece, picture: Picture) -> tuple[RowsLine, ...]:
    bands = by_skein(piece.bands)
    told = bands if len(bands) <= MOST_LINES else bands[: MOST_LINES - 1]
    lines = [_line(one, piece, picture) for one in told]
    left = bands[len(told) :]
    if left:
        names = dict.fromkeys(codes(one, picture.skeins) or "no skein yet" for one in left)
        rows = f"{_rows(piece).capitalize()} {left[0].first} to {left[-1].last}"
        changes = f"{len(left) - 1} more changes among {listed([*names])}"
        lines.append(RowsLine(rows, changes, ()))
    return tuple(lines)


def _line(band: Band, piece: Piece, picture: Picture) -> RowsLine:
    noun = _rows(piece).capitalize()
    one_row = band.first == band.last
    rows = f"{noun[:-1]} {band.first}" if one_row else f"{noun} {band.first} to {band.last}"
    skeins = [picture.skeins[one.holding_id] for one in band.knit.threads if one.holding_id]
    told = [f"{one.code} {one.yarn}".strip() for one in skeins]
    told += [_none_yet(one, picture) for one in band.knit.threads if not one.holding_id]
    knit_in = listed(told)
    if picture.state == "being knit":
        knit_in += ", knit" if band.knit.done else ", to come"
    return RowsLine(rows, knit_in, tuple(one.colour for one in skeins if one.colour))


def _none_yet(thread: Thread, picture: Picture) -> str:
    yarn = picture.meant[thread.yarn_id].name if thread.yarn_id else ""
    return f"no skein yet of {yarn}" if yarn else "no skein yet"
