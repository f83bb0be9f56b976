"""The page that brings in a table of skeins, before and after it was looked at."""

from collections.abc import Sequence
from dataclasses import dataclass, field

from app.book.book import Book
from app.book.skein_csv import COLUMNS, MOST_ROWS, RowFault, SkeinTable
from app.book.table_lines import SEPARATORS
from app.book.table_text import TableText
from app.web.forms.filled import Filled
from app.web.forms.skein_csv import ReadSkeins
from app.web.forms.skein_csv_file import seal
from app.web.pages.answer import Sentence, listed
from app.web.shown import Shown
from app.work.skein_csv import ListedSkein
from app.work.skein_readings import Length

MOST_SHOWN = 200
"""Good rows; every row at fault is shown, whatever their number."""

MOST_NAMED = 10
"""Fleeces of other books that a remark names."""


@dataclass(frozen=True, slots=True)
class SkeinPreview:
    """A good row as it would come to the shelf; `mm` is its length, `tex` its grist."""

    line: int
    code: str
    yarn: str
    new_yarn: bool
    mg: int
    mm: int
    tex: float
    finished: bool


@dataclass(frozen=True, slots=True)
class ImportPage:
    """`looked` once a table was read; `ready` where all of it can be brought in."""

    answer: Sentence
    form: Filled
    columns: dict[str, str]
    most_rows: int
    looked: bool = False
    ready: bool = False
    seen: str = ""
    read_as: str = ""
    faults: tuple[RowFault, ...] = ()
    good: list[SkeinPreview] = field(default_factory=list)
    more_good: int = 0
    new_yarns: list[str] = field(default_factory=list)
    remark: str = ""


def import_page(form: Filled) -> ImportPage:
    """The page while there is no table to look at."""
    lead = Sentence("idle", "Bring in skeins from a table.", " You look at it first.")
    return ImportPage(lead, form, COLUMNS, MOST_ROWS)


def preview_page(
    form: Filled, text: TableText, table: SkeinTable, read: ReadSkeins, book: Book, shown: Shown
) -> ImportPage:
    """The page with the table looked through."""
    bad = {one.line for one in read.faults}
    good = [one for one in read.listed if one.line not in bad]
    yarns = {one.new.yarn.name for one in good if one.new.yarn.id not in book.yarn}
    return ImportPage(
        answer=_said(good, bad, shown),
        form=form,
        columns=COLUMNS,
        most_rows=MOST_ROWS,
        looked=True,
        ready=not bad,
        seen=seal(text.text),
        read_as=_read_as(text, table),
        faults=read.faults,
        good=[_preview(one, book) for one in good[:MOST_SHOWN]],
        more_good=max(0, len(good) - MOST_SHOWN),
        new_yarns=sorted(yarns, key=str.lower),
        remark=_remark(read.elsewhere),
    )


def brought_said(count: int, shown: Shown) -> str:
    """What is said once the skeins are on the shelf."""
    return f"{_skeins(count, shown)} came to the shelf."


def _remark(elsewhere: Sequence[str]) -> str:
    """What becomes of the names of fleeces that this book does not have."""
    if not elsewhere:
        return ""
    names = "a fleece" if len(elsewhere) == 1 else "fleeces"
    told = listed([f"“{one}”" for one in elsewhere[:MOST_NAMED]])
    more = f" and {len(elsewhere) - MOST_NAMED} more" if elsewhere[MOST_NAMED:] else ""
    return (
        f"Your book does not have {names} named {told}{more}. The name is kept in the notes of "
        f"each skein, as “from {elsewhere[0]}”."
    )


def _said(good: list[ListedSkein], bad: set[int], shown: Shown) -> Sentence:
    if bad:
        lines = "line is" if len(bad) == 1 else "lines are"
        lead = f"{shown.number(len(bad))} {lines} to be put right"
        return Sentence(
            "short", lead, f", {shown.number(len(good))} good. Nothing is brought in yet."
        )
    mg = sum(one.new.weight.mg for one in good)
    mm = sum(_length(one).mm for one in good)
    lead = f"{_skeins(len(good), shown)} can be brought in"
    return Sentence("enough", lead, f": {shown.length(mm / 1000)}, {shown.mass(mg / 1000)}.")


def _skeins(count: int, shown: Shown) -> str:
    return f"{shown.number(count)} {'skein' if count == 1 else 'skeins'}"


def _read_as(text: TableText, table: SkeinTable) -> str:
    cells = f"with {SEPARATORS[table.separator]} between the cells"
    return f"Read as {text.encoding}, {cells}." if text.encoding else f"Read {cells}."


def _preview(one: ListedSkein, book: Book) -> SkeinPreview:
    new, length = one.new, _length(one)
    return SkeinPreview(
        line=one.line,
        code=new.code,
        yarn=new.yarn.name,
        new_yarn=new.yarn.id not in book.yarn,
        mg=new.weight.mg,
        mm=length.mm,
        tex=new.weight.mg / (length.mm / 1000),
        finished=length.finished,
    )


def _length(one: ListedSkein) -> Length:
    """A row has one length."""
    return one.new.lengths[0]
