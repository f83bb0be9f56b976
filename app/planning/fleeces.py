"""What each fleece can still become, from its state, the maker's own yield or the breed's."""

from math import exp

from app.book.book import Book
from app.book.fleece import Fleece
from app.book.holding import Holding
from app.book.settings import Settings, StepLosses
from app.book.weighed_as import weighed_as
from app.book.words import FIBRE_KINDS
from app.craft.breeds import typical_yield
from app.craft.figure import Figure, total
from app.craft.fleece import Losses, Making, prepared_from, share_kept, yarn_from
from app.craft.working import Step
from app.planning.learning import Learnt, learn
from app.planning.learning.in_force import InForce, learned_from, lost_in
from app.planning.learning.observed import Names
from app.planning.learning.steps_seen import PREPARED

NOTHING = learn(Book())
"""What is learned of a maker who has measured nothing."""

OWN_YIELD_U = 0.03
"""Standard uncertainty of the maker's own yield of a fleece, as a share (practice)."""


def wool_of(book: Book) -> dict[str, list[Holding]]:
    """The holdings of fibre on the shelf, by fleece."""
    found: dict[str, list[Holding]] = {}
    for holding in book.holdings:
        if holding.kind in FIBRE_KINDS and holding.fleece_id and holding.put_away is None:
            found.setdefault(holding.fleece_id, []).append(holding)
    return found


def losses_for(
    state: str, steps: StepLosses, learnt: Learnt = NOTHING, fleece: Fleece | None = None
) -> Losses:
    """The shares lost on one way of preparing, combed or carded, that are in force: the settings'
    where she changed them, else what was learned of the maker and the fleece, else practice."""
    found = losses_in_force(state, steps, learnt, fleece)
    prepare, skirt = found["comb" if state == "combed" else "card"], found["skirt"]
    spin, finish = found["spin"], found["finish"]
    u: dict[Making, float] = {
        "skirt": skirt.u,
        "prepare": prepare.u,
        "spin": spin.u,
        "finish": finish.u,
    }
    return Losses(skirt.lost, prepare.lost, spin.lost, finish.lost, u)


def losses_in_force(
    state: str, steps: StepLosses, learnt: Learnt = NOTHING, fleece: Fleece | None = None
) -> dict[str, InForce]:
    """The same by the names of their factors, each with the reason why it is reckoned with."""
    prepared = "combed" if state == "combed" else "carded"
    names = Names(fleece.breed, fleece.id, prepared) if fleece else Names(preparation=prepared)
    factors = ("skirt", PREPARED[prepared], "spin", "finish")
    settings = Settings(steps=steps)
    return {one: lost_in(one, settings, learnt, names) for one in factors}


def fleece_yield(fleece: Fleece, learnt: Learnt = NOTHING) -> tuple[Figure, Step]:
    """Scoured per skirted mass as a share: as she wrote it down herself, else as learned from what
    was washed, else what is printed of the breed."""
    what = "Yield, scoured from skirted"
    if fleece.yield_pct is not None:
        own = Figure(fleece.yield_pct / 100, "share", {f"yield of {fleece.name}": OWN_YIELD_U})
        u = 100 * OWN_YIELD_U
        return own, Step(what, "your own yield", fleece.yield_pct, "%", u, "", "measured")
    typical = typical_yield(fleece.breed)
    how = f"printed of {fleece.breed}" if typical.sources else "breed not in the table"
    percent, source = typical.figure, "; ".join(typical.sources)
    if learnt.seen("scour"):
        times = learnt.times("scour", Names(fleece.breed, fleece.id))
        value = min(100.0, percent.value * exp(times.mean))
        how = f"{learned_from(learnt.seen('scour'))}; before: {percent.value:.0f} %, {how}"
        percent = Figure(value, "%", {f"yield of {fleece.name}": value * times.sd})
        return percent.scaled(0.01, "share"), Step(
            what, how, value, "%", percent.u, source, "measured"
        )
    step = Step(what, how, percent.value, "%", percent.u, source, typical.standing)
    return percent.scaled(0.01, "share"), step


def wool_g(book: Book, holdings: list[Holding]) -> float:
    """Grams in those holdings, by the wool book."""
    return sum(book.balances[one.id].mg for one in holdings if one.id in book.balances) / 1000


def becomes(
    book: Book, fleece: Fleece, holdings: list[Holding], learnt: Learnt = NOTHING
) -> tuple[Figure, Figure, tuple[Step, ...]]:
    """Grams of prepared fibre and of finished yarn a fleece's wool becomes, with the working."""
    share, yield_step = fleece_yield(fleece, learnt)
    prepared, yarn, steps = [], [], [yield_step]
    losses_used: dict[str, InForce] = {}
    for holding in holdings:
        now = Figure(wool_g(book, [holding]), "g")
        state = weighed_as(book, holding) or "carded"
        losses = losses_for(state, book.settings.steps, learnt, fleece)
        losses_used |= losses_in_force(state, book.settings.steps, learnt, fleece)
        prepared.append(prepared_from(now, state, share, losses))
        yarn.append(yarn_from(now, state, share, losses))
        kept = share_kept(state, share, losses)
        how = f"{now.value:.0f} g {state} × {kept.value:.3f} kept from there to finished yarn"
        source = "mass is conserved but for the losses named below"
        steps.append(Step("Yarn it becomes", how, yarn[-1].value, "g", yarn[-1].u, source))
    steps += [one.step for one in losses_used.values()]
    return total(prepared, "g"), total(yarn, "g"), tuple(steps)


def metres_at(yarn_g: Figure, tex: float) -> Figure:
    """Metres of finished yarn from grams of it at a linear density in tex above zero."""
    return yarn_g.scaled(1000 / tex, "m")
