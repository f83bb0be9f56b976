"""The page on which yarns are asked to take turns in a part, and shown what comes of it."""

from collections.abc import Mapping
from dataclasses import dataclass

from app.book.book import Book
from app.book.plan import Part, Plan
from app.planning import reckon
from app.planning.changes import effect
from app.planning.picture import picture
from app.planning.places import in_round
from app.planning.sequence import Asked, Turns
from app.planning.what_if import WhatIf
from app.web.forms.filled import Filled
from app.web.forms.options import with_none
from app.web.forms.sequence import KIND_WORDS
from app.web.pages.answer import Sentence
from app.web.pages.effect import effect_sentence
from app.web.pages.picture import drawing
from app.web.pages.picture_ink import Drawing
from app.web.pages.sequence_rows import Stretch, rows_shown, stretches
from app.web.pages.sequence_said import NOTHING_ASKED, said
from app.web.shown import Shown
from app.work.reckoning import Known

SPIRAL = (
    "Each yarn works a round of its own and stops where the next one waits: begin the second so "
    "many stitches after the first that they share the round evenly. They follow each other, and "
    "no step shows at the beginning of the round."
)
CARRY = (
    "Carry the resting yarn up the edge, crossed with the working one where a new {noun} begins, "
    "and do not draw it tight."
)


@dataclass(frozen=True, slots=True)
class YarnLine:
    """A yarn in its turns, in words and figures in m."""

    name: str
    colour: str
    rows: int
    m: float
    left_m: float
    reserve_m: float
    last_row: int
    stray: float


@dataclass(frozen=True, slots=True)
class PartTold:
    """The text to knit one part from."""

    name: str
    stretches: tuple[Stretch, ...]


@dataclass(frozen=True, slots=True)
class Found:
    """What comes of it: the yarns, the text of each part, how it is worked, what it does to the
    garment, and its picture."""

    yarns: tuple[YarnLine, ...]
    parts: tuple[PartTold, ...]
    how: str
    does: str
    drawn: Drawing


@dataclass(frozen=True, slots=True)
class SequencePage:
    """`later` are the parts it could go on over; `kept` tells that the part has a sequence."""

    plan: Plan
    part: Part
    form: Filled
    answer: Sentence
    found: Found | None
    kinds: Mapping[str, str]
    yarns: Mapping[str, str]
    later: Mapping[str, str]
    noun: str
    kept: bool


def sequence_page(
    known: Known,
    part: Part,
    form: Filled,
    yarns: Mapping[str, str],
    later: Mapping[str, str],
    shown: Shown,
    asked: Asked | None = None,
    turns: Turns | None = None,
) -> SequencePage:
    """The page of one part; with `turns` what was asked has an answer."""
    noun = noun_of(part)
    answer = NOTHING_ASKED
    if form.errors:
        answer = Sentence("short", "Not so yet:", " look at the fields below.")
    if turns and asked:
        answer = said(turns, asked, noun, known.book, shown)
    return SequencePage(
        plan=known.book.plan[part.plan_id],
        part=part,
        form=form,
        answer=answer,
        found=_found(known, turns, noun, shown) if turns else None,
        kinds=KIND_WORDS,
        yarns=with_none("none", yarns),
        later=later,
        noun=noun,
        kept=part.sequence is not None,
    )


def noun_of(part: Part) -> str:
    """What is counted in a part: rounds or rows."""
    return "round" if in_round(part) else "row"


def _found(known: Known, turns: Turns, noun: str, shown: Shown) -> Found:
    plan_id = turns.parts[0].plan_id
    changed = WhatIf(put=turns.parts).in_book(known.book)
    after = reckon(changed)
    seen = picture(changed, after, plan_id)
    does = effect(known.book, known.reckoning, changed, after, plan_id)
    spiral = any(one.spiral for _, one in turns.knit if one)
    return Found(
        yarns=yarn_lines(turns, known.book),
        parts=tuple(
            PartTold(one.name, stretches(rows_shown(seen, one.id), noun_of(one)))
            for one in turns.parts
        ),
        how=SPIRAL if spiral else CARRY.format(noun=noun),
        does=effect_sentence(does, shown),
        drawn=drawing(seen, shown),
    )


def yarn_lines(turns: Turns, book: Book) -> tuple[YarnLine, ...]:
    """The yarns of an answer, for a table."""
    return tuple(
        YarnLine(
            name=book.yarn[one.yarn_id].name,
            colour=book.yarn[one.yarn_id].colour,
            rows=one.rows,
            m=one.m,
            left_m=one.left_m,
            reserve_m=one.supply.reserve_m,
            last_row=one.last_row,
            stray=one.stray,
        )
        for one in turns.yarns
    )
