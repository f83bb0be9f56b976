"""A pattern's table of sizes as it is shown, and what in it does not agree with itself."""

from collections.abc import Callable
from dataclasses import dataclass

from app.book.pattern import Pattern, PatternSize, Share, SizePart
from app.planning.from_pattern import uncounted
from app.planning.pattern_fit import belied
from app.web.pages.answer import listed
from app.web.shown import Shown


@dataclass(frozen=True, slots=True)
class SizeTableShown:
    """The names of the sizes; each row is what it tells and a cell for each size."""

    sizes: tuple[str, ...]
    rows: tuple[tuple[str, tuple[str, ...]], ...]


def size_table(
    sizes: tuple[PatternSize, ...], shares: tuple[Share, ...], shown: Shown
) -> SizeTableShown:
    """Sizes side by side; rows of which nothing is known are left out."""
    pct = {one.name: shown.percent(one.pct, 1) for one in shares}
    rows = [
        ("Width around", tuple(shown.size(one.width_mm) for one in sizes)),
        ("Yarn stated", tuple(_yarn(one.stated_mm, shown) for one in sizes)),
    ]
    for name in dict.fromkeys(part.name for size in sizes for part in size.parts):
        rows += _part_rows(name, sizes, pct.get(name, ""), shown)
    known = tuple((words, cells) for words, cells in rows if any(cells))
    return SizeTableShown(tuple(one.name for one in sizes), known)


def doubts(pattern: Pattern, shown: Shown) -> tuple[str, ...]:
    """What a pattern's table leaves out, and widths its stitches belie."""
    found = []
    missing = dict.fromkeys(name for size in pattern.sizes for name in uncounted(size))
    if missing:
        found.append(
            f"Not counted for every size: {listed(list(missing))}. Give stitches, and rows or a "
            "length, or the yarn of it stays out of the metres by counts."
        )
    for size in pattern.sizes:
        cm = belied(pattern, size)
        if cm is not None:
            found.append(
                f"Size {size.name}: its stitches make {shown.size(10 * cm)} at the pattern's gauge,"
                f" the table says {shown.size(size.width_mm)}. Is the gauge right?"
            )
    return tuple(found)


def _part_rows(
    name: str, sizes: tuple[PatternSize, ...], share: str, shown: Shown
) -> list[tuple[str, tuple[str, ...]]]:
    pieces = [next((one for one in size.parts if one.name == name), None) for size in sizes]
    tells: tuple[tuple[str, Callable[[SizePart], str]], ...] = (
        ("cast on", lambda one: _count(one.cast_on, shown)),
        ("widest, or end", lambda one: _count(one.widest, shown)),
        ("rows", lambda one: _count(one.rows, shown)),
        ("length", lambda one: shown.size(one.length_mm) if one.length_mm else ""),
    )
    copies = max((one.copies for one in pieces if one), default=1)
    title = f"{name} × {copies}" if copies > 1 else name
    rows = [
        (f"{title}: {words}", tuple(tell(one) if one else "" for one in pieces))
        for words, tell in tells
    ]
    if not any(cell for _, cells in rows for cell in cells):
        rows.append((title, tuple("not told" for _ in pieces)))
    place = next((one.place for one in pieces if one and one.place), "")
    if place:
        rows.append((f"{title}: place", tuple(place for _ in pieces)))
    if share:
        rows.append((f"{title}: share of the yarn", tuple(share for _ in pieces)))
    return rows


def _count(count: int | None, shown: Shown) -> str:
    return "" if count is None else shown.number(count)


def _yarn(mm: int | None, shown: Shown) -> str:
    return "" if mm is None else shown.length(mm / 1000)
