"""The strip of a piece: its next rows in words and colour, the top one to be ticked off."""

from dataclasses import dataclass, replace
from datetime import date

from app.book.plan import Part, Plan
from app.craft.shaping import counted
from app.planning.knitting.forecast import Forecast
from app.planning.knitting.strip import StripRow, strip
from app.planning.picture import Picture, picture
from app.planning.picture_drawn import drawn_pieces
from app.planning.plan_sheet import plan_sheet
from app.web.forms.filled import Filled
from app.web.pages.needles import PieceLine, piece_lines
from app.web.pages.needles_weigh import WeighForm, weigh_form, weighing_values
from app.web.pages.sequence import noun_of
from app.web.pages.sequence_rows import knit_rows, row_shown
from app.work.reckoning import Known
from app.work.undo_records import Change

AHEAD = 12
"""Rows that are seen ahead of the one on the needles."""

BEHIND, BEFORE = 60, 1_000
"""Rows that are in the page behind and before her, so that it goes on without a connection."""


@dataclass(frozen=True, slots=True)
class RowTold:
    """A row as it is read: its number, stitches, what changes, stitch pattern, yarn with skein and
    colour, what is joined, and how long the yarn goes on. `like_before`: with the same pattern and
    skein as the row before it."""

    number: int
    stitches: str
    change: str
    pattern: str
    yarn: str
    skein: str
    colour: str
    join: str
    then: str
    like_before: bool = False


@dataclass(frozen=True, slots=True)
class StripPage:
    """`ids` are those of the taps this page may make: one for each piece that is ticked, to tick
    and to take back. `together` counts the same row on every copy."""

    plan: Plan
    part: Part
    piece: int
    pieces: tuple[int, ...]
    noun: str
    done: int
    of: int
    ahead: int
    top: RowTold | None
    rows: tuple[RowTold, ...]
    lines: tuple[PieceLine, ...]
    work: tuple[str, ...]
    together: bool
    id: str
    form: Filled
    weigh: WeighForm
    last: Change | None

    @property
    def url(self) -> str:
        """The address of this strip."""
        here = f"/garments/{self.plan.id}/needles/{self.part.id}/{self.piece}"
        return f"{here}?together=1" if self.together else here


def strip_page(
    known: Known,
    part: Part,
    piece: int,
    id: str,
    today: date,
    together: bool = False,
    form: Filled | None = None,
    last: Change | None = None,
) -> StripPage:
    """The strip of a piece of a part that is being knit; `id` is fresh for every page."""
    book, plan = known.book, known.book.plan[part.plan_id]
    ahead = Forecast(book, known.reckoning.plan(plan.id))
    told = rows_told(known, part, piece)
    done = min(ahead.done.get((part.id, piece), 0), len(told))
    weighing = weighing_values(book, ahead.pieces, plan.id, f"{id}-weighed", (part.id, piece))
    return StripPage(
        plan=plan,
        part=part,
        piece=piece,
        pieces=tuple(range(1, part.copies + 1)) if together else (piece,),
        noun=noun_of(part),
        done=done,
        of=len(told),
        ahead=AHEAD,
        top=told[done] if done < len(told) else None,
        rows=told[max(0, done - BEHIND) : done + BEFORE],
        lines=piece_lines(ahead.pieces, book, plan.id),
        work=plan_sheet(book, plan).work.get(part.id, ()),
        together=together,
        id=id,
        form=form or Filled({"row": "", "ripped": "", "day": today.isoformat()}),
        weigh=weigh_form(book, ahead.pieces, plan.id, Filled(weighing)),
        last=last,
    )


def rows_told(known: Known, part: Part, piece: int) -> tuple[RowTold, ...]:
    """Every row of a piece; none where the part has no rows."""
    seen = picture(known.book, known.reckoning, part.plan_id)
    needs = Forecast(known.book, known.reckoning.plan(part.plan_id)).needs
    need = next(one for one in needs if one.part.id == part.id)
    knit = knit_rows(seen, part.id, piece)
    drawn = drawn_pieces(known.book.plan[part.plan_id]).get(part.id)
    rows = [_row(one, seen) for one in strip(need, knit, drawn)]
    noun = noun_of(part)
    return tuple(_with_then(_likened(rows), noun))


def _likened(rows: list[RowTold]) -> list[RowTold]:
    told = [(one.pattern, one.yarn, one.skein) for one in rows]
    pairs = zip(rows, [None, *told], told, strict=False)
    return [replace(one, like_before=before == now) for one, before, now in pairs]


def _row(one: StripRow, seen: Picture) -> RowTold:
    shown = row_shown(one.number, one.threads, seen)
    about = "" if one.counted else "about "
    joins = [seen.skeins[holding_id].code for holding_id in one.joins]
    return RowTold(
        one.number,
        f"{about}{one.stitches} stitches",
        one.change,
        one.pattern,
        shown.yarn,
        shown.skein,
        shown.colour,
        " and ".join(joins),
        "",
    )


def _with_then(rows: list[RowTold], noun: str) -> list[RowTold]:
    """Each row with how long its yarn goes on, and what comes after it."""
    found: list[RowTold] = []
    more, after = 0, ""
    for one in reversed(rows):
        if found and found[-1].yarn == one.yarn:
            more += 1
        else:
            after, more = (found[-1].yarn if found else ""), 0
        goes_on = f"{counted(more, noun)} more of it" if more else "the last of it"
        then = f"{goes_on}, then {after}" if after else ""
        found.append(replace(one, then=then))
    return found[::-1]
