"""A fleece, a bag of fibre or a bought top: where wool begins. Its grams lie in the wool book."""

from dataclasses import dataclass

from app.book.spinning import FibreShare


@dataclass(frozen=True, slots=True)
class Fleece:
    """What is known of a fleece besides its weight; weight and state belong to its holding.

    `yield_pct` is the maker's own scoured weight per skirted weight, in percent;
    `staple_mm` in millimetres, `micron` in micrometres; `colour` is "#rrggbb" or empty;
    `blend` is what it is made of, empty where all of it is `fibre`.
    """

    id: str
    name: str
    breed: str = ""
    fibre: str = "wool"
    yield_pct: float | None = None
    micron: float | None = None
    staple_mm: int | None = None
    colour: str = ""
    colour_name: str = ""
    source: str = ""
    notes: str = ""
    blend: tuple[FibreShare, ...] = ()
