"""The page that tells how the skeins of a garment were divided, how well, and what was moved."""

from dataclasses import dataclass, replace

from app.book.book import Book
from app.book.code_order import in_order
from app.book.plan import Plan, Promise
from app.planning.assign import Proposal
from app.planning.assign_moved import Move
from app.planning.assign_search import Told
from app.web.pages.answer import Sentence, Tone, listed
from app.web.pages.assign_looking import Looking, asks_of, looking_for
from app.web.shown import Shown
from app.work.assign_known import Kept, proposed_to
from app.work.assign_search import Search
from app.work.reckoning import Known


@dataclass(frozen=True, slots=True)
class Given:
    """A skein in its place: how much of it, in which state, and why."""

    code: str
    url: str
    amount: str
    state: str
    why: str


@dataclass(frozen=True, slots=True)
class PartGiven:
    """A part with its skeins in the order of knitting."""

    name: str
    skeins: tuple[Given, ...]


@dataclass(frozen=True, slots=True)
class AssignPage:
    """`answer` says how good the proposal is; `asks` what it asks of the knitter; `moves` what it
    moved of the one before; `looking` is None where nothing was looked for."""

    plan: Plan
    answer: Sentence
    asks: tuple[str, ...]
    odds: str
    parts: tuple[PartGiven, ...]
    moves: tuple[str, ...]
    proposed: bool
    may_look: bool
    looking: Looking | None


def assign_page(
    known: Known,
    shown: Shown,
    plan_id: str,
    kept: Kept | None,
    search: Search | None,
    better: Told | None,
) -> AssignPage:
    """The page of a plan's division; KeyError for a plan that is gone."""
    book, plan = known.book, known.book.plan[plan_id]
    proposed = proposed_to(book, plan_id)
    proposal = _proven(kept.proposal, search) if kept else None
    return AssignPage(
        plan=plan,
        answer=_answer(proposal, bool(proposed)),
        asks=asks_of(proposal.tally, shown) if proposal else (),
        odds=shown.odds(known.reckoning.plan(plan_id).odds),
        parts=_parts(book, plan_id, shown),
        moves=tuple(_moved(one, shown) for one in kept.moves) if kept else (),
        proposed=bool(proposed),
        may_look=bool(proposal and not proposal.best_possible and not (search and search.going_on)),
        looking=looking_for(search, proposal, better, shown) if search else None,
    )


def _proven(proposal: Proposal, search: Search | None) -> Proposal:
    """The proposal with what a search has proven of it since."""
    told = search.told if search else None
    if told is None or told.share != proposal.share or told.problem != proposal.problem:
        return proposal
    bound = min(proposal.value, max(proposal.bound, told.solved.bound))
    return replace(proposal, solved=replace(proposal.solved, bound=bound))


def _answer(proposal: Proposal | None, proposed: bool) -> Sentence:
    if proposal is None:
        rest = " what you kept or put there yourself stays where it is."
        if proposed:
            return Sentence("idle", "Changed since it was proposed:", rest)
        return Sentence("idle", "Nothing is proposed now:", rest)
    rest = ", in whole metres, as sure as you asked, with only such yarns mixed as look alike."
    said = proposal.in_words
    tone: Tone = "enough" if proposal.best_possible else "short"
    return Sentence(tone, f"{said[:1].upper()}{said[1:]}", rest)


def _parts(book: Book, plan_id: str, shown: Shown) -> tuple[PartGiven, ...]:
    promises = book.promises_of.get(plan_id, [])
    return tuple(
        PartGiven(part.name, tuple(_given(one, book, shown) for one in _in_turn(own, book)))
        for part in book.parts_of.get(plan_id, [])
        if (own := [one for one in promises if one.part_id == part.id])
    )


def _in_turn(promises: list[Promise], book: Book) -> list[Promise]:
    def turn(one: Promise) -> tuple[str, int, object]:
        return one.role, one.position, in_order(book.holding[one.holding_id].code)

    return sorted(promises, key=turn)


def _given(promise: Promise, book: Book, shown: Shown) -> Given:
    amount = shown.length(promise.mm / 1000)
    role = "" if promise.role == "main" else f" as {promise.role}"
    holding = book.holding[promise.holding_id]
    url = f"/skeins/{holding.id}"
    return Given(holding.code, url, f"{amount}{role}", promise.state, promise.why)


def _moved(move: Move, shown: Shown) -> str:
    was, now = listed(list(move.was)), listed(list(move.now))
    amount = shown.length(move.m)
    match move.kind:
        case "moved":
            done = f"from {was} to {now}"
        case "put":
            done = f"now {amount} of it to {now}"
        case "taken off":
            done = f"no longer with {was}"
        case "changed":
            done = f"now {amount} of it with {now}"
    return f"{move.code}: {done}. Why: {move.why}."
