"""What a way out is: proposals found in a book, each with its words, its effort and its records."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from typing import Literal

from app.planning.ways_out.situation import Situation
from app.planning.what_if import WhatIf

AmountKind = Literal["yarn", "wool", "size", "hours", "needle", "count"]
"""Metres of yarn, grams of wool, mm of fabric or body, hours, mm of a needle, a bare number."""


@dataclass(frozen=True, slots=True)
class Amount:
    """A number of a sentence that is shown in the maker's units."""

    value: float
    kind: AmountKind


@dataclass(frozen=True, slots=True)
class Said:
    """A sentence with a `{}` for each of its amounts."""

    text: str
    amounts: tuple[Amount, ...] = ()


@dataclass(frozen=True, slots=True)
class Effort:
    """What a way out costs: `evenings` of work, or what giving something up is held to be worth
    in evenings (assumed: only to put the ways in order), and the same in words."""

    evenings: float
    said: Said


@dataclass(frozen=True, slots=True)
class Proposal:
    """One way out. `key` names it within its plan and begins with the word of its way.

    `change` is what taking it changes; `seen` what has changed once it is carried through, which
    is more where something is still to be spun. `about` is the plan it is then about, another one
    where another garment is knit. `listed` tells that the work list says so already.
    """

    key: str
    title: Said
    effort: Effort
    change: WhatIf
    seen: WhatIf
    about: str
    notes: tuple[Said, ...] = ()
    listed: bool = False


@dataclass(frozen=True, slots=True)
class Way:
    """A way out by its word, and how it is found: none, one or several proposals. `at_once` needs
    nothing but what lies free on the shelf: where that is enough, no other way is looked for."""

    word: str
    find: Callable[[Situation], Iterable[Proposal]]
    at_once: bool = False


def simple(
    situation: Situation,
    key: str,
    title: Said,
    effort: Effort,
    change: WhatIf,
    notes: tuple[Said, ...] = (),
) -> Proposal:
    """A proposal that is carried through as soon as it is taken."""
    return Proposal(key, title, effort, change, change, situation.plan_id, notes)
