"""What each fleece can still become, from its state, the maker's own yield or the breed's."""

from app.book.book import Book
from app.book.fleece import Fleece
from app.book.holding import Holding
from app.book.settings import StepLosses
from app.book.weighed_as import weighed_as
from app.book.words import FIBRE_KINDS
from app.craft.breeds import typical_yield
from app.craft.figure import Figure, total
from app.craft.fleece import Losses, prepared_from, share_kept, yarn_from
from app.craft.working import Step

OWN_YIELD_U = 0.03
"""Standard uncertainty of the maker's own yield of a fleece, as a share (practice)."""


def wool_of(book: Book) -> dict[str, list[Holding]]:
    """The holdings of fibre on the shelf, by fleece."""
    found: dict[str, list[Holding]] = {}
    for holding in book.holdings:
        if holding.kind in FIBRE_KINDS and holding.fleece_id and holding.put_away is None:
            found.setdefault(holding.fleece_id, []).append(holding)
    return found


def losses_for(state: str, steps: StepLosses) -> Losses:
    """The settings' losses in percent as the shares of one way of preparing: combed or carded."""
    prepare = steps.combed if state == "combed" else steps.carded
    return Losses(steps.skirt / 100, prepare / 100, steps.spin / 100, steps.finish / 100)


def fleece_yield(fleece: Fleece) -> tuple[Figure, Step]:
    """Scoured per skirted mass as a share: her own, else what is printed of the breed."""
    what = "Yield, scoured from skirted"
    if fleece.yield_pct is not None:
        own = Figure(fleece.yield_pct / 100, "share", {f"yield of {fleece.name}": OWN_YIELD_U})
        u = 100 * OWN_YIELD_U
        return own, Step(what, "your own yield", fleece.yield_pct, "%", u, "", "measured")
    typical = typical_yield(fleece.breed)
    how = f"printed of {fleece.breed}" if typical.sources else "breed not in the table"
    percent, source = typical.figure, "; ".join(typical.sources)
    step = Step(what, how, percent.value, "%", percent.u, source, typical.standing)
    return percent.scaled(0.01, "share"), step


def wool_g(book: Book, holdings: list[Holding]) -> float:
    """Grams in those holdings, by the wool book."""
    return sum(book.balances[one.id].mg for one in holdings if one.id in book.balances) / 1000


def becomes(
    book: Book, fleece: Fleece, holdings: list[Holding]
) -> tuple[Figure, Figure, tuple[Step, ...]]:
    """Grams of prepared fibre and of finished yarn a fleece's wool becomes, with the working."""
    share, yield_step = fleece_yield(fleece)
    prepared, yarn, steps = [], [], [yield_step]
    for holding in holdings:
        now = Figure(wool_g(book, [holding]), "g")
        state = weighed_as(book, holding) or "carded"
        losses = losses_for(state, book.settings.steps)
        prepared.append(prepared_from(now, state, share, losses))
        yarn.append(yarn_from(now, state, share, losses))
        kept = share_kept(state, share, losses)
        how = f"{now.value:.0f} g {state} × {kept.value:.3f} kept from there to finished yarn"
        source = "mass is conserved but for the losses named in the settings"
        steps.append(Step("Yarn it becomes", how, yarn[-1].value, "g", yarn[-1].u, source))
    return total(prepared, "g"), total(yarn, "g"), tuple(steps)


def metres_at(yarn_g: Figure, tex: float) -> Figure:
    """Metres of finished yarn from grams of it at a linear density in tex above zero."""
    return yarn_g.scaled(1000 / tex, "m")
