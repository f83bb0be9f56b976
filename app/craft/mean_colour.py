"""The colour of a patch of a picture, as the eye would blend it from a distance.

Light adds up, numbers on a screen do not: each channel is brought to linear light, averaged there,
and brought back (transfer function of IEC 61966-2-1, sRGB).
"""

from collections.abc import Sequence

BEND = 0.04045
"""Below this share of full the screen's numbers are in proportion to light."""


def mean_colour(pixels: Sequence[tuple[int, int, int]]) -> str:
    """The mean of pixels (red, green, blue; 0 to 255) as "#rrggbb"; ValueError for none."""
    if not pixels:
        raise ValueError("a patch has at least one pixel")
    means = (sum(map(light, channel)) / len(pixels) for channel in zip(*pixels, strict=True))
    return "#" + "".join(f"{screen(mean):02x}" for mean in means)


def light(value: int) -> float:
    """Linear light, 0 to 1, of a channel's number, 0 to 255."""
    share = value / 255
    return share / 12.92 if share <= BEND else float(((share + 0.055) / 1.055) ** 2.4)


def screen(amount: float) -> int:
    """The channel's number, 0 to 255, of linear light, 0 to 1."""
    bent = amount * 12.92 if amount <= BEND / 12.92 else 1.055 * amount ** (1 / 2.4) - 0.055
    return round(255 * bent)
