"""The rows of a part as they are knit, from its picture: in which yarn, skein and colour."""

from dataclasses import dataclass

from app.craft.turns_told import Repeat, told
from app.planning.picture import Picture
from app.planning.picture_rows import Knit, Thread
from app.web.pages.answer import listed


@dataclass(frozen=True, slots=True)
class RowShown:
    """A row: its yarn and skein in words, and its colour ("#rrggbb" or empty)."""

    number: int
    yarn: str
    skein: str
    colour: str


@dataclass(frozen=True, slots=True)
class Stretch:
    """Rows that are told together: which, what is knit in them, and how many times over."""

    first: int
    last: int
    rows: str
    words: str
    colours: tuple[str, ...]
    times: int


def rows_shown(picture: Picture, part_id: str) -> tuple[RowShown, ...]:
    """Every row of the first copy of a part; none where it is not drawn."""
    knit = knit_rows(picture, part_id, 1)
    return tuple(row_shown(row, one.threads, picture) for row, one in enumerate(knit, 1))


def knit_rows(picture: Picture, part_id: str, copy: int) -> list[Knit]:
    """What each row of a copy of a part is knit with; none where it is not drawn."""
    mine = (one for one in picture.pieces if (one.part_id, one.copy) == (part_id, copy))
    piece = next(mine, None)
    bands = piece.bands if piece else ()
    return [band.knit for band in bands for _ in range(band.first, band.last + 1)]


def stretches(rows: tuple[RowShown, ...], noun: str) -> tuple[Stretch, ...]:
    """The rows in words, what is repeated told once; `noun` is "row" or "round"."""
    colours = {one.yarn: one.colour for one in rows}
    return tuple(_stretch(one, noun, colours) for one in told(one.yarn for one in rows))


def _stretch(one: Repeat[str], noun: str, colours: dict[str, str]) -> Stretch:
    yarns = [yarn for _, yarn in one.rows]
    if len(one.rows) == 1:
        words = yarns[0]
    else:
        each = [f"{count} {noun}{'s' if count > 1 else ''} {yarn}" for count, yarn in one.rows]
        words = ", ".join(each)
        words += f"; {one.times} times in all" if one.times > 1 else ""
    which = f"{noun.capitalize()} {one.first}"
    if one.last > one.first:
        which = f"{noun.capitalize()}s {one.first} to {one.last}"
    shown = tuple(dict.fromkeys(colours[yarn] for yarn in yarns if colours[yarn]))
    return Stretch(one.first, one.last, which, words, shown, one.times)


def row_shown(number: int, threads: tuple[Thread, ...], picture: Picture) -> RowShown:
    """A row that is knit with these."""
    yarns = [_yarn(one, picture) for one in threads]
    skeins = [picture.skeins[one.holding_id].code for one in threads if one.holding_id]
    colour = next((found for one in threads if (found := _colour(one, picture))), "")
    return RowShown(number, listed(list(dict.fromkeys(yarns))), " + ".join(skeins), colour)


def _yarn(thread: Thread, picture: Picture) -> str:
    if thread.holding_id:
        return picture.skeins[thread.holding_id].yarn or thread.role
    return picture.meant[thread.yarn_id].name if thread.yarn_id else thread.role


def _colour(thread: Thread, picture: Picture) -> str:
    if thread.colour:
        return thread.colour
    if thread.holding_id:
        return picture.skeins[thread.holding_id].colour
    return picture.meant[thread.yarn_id].colour if thread.yarn_id else ""
