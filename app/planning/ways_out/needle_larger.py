"""A larger needle: looser stitches and fewer metres, while the fabric does not become too open."""

from collections.abc import Iterator
from dataclasses import replace
from functools import partial
from math import hypot

from app.book.gauge import Gauge
from app.book.plan import Part
from app.book.shape import Measured, Metres, Rectangle, Stated, Trapezoid
from app.craft.needle_choice import hand_from
from app.craft.needles import needles, predict_gauge
from app.craft.thickness import wraps_from_tex
from app.planning.redraw import redraw
from app.planning.remarks import firmness_remark
from app.planning.ways_out.situation import Situation, least
from app.planning.ways_out.way import Amount, Effort, Proposal, Said, Way, simple
from app.planning.what_if import WhatIf, between

SIZES = 3
"""Needles further up than this are another fabric (assumed)."""

GUESSED_PCT = 5.0
"""How unsure the yarn in a stitch is on a needle not yet tried in this yarn (practice)."""

EVENINGS = 1.0
"""A swatch knit, washed and counted (assumed)."""


def find(situation: Situation) -> Iterator[Proposal]:
    """The smallest larger needle that is enough, else the largest that suits."""
    gauge, yarn_id = situation.plan.gauge, _yarn(situation)
    if gauge is None or gauge.needle_mm is None or yarn_id is None or not _by_size(situation):
        return
    larger = [one.mm for one in needles() if one.mm > gauge.needle_mm][:SIZES]
    suits = [mm for mm in larger if _suits(situation, yarn_id, ahead(situation, yarn_id, mm))]
    if suits:
        mm, change, _ = least(situation, suits, partial(_on, situation, yarn_id))
        there = ahead(situation, yarn_id, mm)
        title = Said("Knit it on a needle of {}", (Amount(mm, "needle"),))
        counts = (Amount(there.stitches, "count"), Amount(there.rows, "count"))
        note = Said("It would knit to about {} × {} in 10 cm: swatch first", counts)
        effort = Effort(EVENINGS, Said("another swatch, and a looser fabric"))
        yield simple(situation, "needle", title, effort, change, (note,))


def ahead(situation: Situation, yarn_id: str, mm: float) -> Gauge:
    """The gauge to expect on another needle, by the hand the present gauge shows: 2.2(d)."""
    gauge, tex = situation.plan.gauge, situation.lots.tex(yarn_id)
    assert gauge is not None
    assert gauge.needle_mm is not None
    assert tex is not None
    wraps = wraps_from_tex(tex.value)
    loop = next(one.loop for one in situation.needs.values() if one.gauge == gauge and one.loop)
    hand = hand_from(loop.value, gauge.needle_mm, wraps)
    by_now = predict_gauge(gauge.needle_mm, wraps, hand, gauge.rows / gauge.stitches, gauge.washed)
    there = predict_gauge(mm, wraps, hand, gauge.rows / gauge.stitches, gauge.washed)
    looser = there.stitches.value / by_now.stitches.value
    return Gauge(
        round(gauge.stitches * looser, 1),
        round(gauge.rows * looser, 1),
        gauge.washed,
        mm,
        round(hypot(gauge.assumed_pct, GUESSED_PCT), 1),
    )


def _yarn(situation: Situation) -> str | None:
    """The yarn that is short, if its grist is known and the plan is not on the needles."""
    if situation.plan.state != "intended" or not situation.short_groups:
        return None
    yarn_id = situation.short_groups[0].yarn_id
    return yarn_id if yarn_id and situation.lots.tex(yarn_id) else None


def _by_size(situation: Situation) -> bool:
    """True where the stitches follow from sizes, so that a looser gauge keeps the garment's size,
    and some part is knit to the plan's gauge."""
    own = [one for one in situation.parts if one.gauge is None]
    sized = situation.plan.design is not None or all(_has_size(one) for one in own)
    knit = any(not isinstance(one.shape, Metres | Stated) for one in own)
    return sized and knit and not situation.plan.pattern_id


def _has_size(part: Part) -> bool:
    return isinstance(part.shape, Rectangle | Trapezoid | Measured | Metres | Stated)


def _suits(situation: Situation, yarn_id: str, gauge: Gauge) -> bool:
    """Whether the fabric stays out of the bands that are called open or firm."""
    scale = (situation.plan.gauge.stitches if situation.plan.gauge else 0.0) / gauge.stitches
    yarn = situation.book.yarn[yarn_id]
    for need in situation.needs.values():
        if need.part.gauge is None and need.loop is not None:
            looser = replace(need, loop=need.loop.scaled(scale))
            remark = firmness_remark(yarn, looser, situation.lots)
            if remark is None or remark.doubt:
                return False
    return True


def _on(situation: Situation, yarn_id: str, mm: float) -> WhatIf:
    plan = replace(situation.plan, gauge=ahead(situation, yarn_id, mm))
    if plan.design is None:
        return situation.changed([plan])
    drawn = between(situation.book, redraw(situation.book, plan).in_book(situation.book))
    return situation.also(drawn)


WAY = Way("needle", find)
