"""Outlines of pieces laid flat: cut into strips, measured across. Points are (across, up) in cm."""

Point = tuple[float, float]
Corners = tuple[Point, ...]


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
