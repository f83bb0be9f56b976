"""The fleece as a funnel: each stage a band as wide as its grams, tapering to the next."""

from collections.abc import Sequence
from dataclasses import dataclass

from app.planning.funnel import Stage
from app.web.shown import Shown

WIDE = 200.0
"""Width of the heaviest stage, in units of the picture."""

MIDDLE = 255.0
BAND, TAPER = 14.0, 20.0
"""Height of a stage and of the taper to the next."""

USUAL_COLOUR = "#b8a88f"


@dataclass(frozen=True, slots=True)
class Band:
    """A stage as drawn: corners of its band and of the taper below it, and its words."""

    band: str
    taper: str
    text_y: float
    name: str
    grams: str
    lost: str


@dataclass(frozen=True, slots=True)
class Funnel:
    """The whole picture, its height, and the same in words."""

    bands: tuple[Band, ...]
    height: float
    colour: str
    words: str


def funnel_picture(stages: Sequence[Stage], colour: str, shown: Shown) -> Funnel:
    """The picture of the stages still ahead, the heaviest drawn WIDE."""
    most = max((one.g for one in stages), default=0.0) or 1.0
    widths = [WIDE * one.g / most for one in stages]
    bands = tuple(
        _band(place, one, widths[place : place + 2], shown) for place, one in enumerate(stages)
    )
    return Funnel(
        bands=bands,
        height=len(stages) * (BAND + TAPER) - TAPER + 2,
        colour=colour or USUAL_COLOUR,
        words="; ".join(f"{one.name} {one.grams}{one.lost and ', ' + one.lost}" for one in bands),
    )


def _band(place: int, stage: Stage, widths: list[float], shown: Shown) -> Band:
    top = 1 + place * (BAND + TAPER)
    below = top + BAND
    return Band(
        band=_corners(top, widths[0], below, widths[0]),
        taper=_corners(below, widths[0], below + TAPER, widths[1]) if len(widths) > 1 else "",
        text_y=top + BAND - 3,
        name=stage.name,
        grams=shown.mass(stage.g),
        lost=f"{shown.mass(stage.lost_g)} lost" if stage.lost_g > 0 else "",
    )


def _corners(top: float, width: float, bottom: float, width_below: float) -> str:
    points = (
        (MIDDLE - width / 2, top),
        (MIDDLE + width / 2, top),
        (MIDDLE + width_below / 2, bottom),
        (MIDDLE - width_below / 2, bottom),
    )
    return " ".join(f"{x:.1f},{y:.1f}" for x, y in points)
