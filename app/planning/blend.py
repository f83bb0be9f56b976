"""What a skein or a garment is made of, carried through from the wool it came of."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from math import fsum

from app.book.book import Book
from app.book.spinning import FibreShare
from app.craft.care import care
from app.craft.fibres import UNKNOWN, known_regains, label, regain_of_shares
from app.craft.figure import Figure
from app.craft.moisture import dry_shares
from app.craft.working import Step
from app.planning.trace import Trace


@dataclass(frozen=True, slots=True)
class MadeOf:
    """Fibres by their shares of the mass, as a label gives them; `regain` (share of the dry mass)
    is wide where some is not known; `care` tells how it is washed."""

    shares: Mapping[str, float]
    label: str
    regain: Figure
    care: tuple[str, ...]
    working: tuple[Step, ...]


def made_of(shares: Mapping[str, float], combed: bool = False) -> MadeOf | None:
    """What follows from the shares of fibres; None where there is nothing."""
    whole = fsum(shares.values())
    if whole <= 0:
        return None
    even = {fibre: part / whole for fibre, part in shares.items() if part > 0}
    regain = regain_of_shares(even, combed)
    named = [one for one in even if one != UNKNOWN]
    return MadeOf(even, label(even), regain, care(named), (_working(even, regain, combed),))


def fibres_of(book: Book, traced: Trace, holding_id: str) -> dict[str, float]:
    """The shares of the fibres in a holding, summing to 1; empty for one that never held any."""
    origins = traced.origins(holding_id)
    return _mixed((fibres_in(book, origin), share) for origin, share in origins.items())


def fibres_together(book: Book, traced: Trace, mg: Mapping[str, float]) -> dict[str, float]:
    """The shares of the fibres in so many mg of each of some holdings together."""
    whole = fsum(mg.values())
    if whole <= 0:
        return {}
    return _mixed((fibres_of(book, traced, one), part / whole) for one, part in mg.items())


def fibres_in(book: Book, origin: str) -> dict[str, float]:
    """What came in is made of by its record: the fleece's or bought yarn's blend, else its one
    fibre, else unknown."""
    holding = book.holding.get(origin)
    fleece = book.fleece.get(holding.fleece_id or "") if holding else None
    yarn = book.yarn.get(holding.yarn_id or "") if holding else None
    # A skein that came in finished may be of a blend, whatever fleece is named for it.
    record = yarn if yarn and (yarn.blend or not fleece) else fleece
    if record is None:
        return {UNKNOWN: 1.0}
    return blend_shares(record.blend) or {record.fibre.strip().lower() or UNKNOWN: 1.0}


def blend_shares(blend: Iterable[FibreShare]) -> dict[str, float]:
    """A blend as shares that sum to 1; what its percents leave open is unknown."""
    shares: dict[str, float] = {}
    for one in blend:
        fibre = one.fibre.strip().lower() or UNKNOWN
        shares[fibre] = shares.get(fibre, 0.0) + one.pct
    if not shares:
        return {}
    missing = 100.0 - fsum(shares.values())
    if missing > 0:
        shares[UNKNOWN] = shares.get(UNKNOWN, 0.0) + missing
    whole = fsum(shares.values())
    return {fibre: pct / whole for fibre, pct in shares.items()}


def blend_of(shares: Mapping[str, float]) -> tuple[FibreShare, ...]:
    """Shares as a record keeps them, the most first; none for a single fibre."""
    if len(shares) < 2:
        return ()
    order = sorted(shares, key=lambda one: (-shares[one], one))
    return tuple(FibreShare(one, round(100 * shares[one], 2)) for one in order)


def _mixed(parts: Iterable[tuple[Mapping[str, float], float]]) -> dict[str, float]:
    found: dict[str, float] = {}
    for shares, part in parts:
        for fibre, share in shares.items():
            found[fibre] = found.get(fibre, 0.0) + share * part
    return found


def _working(shares: Mapping[str, float], regain: Figure, combed: bool) -> Step:
    known = known_regains(shares, combed)
    dry = dry_shares(shares, {one: known.get(one, regain.value) for one in shares})
    parts = [
        f"{100 * part:.1f} % {fibre} of the dry mass"
        + (f" × {100 * known[fibre]:g} %" if fibre in known else ", its water not known")
        for fibre, part in dry.items()
    ]
    source = "shares by weight in the wool book; allowances of EU 1007/2011, Annex IX"
    return Step("Agreed water", " + ".join(parts), 100 * regain.value, "%", 100 * regain.u, source)
