"""Numbers of the tables: four digits, without grouping, so that they can be copied and typed."""

from app.web.shown import Shown

DIGITS = 4


def plain(shown: Shown, x: float, digits: int = DIGITS) -> str:
    """`x` to so many significant digits: 450.7, 1101, 0.07234; larger numbers to the unit."""
    exponent = int(f"{x:.{digits - 1}e}".split("e")[1]) if x else 0
    places = max(0, digits - 1 - exponent)
    return f"{x:.{places}f}".replace(".", shown.settings.decimal)


def short(shown: Shown, x: float, places: int = 1) -> str:
    """`x` to so many places at most: 3, 3.5."""
    text = f"{x:.{places}f}"
    text = text.rstrip("0").rstrip(".") if "." in text else text
    return text.replace(".", shown.settings.decimal)


def ranged(shown: Shown, low: float | None, high: float | None, places: int = 1) -> str:
    """A printed range: "24.5 to 31.5", "up to 400", "38.1 and more"; None is an open end."""
    if low is None:
        return f"up to {short(shown, high or 0.0, places)}"
    if high is None:
        return f"{short(shown, low, places)} and more"
    ends = [short(shown, one, places) for one in (low, high)]
    return ends[0] if ends[0] == ends[1] else " to ".join(ends)
