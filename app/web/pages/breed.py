"""What is printed of breeds, in words, with its standing and sources."""

from dataclasses import dataclass

from app.book.fleece import Fleece
from app.craft.breeds import Range, typical_micron, typical_staple, typical_yield
from app.web.shown import THIN, Shown


@dataclass(frozen=True, slots=True)
class Told:
    """What is printed of a breed, each empty where all sources are silent."""

    breed: str
    yield_: str
    fineness: str
    staple: str


def told_of(breed: str, shown: Shown) -> Told:
    """What sources together say of a breed."""
    typical, micron, staple = typical_yield(breed), typical_micron(breed), typical_staple(breed)
    printed = f"printed of {breed}"
    figure = typical.figure
    amount = f"{shown.number(figure.value, 1, least=0)} ± {shown.percent(figure.u, 1)}"
    sources = "; ".join(typical.sources)
    return Told(
        breed=breed,
        yield_=f"{amount}, {printed} ({typical.standing}: {sources})" if sources else "",
        fineness=f"{_range(micron, shown)}{THIN}µm, {printed}" if micron else "",
        staple=f"{_sizes(staple, shown)}, {printed}" if staple else "",
    )


def yield_told(fleece: Fleece, shown: Shown) -> str:
    """The yield that is reckoned with, and where it comes from."""
    if fleece.yield_pct is not None:
        return f"{shown.percent(fleece.yield_pct, 1)}, your own"
    told = told_of(fleece.breed, shown).yield_
    if told:
        return told
    figure = typical_yield(fleece.breed).figure
    amount = f"{shown.number(figure.value, 1, least=0)} ± {shown.percent(figure.u, 1)}"
    return f"{amount}, assumed: no yield is printed of this breed"


def _range(ends: Range, shown: Shown) -> str:
    low, high = (shown.number(end, 1, least=0) for end in ends)
    return low if low == high else f"{low} to {high}"


def _sizes(ends: Range, shown: Shown) -> str:
    low, high = (shown.size(end) for end in ends)
    return low if low == high else f"{low.split(THIN)[0]} to {high}"
