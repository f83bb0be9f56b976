"""The small sums of shaping: even spacing, picking up, multiples and buttons."""

from fractions import Fraction

from app.craft.domain import not_negative, positive

Spacing = tuple[tuple[int, int], ...]
"""(how often, every so many rows or stitches), in the order they are worked."""

LARGEST_RATIO = 30
"""Picking up is told in patterns of at most so many rows."""


BOTH_ENDS = 2

EVEN_ENOUGH = 0.01
"""Two gaps one after the other bend an edge; in turns it stays straight, to this share of its
stitches."""


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


def one_in_every(events: int, stitches: int) -> str:
    """ ", one in every 8 or 9 stitches": how far apart they lie in one row; empty where there are
    more of them than stitches, or none."""
    if not 0 < events <= stitches:
        return ""
    gaps = [str(gap) for _, gap in even_spacing(events, stitches)]
    return f", one in every {' or '.join(gaps)} stitches"


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


def shaping_text(
    rows: int,
    stitches: int,
    stitches_to: int,
    in_round: bool = False,
    where: str = "",
    ends: int = 2,
) -> str:
    """A run of rows in words: one stitch at each of `ends` places at a time, `where` they are (both
    ends of the row, or both sides of a marker in the round, if not said); an odd stitch falls on
    the last row. Shaping too steep for that is told as so many stitches over the rows."""
    row = "round" if in_round else "row"
    change = stitches_to - stitches
    if change == 0:
        return f"Work {counted(rows, row)} on {stitches} stitches."
    worked = rows * (stitches + stitches_to) / 2
    told, rest = shaping_phrase(rows, change, worked, in_round, where, ends)
    after = f", then work {counted(rest, row)} more." if rest else "."
    return f"{told}: {stitches_to} stitches{after}"


def shaping_phrase(
    rows: int, change: int, worked: float, in_round: bool, where: str = "", ends: int = 2
) -> tuple[str, int]:
    """The same without the count it ends on, and the rows left after the last of it: `change` is
    above zero for increases, `worked` the stitches of all the rows."""
    row = "round" if in_round else "row"
    verb = "Increase" if change > 0 else "Decrease"
    events, odd = divmod(abs(change), ends)
    if not 0 < events <= rows:
        return _steep(rows, change, in_round, ends), 0
    spacing = spaced(events, rows, in_round)
    where = where or ("on each side of the marker on" if in_round else "at each end of")
    spread = spacing_text(spacing, row, turns_of(spacing, worked, ends))
    told = f"{verb} one stitch {where} {spread}"
    told += f", {odd} more on the last" if odd else ""
    return told, rows - sum(times * gap for times, gap in spacing) + spacing[0][1] - 1


def _steep(rows: int, change: int, in_round: bool, ends: int) -> str:
    """More than a stitch at each place in every row: at the ends of flat rows cast off in steps."""
    many = abs(change)
    over = counted(rows, "round" if in_round else "row")
    if change < 0 and not in_round and ends <= BOTH_ENDS and ends < many:
        return f"Cast off {many} stitches in even steps over {over}{_steps(rows // 2, many, ends)}"
    verb = "Increase" if change > 0 else "Decrease"
    return f"{verb} {counted(many, 'stitch', 'es')} evenly over {over}"


def _steps(times: int, many: int, ends: int) -> str:
    """One edge is cast off on every second row, where the row begins: " (6, 6 and 7 …)"."""
    if many % ends or times < 2:
        return ""
    each, longer = divmod(many // ends, times)
    *most, last = [each] * (times - longer) + [each + 1] * longer
    sides = " on each side" if ends > 1 else ""
    return f" ({', '.join(map(str, most))} and {last}{sides}, every 2nd row)"


def counted(count: int, what: str, many: str = "s") -> str:
    """1 row, 2 rows."""
    return f"{count} {what}{'' if count == 1 else many}"


def ordinal(number: int) -> str:
    """1st, 2nd, 3rd, 4th … 11th."""
    teen = number % 100 in (11, 12, 13)
    return f"{number}{'th' if teen else {1: 'st', 2: 'nd', 3: 'rd'}.get(number % 10, 'th')}"


def spaced(events: int, rows: int, in_round: bool) -> Spacing:
    """`events` shapings spread over `rows`: on every second row where flat work leaves room for
    it. ValueError where there are more events than rows."""
    flat = not in_round and events <= rows // 2
    return even_spacing_flat(events, rows) if flat else even_spacing(events, rows)


def turns_of(spacing: Spacing, worked: float, at_once: int) -> int:
    """In how many turns two gaps alternate so that the edge stays straight, of `worked` stitches
    in all and `at_once` shaped at a time: the fewest that are even enough, those first
    that leave nothing over; else the evenest."""
    if len(spacing) < 2:
        return 1
    (often, gap), (more, wider) = spacing
    offs = {n: _off(often, more, n) for n in range(1, max(min(often // 2, more), 1) + 1)}
    most = EVEN_ENOUGH * worked / ((wider - gap) * at_once / 2)
    enough = [n for n, off in offs.items() if off <= most]
    if not enough:
        return min(offs, key=offs.__getitem__)
    return min(enough, key=lambda n: (n > 1 and often % n + more % n > 0, n))


def _off(often: int, more: int, turns: int) -> int:
    """Twice the area between a straight line and two gaps in turns, for a row between the gaps: a
    triangle for each turn, and one for what is left over at the end."""
    each, other = often // turns, more // turns
    left, over = often % turns, more % turns
    return turns * each * other + left * over + turns * abs(each * over - other * left)


def spacing_text(spacing: Spacing, row: str, turns: int = 1) -> str:
    """ "the next and every 8th row, 16 times": the first falls on the next row, so that its gap
    is left over at the end. In `turns`, what does not divide comes after them."""
    if turns == 1:
        return _one_after_another(spacing, row)
    turn = tuple((times // turns, gap) for times, gap in spacing)
    told = f"{_one_after_another(turn, row)}, all this {turns} times"
    left = [(times % turns, gap) for times, gap in spacing if times % turns]
    return told + "".join(_then(times, gap, row) for times, gap in left)


def _one_after_another(spacing: Spacing, row: str) -> str:
    (times, gap), *others = spacing
    if times == 1 and not others:
        return f"the next {row}"
    told = f"the next {row}" if times == 1 else f"the next and {_gap(gap, row)}, {times} times"
    return told + "".join(_then(more, wider, row) for more, wider in others)


def _then(times: int, gap: int, row: str) -> str:
    return f", then {_gap(gap, row)}, {'once' if times == 1 else f'{times} times'}"


def _gap(gap: int, row: str) -> str:
    return f"every {row}" if gap == 1 else f"every {ordinal(gap)} {row}"
