"""The small sums of shaping: even spacing, picking up, multiples and buttons."""

from fractions import Fraction

from app.craft.domain import not_negative, positive

Spacing = tuple[tuple[int, int], ...]
"""(how often, every so many rows or stitches), in the order they are worked."""

LARGEST_RATIO = 30
"""Picking up is told in patterns of at most so many rows."""


def even_spacing(events: int, rows: int) -> Spacing:
    """`events` spread over `rows`: with q, m = divmod(rows, events), n−m times every q rows and m
    times every q+1. 11 in 108 is 2 times every 9th, 9 times every 10th. ValueError where there are
    more events than rows, or less than none."""
    if not 0 <= events <= rows:
        raise ValueError(f"{events} shapings do not fit in {rows} rows")
    if events == 0:
        return ()
    every, longer = divmod(rows, events)
    both = ((events - longer, every), (longer, every + 1))
    return tuple((times, gap) for times, gap in both if times)


def even_spacing_flat(events: int, rows: int) -> Spacing:
    """The same for flat work, where shaping falls on every second row: the gaps are even numbers,
    and an odd last row is worked plain. ValueError where the pairs of rows are too few."""
    pairs = rows // 2
    if events > pairs:
        raise ValueError(f"{events} shapings on every second row do not fit in {rows} rows")
    return tuple((times, 2 * gap) for times, gap in even_spacing(events, pairs))


def pick_up(stitches_per_10cm: float, rows_per_10cm: float) -> tuple[tuple[int, int], ...]:
    """How to pick up stitches along the ends of rows: (stitches, rows) to repeat in turn.

    20 stitches to 26 rows is 3 in 4, 3 in 4, 4 in 5. ValueError where the fabric has fewer rows
    than stitches: then every row gives one and the rest is increased after.
    """
    stitches = Fraction(positive(stitches_per_10cm, "stitches in 10 cm"))
    ratio = stitches / Fraction(positive(rows_per_10cm, "rows in 10 cm"))
    if ratio > 1:
        raise ValueError(
            "with more stitches than rows, pick up one in every row and increase after"
        )
    ratio = ratio.limit_denominator(LARGEST_RATIO)
    skipped = ratio.denominator - ratio.numerator
    if skipped == 0:
        return ((1, 1),)
    groups = even_spacing(skipped, ratio.denominator)
    return tuple((rows - 1, rows) for times, rows in groups for _ in range(times))


def multiples_near(stitches: int, multiple: int, plus: int = 0) -> tuple[int, int]:
    """The counts at or below and at or above `stitches` that are a multiple and so many more: a
    2×2 rib wants 4, and 2 more when flat. The lower one is never below `plus`."""
    if multiple < 1 or plus < 0 or stitches < 0:
        raise ValueError("stitches and their multiple are whole numbers above zero")
    below = max((stitches - plus) // multiple, 0) * multiple + plus
    return (below, below if below >= stitches else below + multiple)


def button_places(length: float, buttons: int, hole: float, edge: float) -> tuple[float, ...]:
    """Where each buttonhole begins along a band, in the unit of the lengths given.

    The gap between holes is (L − 2e − n·h)/(n − 1); one button sits in the middle. ValueError
    where they do not fit.
    """
    if buttons < 1:
        raise ValueError(f"a band has at least one button, not {buttons}")
    room = positive(length, "the length of the band") - 2 * not_negative(edge, "the edge")
    room -= buttons * positive(hole, "the length of a buttonhole")
    if room < 0:
        raise ValueError(f"{buttons} buttonholes do not fit on this band")
    if buttons == 1:
        return (edge + room / 2,)
    gap = room / (buttons - 1)
    return tuple(edge + place * (hole + gap) for place in range(buttons))
