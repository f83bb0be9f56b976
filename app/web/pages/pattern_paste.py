"""The page on which a table of sizes is pasted, before and after it was looked at."""

from collections.abc import Mapping
from dataclasses import dataclass

from app.book.pattern import Pattern
from app.book.stamp import stamp
from app.web.forms.filled import Filled
from app.web.forms.pattern_sizes import MOST_SIZES
from app.web.forms.pattern_table import LINES, LineFault, SizeTable
from app.web.forms.skein_csv_file import seal
from app.web.pages.answer import Sentence, counted
from app.web.pages.pattern_table import SizeTableShown, size_table
from app.web.shown import Shown


@dataclass(frozen=True, slots=True)
class PastePage:
    """`table` is None until one was looked at and is without fault; `seen` seals it."""

    pattern: Pattern
    form: Filled
    answer: Sentence
    lines: Mapping[str, str]
    most_sizes: int
    faults: tuple[LineFault, ...] = ()
    table: SizeTableShown | None = None
    seen: str = ""


def paste_page(
    pattern: Pattern, shown: Shown, form: Filled | None = None, read: SizeTable | None = None
) -> PastePage:
    """The page; `read` is what was pasted, as it was understood."""
    form = form or Filled(stamp=stamp(pattern))
    if read is None:
        lead = Sentence("idle", "Paste a table of sizes.", " You look at it first.")
        return PastePage(pattern, form, lead, LINES, MOST_SIZES)
    if read.faults:
        return PastePage(
            pattern, form, _to_put_right(read, shown), LINES, MOST_SIZES, tuple(read.faults)
        )
    instead = f" They take the place of the {len(pattern.sizes)} it has." if pattern.sizes else ""
    many = counted(len(read.sizes), "size").capitalize()
    return PastePage(
        pattern,
        form,
        Sentence("enough", f"{many} can be kept.", instead),
        LINES,
        MOST_SIZES,
        table=size_table(read.sizes, read.shares, shown),
        seen=seal(form.values.get("table", "")),
    )


def _to_put_right(read: SizeTable, shown: Shown) -> Sentence:
    lines = len({one.line for one in read.faults})
    words = "line is" if lines == 1 else "lines are"
    return Sentence("short", f"{shown.number(lines)} {words} to be put right.", " Nothing is kept.")
