"""The budget bar of a part: what is knitted in and promised against its need, with a soft end."""

from dataclasses import dataclass

from app.planning.answers import PartAnswer

WIDTH = 100.0
NEED_AT = 72.0
"""Where the need stands on a bar of WIDTH units; what goes beyond it shows to the right."""


@dataclass(frozen=True, slots=True)
class Bar:
    """All in units of the bar's width: firm up to `firm`, then fading out over `soft`."""

    firm: float
    soft: float
    need_at: float = NEED_AT

    @property
    def end(self) -> float:
        return self.firm + self.soft


def budget_bar(part: PartAnswer) -> Bar:
    """The bar of a part; the soft end is as wide as the need is unsure, ± one u."""
    if part.need.value <= 0:
        return Bar(0.0, 0.0)
    scale = NEED_AT / part.need.value
    have = min((part.used_m + part.promised_m) * scale, WIDTH)
    blur = min(2 * part.need.u * scale, have) if have < NEED_AT else 0.0
    return Bar(round(have - blur, 1), round(blur, 1))
