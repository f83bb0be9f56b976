"""The page of one swatch: the answer, what each way says, the fabric, needle and garments."""

from dataclasses import dataclass

from app.book.stamp import stamp
from app.book.swatch import Swatch
from app.craft.working import Step
from app.planning.needle_line import Tried
from app.web.forms.filled import Filled
from app.web.pages.answer import Sentence
from app.web.pages.gauge_said import counts_said, gauge_said, measure_said, stitches_said
from app.web.pages.swatch_plot import Plot, swatch_plot
from app.web.pages.swatch_said import (
    WAY_WORDS,
    disagreement_said,
    loft_said,
    loop_length,
    needle_said,
    share_said,
    swatch_sentence,
    washing_said,
)
from app.web.shown import Shown
from app.work.swatch_known import KnownSwatch
from app.work.swatch_take import KnitTo


@dataclass(frozen=True, slots=True)
class WayRow:
    """What one way says of the yarn in a stitch, and its share in the answer."""

    way: str
    loop: str
    unsure: str
    weight: str


@dataclass(frozen=True, slots=True)
class TriedRow:
    """A swatch of the same yarn; `own` is the one the page is about."""

    id: str
    name: str
    needle: str
    stitches: str
    own: bool


@dataclass(frozen=True, slots=True)
class GarmentRow:
    """A garment knit to the swatch: which of its parts, the numbers it took, and what to know."""

    id: str
    name: str
    parts: str
    gauge: str
    note: str
    may_take: bool


@dataclass(frozen=True, slots=True)
class SwatchPage:
    """`asked` is the answer to the form `needle_form`; empty texts are not shown."""

    swatch: Swatch
    stamp: str
    yarn_name: str
    colour: str
    answer: Sentence
    now: str
    counts: tuple[tuple[str, str], ...]
    ways: tuple[WayRow, ...]
    doubt: str
    fabric: tuple[tuple[str, str], ...]
    loft: str
    washing: str
    tried: tuple[TriedRow, ...]
    plot: Plot | None
    needle_form: Filled
    measure: str
    asked: Sentence | None
    asked_steps: tuple[Step, ...]
    garments: tuple[GarmentRow, ...]
    working: tuple[Step, ...]


def swatch_page(known: KnownSwatch, needle_form: Filled, shown: Shown) -> SwatchPage:
    """The page of a swatch; `needle_form` asks which needle gives so many stitches."""
    told, answer, asked = known.told, known.told.answer, known.asked
    return SwatchPage(
        swatch=told.swatch,
        stamp=stamp(told.swatch),
        yarn_name=told.yarn.name if told.yarn else "",
        colour=told.yarn.colour if told.yarn else "",
        answer=swatch_sentence(answer, shown),
        now=gauge_said(answer.gauge, shown) if answer.gauge else "",
        counts=_counts(told.swatch, shown),
        ways=_ways(known, shown),
        doubt=disagreement_said(answer.found) if answer.found else "",
        fabric=_fabric(known, shown),
        loft=loft_said(answer.fullness, shown) if answer.fullness else "",
        washing=washing_said(answer, shown),
        tried=tuple(_tried(one, told.swatch, shown) for one in known.line.tried),
        plot=swatch_plot(known.line, told.swatch.id, shown),
        needle_form=needle_form,
        measure=measure_said(shown),
        asked=needle_said(asked, shown) if asked else None,
        asked_steps=asked.steps if asked else (),
        garments=tuple(_garment(one, shown) for one in known.garments),
        working=answer.steps,
    )


def _counts(swatch: Swatch, shown: Shown) -> tuple[tuple[str, str], ...]:
    """What was counted, as it was counted."""
    both = (("Off the needles", swatch.worked), ("Washed and dried flat", swatch.finished))
    found = []
    for words, count in both:
        if count:
            across = (
                f"{shown.field_number(count.stitches)} stitches over {shown.size(count.width_mm)}"
            )
            along = f"{shown.field_number(count.rows)} rows over {shown.size(count.height_mm)}"
            found.append((words, f"{across}, {along}"))
    return tuple(found)


def _ways(known: KnownSwatch, shown: Shown) -> tuple[WayRow, ...]:
    found = known.told.answer.found
    if found is None:
        return ()
    return tuple(
        WayRow(
            WAY_WORDS[way.name],
            loop_length(way.loop, shown),
            share_said(way.loop, shown),
            shown.percent(100 * found.combined.weights.get(way.name, 0.0)),
        )
        for way in known.told.answer.ways
    )


def _fabric(known: KnownSwatch, shown: Shown) -> tuple[tuple[str, str], ...]:
    cloth = known.told.answer.cloth
    if cloth is None:
        return ()
    metres, grams = shown.length(cloth.m_per_m2.value), shown.mass(cloth.g_per_m2.value)
    stitch = shown.number(1000 * cloth.g_per_stitch.value, 1)
    return (
        ("Yarn in a square metre", f"{metres} ± {share_said(cloth.m_per_m2, shown)}"),
        ("Weight of a square metre", f"{grams} ± {share_said(cloth.g_per_m2, shown)}"),
        ("Weight of a stitch", f"{stitch}\u202fmg ± {share_said(cloth.g_per_stitch, shown)}"),
    )


def _tried(one: Tried, swatch: Swatch, shown: Shown) -> TriedRow:
    needle = f"{shown.field_number(one.needle_mm)}\u202fmm"
    own = one.swatch.id == swatch.id
    return TriedRow(one.swatch.id, one.swatch.name, needle, stitches_said(one.stitches, shown), own)


def _garment(one: KnitTo, shown: Shown) -> GarmentRow:
    whole = one.plan in one.records
    names = [record.name for record in one.records if record.id != one.plan.id]
    taken = dict.fromkeys(counts_said(gauge.stitches, gauge.rows, shown) for gauge in one.taken)
    return GarmentRow(
        id=one.plan.id,
        name=one.plan.name,
        parts="all of it" if whole else ", ".join(names),
        gauge="; ".join(taken),
        note=_note(one),
        may_take=one.may_take,
    )


def _note(one: KnitTo) -> str:
    if not one.moved_on:
        return ""
    if one.may_take:
        return "the swatch says something else by now"
    return f"{one.plan.state}: it keeps the numbers it was cast on with"
