"""The picture of a garment: every piece to scale, every row in the skein that knits it."""

from collections.abc import Mapping
from dataclasses import dataclass

from app.book.book import Book
from app.book.plan import Part
from app.book.shape import Run
from app.book.words import PlanState
from app.planning.answers import Reckoning
from app.planning.needs import PartNeed, needs_of
from app.planning.picture_layout import laid_out
from app.planning.picture_piece import Piece
from app.planning.picture_rows import Band, Knit, bands, scale_of
from app.planning.picture_way_up import way_up
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
    """The pieces in their places, the skeins in them by holding, and the parts that have no rows
    to draw: those stated as an amount of yarn, and those without a gauge."""

    plan_id: str
    name: str
    state: PlanState
    pieces: tuple[Piece, ...]
    skeins: Mapping[str, Skein]
    amounts: tuple[str, ...]
    without_gauge: tuple[str, ...]


def picture(book: Book, reckoning: Reckoning, plan_id: str) -> Picture:
    """The picture of a plan. KeyError for a plan that is not in the book."""
    plan, parts = book.plan[plan_id], book.parts_of.get(plan_id, [])
    needs = needs_of(plan, parts, Lots(book))
    pegging = Pegging(book, plan, needs, reckoning.plan(plan_id))
    pieces = [one for need in needs for one in _pieces(need, pegging.knit(need))]
    drawn = {one.part_id for one in pieces}
    empty = [one for one in needs if one.part.id not in drawn]
    return Picture(
        plan_id=plan_id,
        name=plan.name,
        state=plan.state,
        pieces=laid_out(way_up(pieces)),
        skeins=_skeins(book, pieces),
        amounts=tuple(one.part.name for one in empty if one.known),
        without_gauge=tuple(one.part.name for one in empty if not one.known),
    )


def _pieces(need: PartNeed, copies: list[list[Knit]]) -> list[Piece]:
    if need.gauge is None or not any(copies):
        return []
    scale, runs = scale_of(need.part, need.gauge), schedule(need.part.shape, need.gauge)
    return [
        _piece(need.part, copy + 1, bands(runs, knit, scale), _stitches(runs))
        for copy, knit in enumerate(copies)
    ]


def _piece(part: Part, copy: int, drawn: tuple[Band, ...], stitches: tuple[int, int, int]) -> Piece:
    place, tube = place_of(part), in_round(part)
    return Piece(part.id, part.name, copy, part.copies, place, tube, drawn, stitches)


def _stitches(runs: tuple[Run, ...]) -> tuple[int, int, int]:
    widest = max(max(run.stitches, run.stitches_to) for run in runs)
    return runs[0].stitches, widest, runs[-1].stitches_to


def _skeins(book: Book, pieces: list[Piece]) -> dict[str, Skein]:
    threads = (one for piece in pieces for band in piece.bands for one in band.knit.threads)
    used = dict.fromkeys(one.holding_id for one in threads if one.holding_id)
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
