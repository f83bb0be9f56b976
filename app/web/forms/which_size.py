"""The question "which size?": a pattern, what is kept of it, whom it is for, and the ease."""

from collections.abc import Mapping

from app.book.book import Book
from app.book.pattern import Pattern
from app.book.plan import Plan
from app.craft.pattern_gauge import CASES, USUAL
from app.craft.sizes import EASES, Ease
from app.planning.pattern_fit import around
from app.web.forms.options import names_by_id
from app.web.forms.reader import Reader
from app.web.shown import Shown
from app.work.pattern_take import BODY, SizeAsked

FOLLOWS: dict[str, str] = {
    "stitches": "its stitches, with lengths by the tape",
    "stitches and rows": "its stitches and its rows",
    "size": "its size, counted anew for my gauge",
}
"""The three ways to follow a pattern at another gauge, the usual one first."""

WIDER, TIGHTER = "wider", "tighter"
EASE_WORDS: dict[str, str] = {
    **{one.name: one.name for one in EASES},
    WIDER: "wider than the body by …",
    TIGHTER: "tighter than the body by …",
}
USUAL_EASE = "standard"
MOST_EASE_MM = 600


def offered_patterns(book: Book, plan: Plan) -> dict[str, str]:
    """The names of the patterns at hand that have sizes, by id, and the one the plan follows."""
    return names_by_id(
        one
        for one in book.patterns
        if one.sizes and (one.put_away is None or one.id == plan.pattern_id)
    )


def asked_values(book: Book, plan: Plan, given: Mapping[str, str]) -> dict[str, str]:
    """What the form holds: what is asked, else what the plan has, else what is usual."""
    offered = offered_patterns(book, plan)
    usual = plan.pattern_id if plan.pattern_id in offered else next(iter(offered), "")
    values = {
        "pattern": usual or "",
        "follows": plan.follows or USUAL,
        "ease": USUAL_EASE,
        "ease_own": "",
        **given,
    }
    pattern = book.pattern.get(values["pattern"])
    if pattern and BODY not in values:
        mm = _person_mm(book, plan).get(around(pattern))
        values[BODY] = Shown(book.settings).field_size(mm)
    return values


def read_asked(
    values: Mapping[str, str], book: Book, plan: Plan
) -> tuple[Reader, SizeAsked | None]:
    """The question; None where a field is at fault."""
    reader = Reader(values, book.settings)
    pattern_id = reader.choice("pattern", offered_patterns(book, plan))
    case = reader.choice("follows", CASES)
    ease = _ease(reader)
    typed = reader.size(BODY, least=50, most=3_000)
    if not reader.ok or pattern_id is None or case is None or ease is None:
        return reader, None
    pattern = book.pattern[pattern_id]
    return reader, SizeAsked(pattern, case, _measures(book, plan, pattern, typed), ease)


def _ease(reader: Reader) -> Ease | float | None:
    """A chart's ease, or so many cm, below zero where the garment is to be tighter."""
    word = reader.choice("ease", EASE_WORDS)
    own = reader.size("ease_own", required=word in (WIDER, TIGHTER), most=MOST_EASE_MM)
    if word in (WIDER, TIGHTER):
        return None if own is None else own / 10 * (-1 if word == TIGHTER else 1)
    return next((one for one in EASES if one.name == word), None)


def _measures(book: Book, plan: Plan, pattern: Pattern, typed: int | None) -> dict[str, float]:
    """The wearer's measures in cm; what was typed goes before what is kept."""
    known = _person_mm(book, plan) | ({around(pattern): typed} if typed else {})
    return {name: mm / 10 for name, mm in known.items()}


def _person_mm(book: Book, plan: Plan) -> dict[str, int]:
    person = book.person.get(plan.person_id or "")
    return {one.name: one.mm for one in person.measures} if person else {}
