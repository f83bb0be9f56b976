"""Fade into a second yarn, so that the first lasts to where it is to end."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from app.book.book import Book
from app.book.plan import Part
from app.planning.answers import PlanAnswer, Reckoning, ShelfLine
from app.planning.places import in_round
from app.planning.reckoning import reckon
from app.planning.sequence import Asked, AskedYarn, Turns, take_turns
from app.planning.sequence_refused import Refused
from app.planning.ways_out.other_yarn import most_like
from app.planning.ways_out.situation import Situation, filled
from app.planning.ways_out.way import Amount, Effort, Proposal, Said, Way, simple
from app.planning.what_if import WhatIf, between

EVENINGS = 0.5
"""A swatch of the two side by side, and two balls to mind (assumed)."""

SPARE = 1.1
"""What is free of the second yarn must be more than is missing, by this much (practice)."""

TRIES = 4
"""Each fade is short of less than the one before."""

PARTS = 4
"""Parts tried, the last to be knit first."""


@dataclass(frozen=True, slots=True)
class _Tried:
    """A fade in a part, what it changes and the answer after it."""

    part: Part
    turns: Turns
    change: WhatIf
    after: PlanAnswer


def find(situation: Situation) -> Iterator[Proposal]:
    """One proposal: the last part in which a fade is enough, else where it gains the most."""
    tried = [one for part in _parts(situation)[:PARTS] for one in _in_part(situation, part)]
    enough = [one for one in tried if one.after.enough]
    best = enough[0] if enough else max(tried, key=lambda one: one.after.odds, default=None)
    if best:
        yield _proposal(situation, best)


def _parts(situation: Situation) -> list[Part]:
    """Parts knit in one yarn, which is short, and not begun; the last first."""
    return [
        part
        for part in reversed(situation.parts)
        if situation.short_of(part)
        and not situation.begun(part)
        and part.sequence is None
        and [one.role for one in situation.needs[part.id].roles] == ["main"]
    ]


def _in_part(situation: Situation, part: Part) -> Iterator[_Tried]:
    """The fades of a part, each with more of the first yarn kept back, up to one that is enough:
    what the whole garment is unsure of falls upon the part that is knit last."""
    own = situation.needs[part.id].roles[0].yarn_id
    lacking = sum(one.to_make_m for one in situation.short_groups if part.id in one.part_ids)
    second = most_like(situation, [part], SPARE * lacking)
    if own is None or second is None:
        return
    asked = Asked("fade", (AskedYarn(own), AskedYarn(second)))
    book, share = _others_served(situation, part), 1.0
    reckoning = reckon(book)
    for _ in range(TRIES):
        try:
            seen = _with_share(situation, reckoning, own, share)
            turns = take_turns(book, seen, situation.plan, (part.id,), asked)
        except Refused:
            return
        faded = WhatIf(put=turns.parts).in_book(book)
        change = between(situation.book, filled(faded, situation.plan_id))
        yield (one := _Tried(part, turns, change, situation.after(change)))
        short = sum(group.short_m for group in one.after.groups if group.yarn_id == own)
        if not short:
            return
        share *= max(0.0, 1 - short / turns.yarns[0].supply.there_m)


def _with_share(
    situation: Situation, reckoning: Reckoning, yarn_id: str, share: float
) -> Reckoning:
    """The shelf as the fade is to see it: only a share of what the plan could have of a yarn."""
    mine = {one.id for one in situation.lots.skeins.get(yarn_id, [])}
    lines = {
        key: _less(line, situation.plan_id, share) if key in mine else line
        for key, line in reckoning.shelf.items()
    }
    return replace(reckoning, shelf=lines)


def _less(line: ShelfLine, plan_id: str, share: float) -> ShelfLine:
    held = tuple(
        replace(one, m=one.m * share) if (one.plan_id, one.part_id) == (plan_id, None) else one
        for one in line.promised_to
    )
    return replace(line, free_m=line.free_m * share, promised_to=held)


def _others_served(situation: Situation, part: Part) -> Book:
    """The book in which all other parts have what they need of the yarn, as far as it goes, and
    this one has what is left."""
    book = situation.book
    without = replace(
        book,
        parts=tuple(one for one in book.parts if one.id != part.id),
        promises=tuple(one for one in book.promises if one.part_id != part.id),
    )
    served = filled(without, situation.plan_id)
    return replace(served, parts=(*served.parts, part))


def _proposal(situation: Situation, one: _Tried) -> Proposal:
    part, turns = one.part, one.turns
    leaves, comes = turns.yarns[0], turns.yarns[-1]
    names = [situation.book.yarn[one.yarn_id].name for one in (leaves, comes)]
    title = Said(f"Fade the {part.name.lower()} from {names[0]} into {names[1]}")
    noun = "round" if in_round(part) else "row"
    note = Said(
        f"{names[0]} ends with {noun} {{}}; {{}} of {names[1]} go in",
        (Amount(leaves.last_row, "count"), Amount(comes.m, "yarn")),
    )
    effort = Effort(EVENINGS, Said("two yarns to mind in it, and a swatch of both"))
    return simple(situation, f"fade-{part.id}", title, effort, one.change, (note,))


WAY = Way("fade", find)
