"""Six yarns taking turns over 2,000 rows that are no two alike, every share changing."""

from collections.abc import Iterator
from pathlib import Path

from app.craft.alternate import alternate, ramp
from tests.bench.row import Row, interleaved

ROWS = 2000


def rows(_: Path, rounds: int) -> Iterator[Row]:
    """Milliseconds to say which yarn knits which row."""
    blocks = [100 + at % 37 for at in range(ROWS)]
    shares = ramp([1, 2, 3, 4, 5, 6], [6, 5, 4, 3, 2, 1], ROWS)
    (took,) = interleaved(rounds, 3, lambda: alternate(blocks, shares))
    yield Row("2,000 rows in six yarns in turn", took, "ms", 50)
