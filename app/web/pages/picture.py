"""The picture of a garment as it is drawn: outlines, joins and labels, in units of the drawing."""

from itertools import groupby, pairwise

from app.book.words import OPEN_STATES
from app.planning.picture import Picture
from app.planning.picture_outline import spans, strip
from app.planning.picture_piece import Piece
from app.planning.picture_rows import Band, Thread, by_skein
from app.web.pages.funnel import USUAL_COLOUR
from app.web.pages.picture_ink import (
    WIDE,
    Drawing,
    Fabric,
    Fleck,
    Hatch,
    Shape,
    Stroke,
)
from app.web.pages.picture_labels import (
    OVERHANG,
    TAG_HIGH,
    caption,
    short,
    tag,
    tag_at_end,
    tag_wide,
)
from app.web.pages.picture_rings import Rings, rings_of
from app.web.pages.picture_room import Corners, Point, Room
from app.web.pages.picture_words import (
    codes,
    in_one_sentence,
    in_words,
    joined,
    part_name,
    size_lines,
)
from app.web.shown import Shown

MARGIN = 6.0
"""The edge of the drawing."""

TALLEST, LARGEST = 420.0, 7.0
"""Height of the pieces at most, and units to a cm at most."""

PAPER = "#fdfaf3"
"""The ground of a piece, in the page's light theme and its dark one."""

LOOKS = (("rib", "rib"), ("garter", "garter"), ("moss", "moss"), ("lace", "lace"))
"""Words in the name of a stitch pattern, and the fill that looks like it."""

HIDES_NOT = 3.0
"""How many times as high as its words a band is that says it has no skein yet, and half as many
times as wide: the hatching tells it too."""

NO_SKEIN, KNIT_TO = "no skein yet", "knit to here"
BEHIND = ("The back",)


def drawing(picture: Picture, shown: Shown) -> Drawing:
    """The picture to scale, with whatever words there is room for; all of them stand in `words`."""
    drawn = Drawing(
        title=picture.name,
        sentence=in_one_sentence(picture),
        words=in_words(picture, shown),
        amounts=picture.amounts,
        without_gauge=picture.without_gauge,
        pale=picture.state == "being knit",
        finished=picture.state not in OPEN_STATES,
        tubes=any(one.in_round for one in picture.pieces),
        folded=any(one.view for one in picture.pieces),
    )
    if picture.pieces:
        _Pen(picture, shown, drawn).draw()
    return drawn


class _Pen:
    """Draws one picture."""

    def __init__(self, picture: Picture, shown: Shown, drawn: Drawing) -> None:
        self.picture, self.shown, self.drawn = picture, shown, drawn
        points = [point for one in picture.pieces for point in one.lies(one.outline)]
        across, down = [x for x, _ in points], [y for _, y in points]
        wide, high = max(across) - min(across), max(down) - min(down)
        self.scale = min((WIDE - 2 * MARGIN) / wide, TALLEST / high, LARGEST)
        self.middle, self.above = (max(across) + min(across)) / 2, min(down)
        self.room = Room(MARGIN / 2, WIDE - MARGIN / 2)
        self.lowest = high * self.scale

    def draw(self) -> None:
        for piece in self.picture.pieces:
            self._piece(piece)
        by_part = groupby(self.picture.pieces, key=lambda one: one.part_id)
        parts = [list(part) for _, part in by_part]
        self._behind()
        for part in sorted(parts, key=lambda one: -one[0].width * one[0].height):
            self._caption(part)
        for piece in self.picture.pieces:
            self._tags(piece)
        boxes = [one.box for one in self.drawn.captions + self.drawn.tags]
        self.drawn.top = round(min(0.0, *(one.y - one.high / 2 for one in boxes)) - MARGIN, 1)
        low = max(self.lowest, *(one.y + one.high / 2 for one in boxes))
        self.drawn.height = round(low + MARGIN - self.drawn.top, 1)

    def _at(self, point: Point) -> Point:
        return (
            WIDE / 2 + (point[0] - self.middle) * self.scale,
            (point[1] - self.above) * self.scale,
        )

    def _corners(self, points: Corners) -> Corners:
        return [self._at(one) for one in points]

    def _piece(self, piece: Piece) -> None:
        self.drawn.outlines.append(_points(self._corners(piece.lies(piece.outline))))
        for lower, upper in pairwise(sorted({up for _, up in piece.outline})):
            part = strip(piece.outline, lower, upper)
            self.room.fill(self._corners(piece.lies(part)))
        for pattern, corners in piece.fabrics:
            points = _points(self._corners(piece.lies(corners)))
            self.drawn.fabrics.append(Fabric(points, look_of(pattern)))
        for band in piece.bands:
            pale = self.drawn.pale and not band.knit.done
            shape = Shape(self._around(piece, band), self._fill(band), pale, piece.rings)
            self.drawn.shapes.append(shape)
        for before, after in pairwise(piece.bands):
            self._stroke(piece, before, after)

    def _around(self, piece: Piece, band: Band) -> str:
        if piece.rings:
            return self._rings(piece).band(band)
        return _points(self._corners(piece.lies(band.corners)))

    def _rings(self, piece: Piece) -> Rings:
        return rings_of(piece, self._at(piece.point(0.0, piece.height)), self.scale)

    def _stroke(self, piece: Piece, before: Band, after: Band) -> None:
        knit_to = self.drawn.pale and before.knit.done and not after.knit.done
        if not knit_to and not joined(before, after):
            return
        if piece.rings:
            self.drawn.strokes.append(Stroke(self._rings(piece).row(after.begun), knit_to))
            return
        up, beyond = after.begun, (3.5 if knit_to else 1.5) / self.scale
        for left, right in spans(piece.outline, up + (after.ended - up) * 1e-6):
            ends = [self._at(piece.point(x, up)) for x in (left - beyond, right + beyond)]
            path = "M{:.1f} {:.1f}L{:.1f} {:.1f}".format(*ends[0], *ends[1])
            self.drawn.strokes.append(Stroke(path, knit_to))
            told = knit_to and piece.foremost
            placed = tag_at_end(KNIT_TO, ends, self.room) if told else None
            self.drawn.tags += [placed] if placed else []

    def _fill(self, band: Band) -> str:
        threads = band.knit.threads
        parts = [(self._colour(one), one.share) for one in threads]
        if not any(one.holding_id for one in threads):
            return f"url(#{self._hatch(parts)})"
        return parts[0][0] if len(parts) == 1 else f"url(#{self._fleck(parts)})"

    def _colour(self, thread: Thread) -> str:
        """That of its skein, or of the yarn meant for it while it has none."""
        if thread.colour:
            return thread.colour
        if thread.holding_id:
            return self.picture.skeins[thread.holding_id].colour or USUAL_COLOUR
        return self.picture.meant[thread.yarn_id].colour if thread.yarn_id else ""

    def _hatch(self, parts: list[tuple[str, float]]) -> str:
        colour, y, others = parts[0][0], 0.0, []
        for other, share in parts[1:]:
            if other and other != colour:
                others.append((other, round(y, 2), round(6 * share, 2)))
            y += 6 * share
        for one in self.drawn.hatches:
            if (one.colour, one.others) == (colour, tuple(others)):
                return one.name
        found = Hatch(f"no-skein-{len(self.drawn.hatches) + 1}", colour, tuple(others))
        self.drawn.hatches.append(found)
        return found.name

    def _fleck(self, parts: list[tuple[str, float]]) -> str:
        parts = [(colour or PAPER, share) for colour, share in parts]
        x, flecks = 0.0, []
        for colour, share in parts[1:]:
            flecks.append((colour, round(x, 2), round(10 * share, 2)))
            x += 10 * share
        for one in self.drawn.flecks:
            if (one.ground, one.flecks) == (parts[0][0], tuple(flecks)):
                return one.name
        found = Fleck(f"yarns-{len(self.drawn.flecks) + 1}", parts[0][0], tuple(flecks))
        self.drawn.flecks.append(found)
        return found.name

    def _behind(self) -> None:
        """What lies beside its front says that it is the back."""
        backs = [one for one in self.picture.pieces if one.view == "back"]
        if backs:
            whole = [point for one in backs for point in self._corners(one.lies(one.outline))]
            placed = caption(BEHIND, [whole], "body", self.room)
            self.drawn.captions += [placed] if placed else []

    def _caption(self, part: list[Piece]) -> None:
        lines = (part_name(part), *size_lines(part[0], self.shown))
        front = [one for one in part if one.view != "back"]
        pieces = [self._corners(one.lies(one.outline)) for one in front]
        placed = caption(lines, pieces, part[0].place, self.room)
        self.drawn.captions += [placed] if placed else []

    def _tags(self, piece: Piece) -> None:
        for band in by_skein(piece.bands):
            at, wide = self._room_on(piece, band)
            name = self._told(band, wide, abs(band.ended - band.begun) * self.scale)
            placed = tag(name, at, self.room) if name else None
            self.drawn.tags += [placed] if placed else []

    def _room_on(self, piece: Piece, band: Band) -> tuple[Point, float]:
        """Where a tag lies on a band, and how wide it may be."""
        middle = (band.begun + band.ended) / 2
        if piece.rings:
            return self._rings(piece).lowest(middle), middle * self.scale
        left, right = _widest(spans(piece.outline, middle))
        return self._at(piece.point((left + right) / 2, middle)), (right - left) * self.scale

    def _told(self, band: Band, wide: float, high: float) -> str:
        """What is written on a band; empty where it would hide the piece, or there is no room."""
        told = short(codes(band, self.picture.skeins))
        if told:
            return told if high > TAG_HIGH and tag_wide(told) <= wide + OVERHANG else ""
        roomy = high > HIDES_NOT * TAG_HIGH and wide > HIDES_NOT / 2 * tag_wide(NO_SKEIN)
        return NO_SKEIN if roomy else ""


def look_of(pattern: str) -> str:
    """The fill that looks like a stitch pattern, by its name."""
    return next((look for word, look in LOOKS if word in pattern.lower()), "stocking")


def _widest(found: list[tuple[float, float]]) -> tuple[float, float]:
    return max(found, key=lambda one: one[1] - one[0], default=(0.0, 0.0))


def _points(corners: Corners) -> str:
    told = (f"{_tenth(x)},{_tenth(y)}" for x, y in corners)
    return " ".join(one for one, _ in groupby(told))


def _tenth(number: float) -> str:
    return f"{number:.1f}".removesuffix(".0")
