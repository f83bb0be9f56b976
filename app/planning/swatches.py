"""What a swatch tells: the yarn in a stitch by every way at hand, the fabric, what washing did.

The errors of a swatch bear its name, so that all that is knit to it shares them; the grist of its
yarn keeps the name it has on the shelf, so that with a weighed swatch it cancels in grams.
"""

from dataclasses import dataclass, replace

from app.book.gauge import Gauge
from app.book.swatch import Count, Swatch, gauge_of
from app.craft.cloth import Cloth, Fullness, fullness, square_metre
from app.craft.fabric import loop_cm
from app.craft.figure import Figure
from app.craft.gauge import counted
from app.craft.loop_ways import LoopFound, Way, by_gauge, by_thread, by_weight, loop_from
from app.craft.patterns import known_or_unsure
from app.craft.relaxation import after_washing, washing_steps
from app.craft.working import Step
from app.planning.yarns import Lots


@dataclass(frozen=True, slots=True)
class Washing:
    """Width and height of the finished fabric as shares of what they were off the needles."""

    width: Figure
    height: Figure


@dataclass(frozen=True, slots=True)
class SwatchAnswer:
    """All a swatch tells; None where too little was measured.

    `found` is the yarn in a stitch by the `ways` at hand; `cloth` and `fullness` want the grist of
    the yarn too, `washing` a count before and after; `once_washed` are the stitches and rows in
    10 cm to expect of plain knit not washed yet.
    """

    gauge: Gauge | None
    ways: tuple[Way, ...]
    found: LoopFound | None
    tex: Figure | None
    cloth: Cloth | None
    fullness: Fullness | None
    washing: Washing | None
    once_washed: tuple[Figure, Figure] | None
    steps: tuple[Step, ...]


def tell(swatch: Swatch, lots: Lots) -> SwatchAnswer:
    """What there is to know of a swatch from what was measured on it."""
    gauge, tex = gauge_of(swatch), _tex(swatch, lots)
    ways = ways_of(swatch, gauge, lots)
    found = loop_from(*ways) if ways else None
    cloth = full = None
    if found and tex:
        full = fullness(tex.value, found.loop.value, measured_wraps(swatch, lots))
        cloth = square_metre(gauge.stitches, gauge.rows, found.loop, tex) if gauge else None
    raw = (
        gauge if gauge and not gauge.washed and not known_or_unsure(swatch.pattern).area_u else None
    )
    steps = [step for one in (found, cloth, full) if one for step in one.steps]
    return SwatchAnswer(
        gauge=gauge,
        ways=tuple(ways),
        found=found,
        tex=tex,
        cloth=cloth,
        fullness=full,
        washing=_washing(swatch),
        once_washed=after_washing(raw.stitches, raw.rows) if raw else None,
        steps=(*steps, *(washing_steps(raw.stitches, raw.rows) if raw else ())),
    )


def yarn_in_stitch(swatch: Swatch, gauge: Gauge, lots: Lots) -> LoopFound:
    """The yarn in a stitch in cm of what is knit to a gauge taken from a swatch.

    The gauge counts as it was taken. What was weighed or unravelled counts as long as it was knit
    on the same needle: washing or counting anew does not change the yarn in a stitch.
    """
    same = (
        swatch
        if swatch.needle_mm == gauge.needle_mm
        else replace(swatch, thread_mm=None, weight_mg=None)
    )
    return loop_from(*ways_of(same, gauge, lots))


def holds_extras_of(swatch: Swatch | None, gauge: Gauge) -> str:
    """The stitch pattern whose extras the yarn in a stitch holds already, since the swatch was knit
    in it on the same needle and weighed or unravelled; empty where it was only counted."""
    if swatch is None or swatch.needle_mm != gauge.needle_mm:
        return ""
    weighed = bool(swatch.weight_mg and swatch.whole_stitches and swatch.yarn_id)
    thread = bool(swatch.thread_mm and swatch.unravelled)
    return known_or_unsure(swatch.pattern).name if weighed or thread else ""


def loop_at(gauge: Gauge, lots: Lots) -> Figure:
    """The yarn in a stitch in cm of what is knit to a gauge, from its swatch if it has one."""
    swatch = lots.book.swatch.get(gauge.swatch_id or "")
    if swatch:
        return yarn_in_stitch(swatch, gauge, lots).loop
    return loop_cm(gauge.stitches, gauge.rows, gauge.washed)


def taken_step(swatch: Swatch, gauge: Gauge) -> Step:
    """That a gauge was taken from a swatch."""
    how = f"{gauge.stitches:g} × {gauge.rows:g} in 10 cm, counted on the swatch {swatch.name}"
    return Step("Gauge", how, gauge.stitches, "stitches in 10 cm", standing="measured")


def ways_of(swatch: Swatch, gauge: Gauge | None, lots: Lots) -> list[Way]:
    """Every way at hand to know the yarn in a stitch: thread, weight, gauge."""
    ways, tex = [], _tex(swatch, lots)
    if swatch.thread_mm and swatch.unravelled:
        ways.append(_named(by_thread(swatch.thread_mm / 10, swatch.unravelled), swatch, None))
    if swatch.weight_mg and swatch.whole_stitches and tex:
        grams, steps_g = swatch.weight_mg / 1000, swatch.scale_mg / 1000
        ways.append(_named(by_weight(grams, swatch.whole_stitches, tex, steps_g), swatch, tex))
    if gauge:
        ways.append(_named(_by_gauge(gauge, swatch.pattern), swatch, None))
    return ways


def measured_wraps(swatch: Swatch, lots: Lots) -> float | None:
    """Wraps per inch of the swatch's yarn, the mean over its skeins; None if none was wrapped."""
    skeins = lots.skeins.get(swatch.yarn_id or "", [])
    readings = [one for skein in skeins for one in lots.book.readings_of.get(skein.id, [])]
    wraps = [one.value / 1000 for one in readings if one.kind == "wraps" and one.value > 0]
    return sum(wraps) / len(wraps) if wraps else None


def _tex(swatch: Swatch, lots: Lots) -> Figure | None:
    return lots.tex(swatch.yarn_id) if swatch.yarn_id else None


def _by_gauge(gauge: Gauge, pattern: str) -> Way:
    """By geometry; what is no plain knit is the less sure for it."""
    way = by_gauge(gauge.stitches, gauge.rows, gauge.washed)
    area_u = known_or_unsure(pattern).area_u
    if not area_u:
        return way
    loop = way.loop.unsure("no plain knit", way.loop.value * area_u / 2)
    source = f"{way.source}, for plain knit; {pattern} is another fabric"
    return replace(way, loop=loop, source=source, standing="assumed")


def _named(way: Way, swatch: Swatch, tex: Figure | None) -> Way:
    shared = tex.causes if tex else {}
    causes = {
        cause if cause in shared else f"{cause}, swatch {swatch.name}": part
        for cause, part in way.loop.causes.items()
    }
    return replace(way, loop=replace(way.loop, causes=causes))


def _washing(swatch: Swatch) -> Washing | None:
    if swatch.worked is None or swatch.finished is None:
        return None
    before, after = _counted(swatch.worked, "worked"), _counted(swatch.finished, "finished")
    width, height = (one.per(other, "share") for one, other in zip(before, after, strict=True))
    return Washing(width, height)


def _counted(count: Count, when: str) -> tuple[Figure, Figure]:
    stitches = counted(count.stitches, count.width_mm, "st/10 cm", f"width {when}")
    return stitches, counted(count.rows, count.height_mm, "rows/10 cm", f"height {when}")
