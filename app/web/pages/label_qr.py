"""A QR code (ISO/IEC 18004) as one path of an SVG, with its quiet zone."""

from dataclasses import dataclass
from itertools import groupby

QUIET = 4
"""Light modules around it, as the standard asks."""

MASK = 2
"""The pattern laid over every code. Trying all eight takes five times as long; of addresses like
ours this is the one that most often comes out best, and any of them is read."""

CORRECTION = "m"
"""A seventh of the code may be soiled or torn."""


@dataclass(frozen=True, slots=True)
class QrPath:
    """`size` modules each way with the quiet zone; `d` is a path to be stroked one module wide."""

    size: int
    d: str


def qr_path(text: str) -> QrPath:
    """The code of a text; segno's DataOverflowError, a ValueError, beyond 2,331 bytes."""
    import segno

    code = segno.make(text, micro=False, error=CORRECTION, mask=MASK, boost_error=False)
    lines = (_line(y + QUIET, row) for y, row in enumerate(code.matrix))
    return QrPath(len(code.matrix) + 2 * QUIET, "".join(lines))


def _line(y: int, row: bytearray) -> str:
    """The dark runs of a row."""
    drawn, x = [], QUIET
    for dark, run in groupby(row):
        length = sum(1 for _ in run)
        if dark:
            drawn.append(f"M{x} {y}.5h{length}")
        x += length
    return "".join(drawn)
