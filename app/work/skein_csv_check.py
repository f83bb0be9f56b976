"""What the rows of a table say together, and against the book: codes, yarns, fleeces."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace

from app.book.book import Book
from app.book.skein_csv import RowFault
from app.book.yarn import Yarn
from app.work.skein_csv import ListedSkein


@dataclass(frozen=True, slots=True)
class SaidOfYarn:
    """What a row says of its yarn, by column; nothing where its cell is empty."""

    name: str
    cells: dict[str, str]


Row = tuple[ListedSkein, SaidOfYarn]


def code_faults(listed: Iterable[ListedSkein], book: Book) -> Iterator[RowFault]:
    """Codes that something in the book has, or another line of the table."""
    taken = {one.code for one in book.holdings}
    first: dict[str, int] = {}
    for one in listed:
        code = one.new.code
        if code in taken:
            text = f"{code} is already in use. Choose another code, or leave it empty."
            yield RowFault(one.line, "code", text)
        elif code and first.setdefault(code, one.line) != one.line:
            text = f"Line {first[code]} has the code {code} too. Give each its own."
            yield RowFault(one.line, "code", text)


def with_yarns(rows: Sequence[Row], book: Book) -> tuple[list[ListedSkein], list[RowFault]]:
    """The skeins with the yarns they belong to, those of the book or new ones, and a fault for
    each cell that says something else of a yarn than the book or an earlier line."""
    known = {one.name.lower(): one for one in reversed(book.yarns)}
    by_name: dict[str, list[Row]] = {}
    for row in rows:
        by_name.setdefault(row[1].name.lower(), []).append(row)
    faults: list[RowFault] = []
    yarns: dict[str, Yarn] = {}
    for name, alike in by_name.items():
        old = known.get(name)
        faults += _against_book(alike, old) if old else _among_themselves(alike)
        yarns[name] = old or _new_yarn(alike)
    listed = [_of(one, yarns[said.name.lower()]) for one, said in rows]
    return listed, [*faults, *_fleeces_of_bought(rows, yarns)]


def said_by(yarn: Yarn) -> dict[str, str]:
    """What the book knows of a yarn, in the words of the table."""
    known = {"fibre": yarn.fibre, "plies": str(yarn.plies or ""), "twist": yarn.twist}
    return known | {"bought": "yes" if yarn.bought else "no"}


def _of(one: ListedSkein, yarn: Yarn) -> ListedSkein:
    return replace(one, new=replace(one.new, yarn=yarn))


def _against_book(alike: Sequence[Row], yarn: Yarn) -> Iterator[RowFault]:
    known = said_by(yarn)
    for one, said in alike:
        for column, cell in said.cells.items():
            if cell.lower() != known[column].lower():
                there = f"says “{known[column]}” here" if known[column] else "says nothing here"
                text = (
                    f"Your book {there} for the yarn {yarn.name}. Leave this cell empty, change "
                    "the yarn first, or name another yarn."
                )
                yield RowFault(one.line, column, text)


def _among_themselves(alike: Sequence[Row]) -> Iterator[RowFault]:
    if not alike[0][1].name:
        return
    first: dict[str, tuple[int, str]] = {}
    for one, said in alike:
        for column, cell in said.cells.items():
            line, other = first.setdefault(column, (one.line, cell))
            if cell.lower() != other.lower():
                text = (
                    f"Line {line} says “{other}” of the yarn {said.name}. Say the same, or give "
                    "this yarn another name."
                )
                yield RowFault(one.line, column, text)


def _new_yarn(alike: Sequence[Row]) -> Yarn:
    """A yarn as its lines say together; what they do not all share stays with the skeins."""
    cells: dict[str, str] = {}
    for _, said in reversed(alike):
        cells |= said.cells
    first = alike[0][0].new
    plies = next((one.new.yarn.plies for one, _ in alike if one.new.yarn.plies), None)
    twist = next((one.new.yarn.twist for one, _ in alike if one.new.yarn.twist), first.yarn.twist)
    return replace(
        first.yarn,
        fibre=cells.get("fibre") or first.yarn.fibre,
        plies=plies,
        twist=twist,
        bought=cells.get("bought") == "yes",
        fleece_id=_shared(one.new.fleece_id for one, _ in alike),
        colour=_shared(one.new.colour for one, _ in alike) or "",
        colour_name=_shared(one.new.colour_name for one, _ in alike) or "",
    )


def _shared(values: Iterable[str | None]) -> str | None:
    """What all have in common, or None."""
    found = set(values)
    return found.pop() if len(found) == 1 else None


def _fleeces_of_bought(rows: Iterable[Row], yarns: dict[str, Yarn]) -> Iterator[RowFault]:
    for one, said in rows:
        if one.new.fleece_id and yarns[said.name.lower()].bought:
            text = "A bought yarn comes from no fleece of yours. Leave this cell empty."
            yield RowFault(one.line, "fleece", text)
