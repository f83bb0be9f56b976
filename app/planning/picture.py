"""The picture of a garment: every piece to scale, every row in the skein that knits it."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from functools import partial

from app.book.book import Book
from app.book.plan import Part
from app.book.shape import Run
from app.book.words import PlanState
from app.book.yarn import Yarn
from app.craft.constructions.drawing import DrawnPiece
from app.planning.answers import Reckoning
from app.planning.needs import PartNeed, needs_of
from app.planning.picture_drawn import (
    as_drawn,
    centred,
    drawn_pieces,
    mirrored,
    one_sided,
    same_runs,
)
from app.planning.picture_folded import Fold, View, fold_of, folded
from app.planning.picture_layout import laid_out
from app.planning.picture_outline import Corners
from app.planning.picture_piece import Piece
from app.planning.picture_rows import (
    Knit,
    Scale,
    Thread,
    bands,
    fabrics,
    outline_of,
    scale_of,
)
from app.planning.picture_way_up import from_top, over
from app.planning.picture_yarn import Pegging
from app.planning.places import in_round, place_of
from app.planning.schedule import schedule
from app.planning.yarns import Lots


@dataclass(frozen=True, slots=True)
class Skein:
    """A skein as it is seen in the picture; the colour is its own, else its yarn's, or empty."""

    code: str
    yarn: str
    colour: str
    colour_name: str


@dataclass(frozen=True, slots=True)
class Picture:
    """The pieces in their places, the skeins in them by holding, the yarns meant for rows that have
    no skein yet by their id, and the parts that have no rows
    to draw: those stated as an amount of yarn, and those without a gauge."""

    plan_id: str
    name: str
    state: PlanState
    pieces: tuple[Piece, ...]
    skeins: Mapping[str, Skein]
    meant: Mapping[str, Yarn]
    amounts: tuple[str, ...]
    without_gauge: tuple[str, ...]


def picture(book: Book, reckoning: Reckoning, plan_id: str) -> Picture:
    """The picture of a plan. KeyError for a plan that is not in the book."""
    plan, parts = book.plan[plan_id], book.parts_of.get(plan_id, [])
    needs = needs_of(plan, parts, Lots(book))
    pegging = Pegging(book, plan, needs, reckoning.plan(plan_id))
    drawn_so, fold = drawn_pieces(plan), fold_of(needs)
    knit = [(need, pegging.knit(need)) for need in needs]
    downwards = any(_downwards(need) for need in needs)
    pieces = [
        piece
        for need, copies in knit
        for piece in _pieces(need, copies, drawn_so.get(need.part.id), fold, downwards)
    ]
    drawn = {one.part_id for one in pieces}
    empty = [one for one in needs if one.part.id not in drawn]
    return Picture(
        plan_id=plan_id,
        name=plan.name,
        state=plan.state,
        pieces=laid_out(pieces),
        skeins=_skeins(book, pieces),
        meant={one.yarn_id: book.yarn[one.yarn_id] for one in _threads(pieces) if one.yarn_id},
        amounts=tuple(one.part.name for one in empty if one.known),
        without_gauge=tuple(one.part.name for one in empty if not one.known),
    )


def _downwards(need: PartNeed) -> bool:
    """Whether a part is a yoke that is worked from the neck down."""
    if need.gauge is None or place_of(need.part) != "yoke":
        return False
    runs = schedule(need.part.shape, need.gauge, need.part.worked)
    return bool(runs) and from_top("yoke", _stitches(runs))


def _pieces(
    need: PartNeed,
    copies: list[list[Knit]],
    drawn: DrawnPiece | None,
    fold: Fold,
    downwards: bool,
) -> list[Piece]:
    part, gauge = need.part, need.gauge
    if gauge is None or not any(copies):
        return []
    scale, place = scale_of(part, gauge), place_of(part)
    runs = schedule(part.shape, gauge, part.worked)
    stitches, tube = _stitches(runs), in_round(part)
    turned, found = over(place, stitches, downwards), []
    named = partial(Piece, part.id, part.name)
    rings = drawn is not None and drawn.rings and same_runs(part, drawn)
    for view, line in _lines(part, runs, scale, drawn, fold):
        for copy, knit in enumerate(copies, 1):
            own = _outline(line, turned, mirror=not view and copy % 2 == 1)
            known = named(copy, part.copies, place, tube, stitches, scale.stitch * (1 + tube), own)
            rows, worked = bands(knit, own, turned), fabrics(runs, own, turned)
            found.append(replace(known, bands=rows, fabrics=worked, view=view, rings=rings))
    return found


def _lines(
    part: Part, runs: tuple[Run, ...], scale: Scale, drawn: DrawnPiece | None, fold: Fold
) -> list[tuple[View, Corners]]:
    """The outline of every view of a part."""
    views = fold.views(part)
    if views == ("",):
        return [("", as_drawn(part, scale, drawn) or outline_of(runs, scale))]
    return [(view, folded(part, runs, scale, drawn, view)) for view in views]


def _outline(line: Corners, turned: bool, mirror: bool) -> Corners:
    """A piece as it lies: turned over if it is worked from the top, and of two halves the first
    with its straight edge to the right."""
    height = max(y for _, y in line)
    own = tuple((x, height - y) for x, y in line) if turned else line
    return centred(mirrored(own) if mirror and one_sided(own) else own)


def _stitches(runs: tuple[Run, ...]) -> tuple[int, int, int]:
    widest = max(max(run.stitches, run.stitches_to) for run in runs)
    return runs[0].stitches, widest, runs[-1].stitches_to


def _threads(pieces: list[Piece]) -> Iterator[Thread]:
    return (one for piece in pieces for band in piece.bands for one in band.knit.threads)


def _skeins(book: Book, pieces: list[Piece]) -> dict[str, Skein]:
    used = dict.fromkeys(one.holding_id for one in _threads(pieces) if one.holding_id)
    return {one: _skein(book, one) for one in used}


def _skein(book: Book, holding_id: str) -> Skein:
    holding = book.holding[holding_id]
    yarn = book.yarn.get(holding.yarn_id or "")
    return Skein(
        code=holding.code,
        yarn=yarn.name if yarn else "",
        colour=holding.colour or (yarn.colour if yarn else ""),
        colour_name=holding.colour_name or (yarn.colour_name if yarn else ""),
    )
