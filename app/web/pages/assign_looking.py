"""What a search for a better division says of itself, and what it asks of the knitter."""

from dataclasses import dataclass

from app.planning.assign import Proposal
from app.planning.assign_search import DEEP, Told
from app.planning.solve.problem import Tally
from app.web.shown import Shown
from app.work.assign_search import Search

ASKS = (
    ("joins", "change of skein inside a part", "changes of skein inside a part"),
    ("cuts", "skein that goes on into another part", "times a skein goes on into another part"),
    ("scraps", "left-over too short to use", "left-overs too short to use"),
)


@dataclass(frozen=True, slots=True)
class Looking:
    """A search: whether it goes on, how much of it is done, what it says, and what it offers."""

    going_on: bool
    done_pct: int
    said: str
    better: str


def asks_of(tally: Tally, shown: Shown) -> tuple[str, ...]:
    """What a division asks of the knitter, line by line."""
    counts = [(getattr(tally, name), one, many) for name, one, many in ASKS]
    found = [f"{shown.number(n)} {one if n == 1 else many}" for n, one, many in counts]
    made = shown.short_length(tally.to_make) if tally.to_make else "nothing"
    return (*found, f"{made} still to be made")


def looking_for(
    search: Search, proposal: Proposal | None, better: Told | None, shown: Shown
) -> Looking:
    """A search as the page shows it; `better` is what it offers."""
    told = search.told
    if told is None:
        said = "The first division is being worked out." if search.going_on else "It was stopped."
        return Looking(search.going_on, 0, said, "")
    work = told.solved.work
    done = 100 if told.done else min(99, round(100 * work.nodes / DEEP.nodes))
    parts = (
        f"{shown.number(work.groups)} groups of skeins weighed,",
        f"{shown.number(work.nodes)} of at most {shown.number(DEEP.nodes)} branches followed.",
        _outcome(search, told, better),
    )
    said = " ".join(parts).strip()
    return Looking(search.going_on, done, said, _offered(proposal, better, shown))


def _outcome(search: Search, told: Told, better: Told | None) -> str:
    if told.solved.best_possible:
        return "It is proven that nothing costs less."
    return "" if search.going_on or better else "Nothing better was found."


def _offered(proposal: Proposal | None, better: Told | None, shown: Shown) -> str:
    """What a better division asks of the knitter; empty where there is none."""
    if better is None:
        return ""
    what = "A better division was found" if proposal else "A division is ready"
    return f"{what}: {', '.join(asks_of(better.solved.tally, shown))}."
