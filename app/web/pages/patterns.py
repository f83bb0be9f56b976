"""The written patterns: the list, one of them, and the form in which one is written down."""

from collections.abc import Mapping
from dataclasses import dataclass

from app.book.book import Book
from app.book.pattern import Pattern
from app.book.stamp import stamp
from app.planning.turn import in_turn
from app.web.forms.filled import Filled
from app.web.forms.gauge import MEASURES
from app.web.forms.part_changes import place_words
from app.web.forms.pattern import pattern_values
from app.web.forms.pattern_sizes import MOST_PARTS, MOST_SIZES, STATED_IN, count_of
from app.web.pages.answer import Sentence, counted
from app.web.pages.gauge_said import counts_said
from app.web.pages.pattern_table import SizeTableShown, doubts, size_table
from app.web.shown import Shown


@dataclass(frozen=True, slots=True)
class PatternLine:
    """What the list says of a pattern."""

    id: str
    name: str
    source: str
    gauge: str
    sizes: str


@dataclass(frozen=True, slots=True)
class PatternsPage:
    """The patterns at hand and those put away."""

    answer: Sentence
    lines: tuple[PatternLine, ...]
    put_away: tuple[PatternLine, ...]


@dataclass(frozen=True, slots=True)
class PatternPage:
    """One pattern; `table` is None while it has no sizes. `garments` are (id, name, size) of those
    knit from it, `open` (id, name) those not cast on yet."""

    pattern: Pattern
    stamp: str
    answer: Sentence
    table: SizeTableShown | None
    doubts: tuple[str, ...]
    garments: tuple[tuple[str, str, str], ...]
    open: tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True)
class PatternFormPage:
    """`pattern` is None for a new one; `columns` and `parts` are numbered from 1."""

    form: Filled
    pattern: Pattern | None
    action: str
    back: str
    measures: Mapping[str, str]
    stated_in: Mapping[str, str]
    columns: range
    parts: range
    places: Mapping[str, str]
    more_sizes: bool
    more_parts: bool


def patterns_page(book: Book, shown: Shown) -> PatternsPage:
    """All patterns by name."""
    ordered = sorted(book.patterns, key=lambda one: (one.name.casefold(), one.id))
    lines = tuple(_line(one, shown) for one in ordered if one.put_away is None)
    away = tuple(_line(one, shown) for one in ordered if one.put_away)
    many = counted(len(lines), "written pattern").capitalize() if lines else "No pattern yet"
    return PatternsPage(Sentence("idle", f"{many}."), lines, away)


def pattern_page(book: Book, pattern: Pattern, shown: Shown) -> PatternPage:
    """A pattern with its table of sizes and the garments it can be and was used for."""
    plans = in_turn(book.plans)
    return PatternPage(
        pattern=pattern,
        stamp=stamp(pattern),
        answer=_said(pattern, shown),
        table=size_table(pattern.sizes, pattern.shares, shown) if pattern.sizes else None,
        doubts=doubts(pattern, shown),
        garments=tuple(
            (one.id, one.name, one.size) for one in plans if one.pattern_id == pattern.id
        ),
        open=tuple((one.id, one.name) for one in plans if one.state == "intended"),
    )


def pattern_form_page(
    book: Book, pattern: Pattern | None, form: Filled | None = None
) -> PatternFormPage:
    """The form of a pattern, as it stands or as it was typed."""
    opened = Filled(pattern_values(pattern, book.settings), {}, stamp(pattern) if pattern else "")
    filled = form or opened
    sizes, parts = (count_of(filled.values.get(what, ""), what) for what in ("sizes", "parts"))
    return PatternFormPage(
        form=filled,
        pattern=pattern,
        action=f"/patterns/{pattern.id}/change" if pattern else "/patterns/new",
        back=f"/patterns/{pattern.id}" if pattern else "/patterns",
        measures=MEASURES,
        stated_in=STATED_IN,
        columns=range(1, sizes + 1),
        parts=range(1, parts + 1),
        places=place_words(),
        more_sizes=sizes < MOST_SIZES,
        more_parts=parts < MOST_PARTS,
    )


def _line(pattern: Pattern, shown: Shown) -> PatternLine:
    names = ", ".join(one.name for one in pattern.sizes) or "none yet"
    gauge = counts_said(pattern.gauge.stitches, pattern.gauge.rows, shown)
    return PatternLine(pattern.id, pattern.name, pattern.source, gauge, names)


def _said(pattern: Pattern, shown: Shown) -> Sentence:
    gauge = counts_said(pattern.gauge.stitches, pattern.gauge.rows, shown)
    if not pattern.sizes:
        return Sentence("idle", "No sizes yet:", f" type or paste them. It is for {gauge}.")
    widths = [one.width_mm for one in pattern.sizes]
    across = shown.size(min(widths))
    if max(widths) > min(widths):
        across += f" to {shown.size(max(widths))}"
    many = counted(len(pattern.sizes), "size").capitalize()
    return Sentence("idle", many, f", {across} around, for {gauge}.")
