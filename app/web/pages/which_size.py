"""The page "Which size?": the size to cast on for, then every size, then how it was worked out."""

from collections.abc import Mapping
from dataclasses import dataclass

from app.book.book import Book
from app.book.plan import Plan
from app.book.stamp import stamp
from app.craft.working import Step
from app.planning.pattern_fit import around
from app.planning.which_size import SizeAnswer, WhichSize
from app.web.forms.filled import Filled
from app.web.forms.which_size import EASE_WORDS, FOLLOWS, offered_patterns
from app.web.pages.answer import Sentence
from app.web.pages.gauge_said import gauge_said
from app.web.pages.pattern_table import doubts
from app.web.pages.which_size_said import (
    both_said,
    ease_said,
    knit_these,
    lengths_said,
    metres_said,
    piece_said,
    shelf_said,
    size_sentence,
    steps,
    tight_sentence,
    tightest_said,
)
from app.web.shown import Shown
from app.work.pattern_take import By

TAKE: Mapping[By, str] = {"counts": "by its counts", "stated": "by the amount it states"}


@dataclass(frozen=True, slots=True)
class SizeRow:
    """A size in the table; `by` are the ways its parts can be made, the first one usual."""

    name: str
    best: bool
    width: str
    ease: str
    tightest: str
    lengths: str
    metres: str
    shelf: str
    by: tuple[By, ...]


@dataclass(frozen=True, slots=True)
class SizesFound:
    """The answer: the sizes, what is tightest, the lengths to knit and the pieces of the
    recommended one, and what the pattern contradicts (`both`) or leaves in doubt."""

    pattern_id: str
    pattern: str
    case: str
    tight: str
    knit_these: tuple[str, ...]
    pieces: tuple[tuple[str, str], ...]
    both: str
    doubts: tuple[str, ...]
    rows: tuple[SizeRow, ...]
    best: SizeRow
    replaces: int
    working: tuple[Step, ...]


@dataclass(frozen=True, slots=True)
class WhichSizePage:
    """`found` is None until there is a gauge, a pattern with sizes, and a body."""

    plan: Plan
    stamp: str
    answer: Sentence
    form: Filled
    gauge: str
    patterns: Mapping[str, str]
    follows: Mapping[str, str]
    eases: Mapping[str, str]
    around: str
    found: SizesFound | None
    take: Mapping[By, str]


def which_size_page(
    book: Book, plan: Plan, form: Filled, found: WhichSize | None, shown: Shown
) -> WhichSizePage:
    """The page; without an answer it says what is still to be told."""
    patterns = offered_patterns(book, plan)
    pattern = book.pattern.get(form.values.get("pattern", ""))
    measure = around(pattern) if pattern else "chest"
    answer = size_sentence(found, shown) if found else _missing(plan, patterns, measure)
    return WhichSizePage(
        plan=plan,
        stamp=stamp(plan),
        answer=answer,
        form=form,
        gauge=gauge_said(plan.gauge, shown) if plan.gauge else "",
        patterns=patterns,
        follows=FOLLOWS,
        eases=EASE_WORDS,
        around=measure,
        found=_found(book, plan, found, shown) if found else None,
        take=TAKE,
    )


def _missing(plan: Plan, patterns: Mapping[str, str], measure: str) -> Sentence:
    if plan.gauge is None:
        return Sentence("idle", "Which size?", " Say first what gauge you really get.")
    if not patterns:
        return Sentence("idle", "Which size?", " Write down a pattern with its sizes first.")
    return Sentence("idle", "Which size?", f" Say what the {measure} measures.")


def _found(book: Book, plan: Plan, found: WhichSize, shown: Shown) -> SizesFound:
    rows = tuple(_row(one, one is found.best, shown) for one in found.sizes)
    return SizesFound(
        pattern_id=found.pattern.id,
        pattern=found.pattern.name,
        case=found.case,
        tight=tight_sentence(found.best, shown),
        knit_these=knit_these(found.best, shown),
        pieces=tuple(
            (f"{one.name} × {one.copies}" if one.copies > 1 else one.name, piece_said(one, shown))
            for one in found.best.pieces
        ),
        both=both_said(found.best, shown) if found.best.contradicts else "",
        doubts=doubts(found.pattern, shown),
        rows=rows,
        best=next(one for one in rows if one.best),
        replaces=len(book.parts_of.get(plan.id, [])),
        working=steps(found, shown),
    )


def _row(one: SizeAnswer, best: bool, shown: Shown) -> SizeRow:
    both: tuple[tuple[By, bool], ...] = (
        ("counts", one.counted is not None),
        ("stated", one.stated is not None),
    )
    return SizeRow(
        name=one.size.name,
        best=best,
        width=shown.size(10 * one.whole.garment_cm),
        ease=ease_said(one.whole, shown),
        tightest=tightest_said(one, shown),
        lengths=lengths_said(one, shown),
        metres=metres_said(one.yarn, shown),
        shelf=shelf_said(one.yarn, shown),
        by=tuple(by for by, there in both if there),
    )
