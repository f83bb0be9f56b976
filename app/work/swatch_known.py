"""All swatches with what they tell, and one among the others of its yarn."""

from dataclasses import dataclass

from app.book.book import Book
from app.book.swatch import Swatch
from app.book.yarn import Yarn
from app.planning.needle_line import NeedleAsked, NeedleLine, needle_asked, needle_line
from app.planning.swatches import SwatchAnswer, tell
from app.planning.yarns import Lots
from app.work.swatch_take import KnitTo, knit_to


@dataclass(frozen=True, slots=True)
class SwatchTold:
    """A swatch with its yarn and what it tells."""

    swatch: Swatch
    yarn: Yarn | None
    answer: SwatchAnswer


@dataclass(frozen=True, slots=True)
class KnownSwatch:
    """All that is known of a swatch; `asked` is the needle for the stitches that were asked for."""

    told: SwatchTold
    line: NeedleLine
    asked: NeedleAsked | None
    garments: tuple[KnitTo, ...]


def all_swatches(book: Book) -> tuple[SwatchTold, ...]:
    """Every swatch by name, with those put away."""
    lots = Lots(book)
    by_name = sorted(book.swatches, key=lambda one: (one.name.casefold(), one.id))
    return tuple(_told(one, lots) for one in by_name)


def known_swatch(book: Book, swatch: Swatch, stitches: float | None = None) -> KnownSwatch:
    """A swatch, its like, and the needle for so many stitches in 10 cm if that is asked."""
    lots = Lots(book)
    told, line = _told(swatch, lots), needle_line(swatch, lots)
    asked = needle_asked(stitches, swatch, told.answer, line, lots) if stitches else None
    return KnownSwatch(told, line, asked, knit_to(book, swatch))


def _told(swatch: Swatch, lots: Lots) -> SwatchTold:
    return SwatchTold(swatch, lots.book.yarn.get(swatch.yarn_id or ""), tell(swatch, lots))
