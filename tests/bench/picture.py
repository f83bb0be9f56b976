"""The picture of a garment of 400 rows, each in another yarn than the one before: the worst."""

from collections.abc import Iterator
from pathlib import Path
from statistics import median

from app.book.book import Book
from app.book.plan import RoleYarn
from app.book.settings import Settings
from app.book.shape import Run, Runs, Strand
from app.planning import reckon
from app.planning.picture import picture
from app.web.pages.picture import drawing
from app.web.shown import Shown
from app.web.templating import draw
from tests.bench.row import Row, timed
from tests.books import a_book, a_part, a_plan, a_promise, a_skein, a_yarn

ROWS = 400


def rows(_: Path, rounds: int) -> Iterator[Row]:
    """Milliseconds to draw it, and its bytes."""
    book = striped(ROWS)
    reckoning, shown = reckon(book), Shown(Settings())

    def drawn() -> str:
        found = drawing(picture(book, reckoning, "pullover"), shown)
        return draw("pictures/garment_file.svg", {"drawn": found})

    size = len(drawn().encode())
    took = median(timed(drawn) for _ in range(rounds))
    yield Row("picture of 400 rows in stripes", took, "ms", 50, note="pegged, laid out and drawn")
    yield Row("its size", size / 1000, "kB", 100)


def striped(count: int) -> Book:
    """A piece of so many rows, every row in another yarn than the one before."""
    runs = tuple(Run(1, 200, 200, strands=(Strand(f"colour {at % 2}"),)) for at in range(count))
    yarns = tuple(RoleYarn(f"colour {at}", "grey two-ply") for at in (0, 1))
    return a_book(
        a_yarn(),
        a_skein("G-1", colour="#111111"),
        a_skein("G-2", colour="#eeeeee"),
        a_plan(yarns=yarns),
        a_part(shape=Runs(runs), name="piece"),
        *(a_promise(f"G-{at + 1}", 800_000, id=f"p{at}", role=f"colour {at}") for at in (0, 1)),
        held={"G-1": (450, 1000), "G-2": (450, 1000)},
    )
