"""Outlines of pieces laid flat: cut into strips, measured across. Points are (across, up) in cm."""

Point = tuple[float, float]
Corners = tuple[Point, ...]

DUST = 1e-9


def strip(outline: Corners, low: float, high: float) -> Corners:
    """The part of an outline between two heights; parts that hang together by nothing but the cut
    are joined along it."""
    return _above(_above(outline, low, 1), -high, -1)


def spans(outline: Corners, at: float) -> list[tuple[float, float]]:
    """From where to where an outline is fabric at a height, left to right."""
    crossed = []
    for (x, y), (to_x, to_y) in zip(outline, outline[1:] + outline[:1], strict=True):
        if (y <= at) != (to_y <= at):
            crossed.append(x + (to_x - x) * (at - y) / (to_y - y))
    crossed.sort()
    return list(zip(crossed[::2], crossed[1::2], strict=True))


def without_straight(outline: Corners) -> Corners:
    """An outline without the points at which it goes on as it did."""
    kept: list[Point] = []
    for at in outline:
        while kept and (kept[-1] == at or (len(kept) > 1 and _straight(kept[-2], kept[-1], at))):
            kept.pop()
        kept.append(at)
    return tuple(kept)


def area(outline: Corners) -> float:
    """Of an outline, in cm²."""
    after = outline[1:] + outline[:1]
    pairs = zip(outline, after, strict=True)
    return abs(sum(x * to_y - to_x * y for (x, y), (to_x, to_y) in pairs)) / 2


def _above(outline: Corners, low: float, way: int) -> Corners:
    """What of an outline lies above a height; with `way` of −1 all heights count downwards."""
    kept: list[Point] = []
    for before, at in zip(outline[-1:] + outline[:-1], outline, strict=True):
        rise, fall = way * before[1] - low, way * at[1] - low
        if (rise >= 0) != (fall >= 0):
            share = rise / (rise - fall)
            kept.append((before[0] + (at[0] - before[0]) * share, way * low))
        if fall >= 0:
            kept.append(at)
    return tuple(kept)


def _straight(before: Point, at: Point, after: Point) -> bool:
    """Whether a way leads straight on, not back, but for dust."""
    (x, y), (to_x, to_y) = (
        (one[0] - other[0], one[1] - other[1]) for one, other in ((at, before), (after, at))
    )
    return abs(x * to_y - y * to_x) < DUST and x * to_x + y * to_y > 0
