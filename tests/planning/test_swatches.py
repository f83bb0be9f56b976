"""What a swatch tells, and a garment that is knit to it."""

from dataclasses import replace
from math import hypot, sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.book.gauge import Gauge
from app.book.plan import Losses
from app.book.swatch import Count, gauge_of
from app.planning import reckon
from app.planning.swatches import loop_at, tell
from app.planning.yarns import Lots
from tests.books import a_book, a_part, a_plan, a_promise, a_reading, a_skein, a_swatch, a_yarn

GREY = "grey two-ply"
SCALE_U = 0.5 / sqrt(3)
"""Of a kitchen scale that shows whole grams."""

WEIGHED = {"weight_mg": 10_000, "whole_stitches": 1228.0}
UNRAVELLED = {"unravelled": 40.0, "thread_mm": 724}


def told(**swatch):
    return tell(a_swatch(**swatch), Lots(a_book(*yarn(), held={"G-1": (96, 96 / 0.45)})))


def yarn():
    """Grey yarn of 450 tex, weighed and measured: u 3 %."""
    return a_yarn(), a_skein()


def knit_to(swatch, gauge=None, **plan):
    """The tube of 229 stitches × 120 rows, its gauge taken from a swatch."""
    gauge = gauge or gauge_of(swatch)
    plan = a_plan(gauge=gauge, losses=Losses(0, 0, 0.0, 0), **plan)
    book = a_book(*yarn(), swatch, plan, a_part(), held={"G-1": (270, 600)})
    return reckon(book).plan("pullover")


@pytest.mark.published
def test_a_counted_swatch_by_geometry():
    """Munden 1959: 22 × 30 washed, l = √(21.6/6.6) = 1.8091 cm, 1194.0 m in a square metre."""
    answer = told()
    assert answer.found.loop.value == pytest.approx(1.8091, abs=5e-5)
    assert answer.found.loop.u == pytest.approx(0.07 * 1.8091, rel=1e-4)
    assert answer.cloth.m_per_m2.value == pytest.approx(1194.0, abs=0.05)
    assert answer.cloth.g_per_m2.value == pytest.approx(1194.0 * 0.45, abs=0.05)
    assert answer.fullness.word == "ordinary"
    assert answer.fullness.by_weight == pytest.approx(sqrt(450) / 1.8091, rel=1e-4)


def test_a_weighed_swatch():
    """10 g, 450 tex, 1228 stitches: 10⁵·10/(450·1228) = 1.810 cm; u of the scale and the grist."""
    answer = told(finished=None, **WEIGHED)
    assert answer.found.loop.value == pytest.approx(1.8096, abs=5e-5)
    assert answer.found.loop.u / answer.found.loop.value == pytest.approx(
        hypot(SCALE_U / 10, 0.03), rel=1e-6
    )
    assert answer.found.loop.causes[f"grist of {GREY}"] < 0
    assert answer.gauge is None
    assert answer.cloth is None
    assert answer.fullness.word == "ordinary"


def test_an_unravelled_swatch():
    answer = told(finished=None, **UNRAVELLED)
    assert answer.found.loop.value == pytest.approx(1.81)
    assert answer.found.loop.u == pytest.approx(0.015 * 1.81)
    assert answer.found.chief == "thread"


def test_three_ways_are_weighted_by_hand_computed_inverse_variance():
    answer = told(**WEIGHED, **UNRAVELLED)
    loops = {"thread": 1.81, "weight": 1.80963, "gauge": 1.80907}
    u = {
        "thread": 0.015 * 1.81,
        "weight": hypot(SCALE_U / 10, 0.03) * 1.80963,
        "gauge": 0.07 * 1.80907,
    }
    whole = sum(1 / one**2 for one in u.values())
    mean = sum(loops[way] / u[way] ** 2 for way in loops) / whole
    assert answer.found.loop.value == pytest.approx(mean, rel=1e-5)
    assert answer.found.loop.u == pytest.approx(1 / sqrt(whole), rel=1e-4)
    assert answer.found.combined.weights["thread"] == pytest.approx(0.85, abs=0.01)
    assert [step.what for step in answer.steps][:4] == [
        "Yarn in one stitch, by thread",
        "Yarn in one stitch, by weight",
        "Yarn in one stitch, by gauge",
        "Yarn in one stitch",
    ]
    assert "most by thread" in answer.steps[3].how


def test_a_finer_scale_makes_a_surer_swatch():
    coarse, fine = (told(finished=None, **WEIGHED, scale_mg=one).found.loop.u for one in (1000, 10))
    assert fine < coarse
    assert fine / 1.8096 == pytest.approx(0.03, rel=1e-3)


def test_with_a_weighed_swatch_the_grist_cancels_in_grams():
    cloth = told(finished=Count(22.0, 100, 30.0, 100), **WEIGHED).cloth
    by_weight_alone = told(**WEIGHED)
    weight = by_weight_alone.found.combined.weights["weight"]
    grist = f"grist of {GREY}"
    assert cloth.g_per_stitch.value == pytest.approx(10 / 1228, rel=1e-3)
    left = (1 - weight) * 0.03 * cloth.g_per_stitch.value
    assert cloth.g_per_stitch.causes[grist] == pytest.approx(left, rel=0.01)
    assert cloth.cm_per_stitch.causes[grist] < 0


@pytest.mark.property
@given(
    st.floats(1.2, 2.6),
    st.floats(1.2, 2.6),
    st.integers(10, 3000),
    st.floats(5, 200),
)
def test_a_second_way_never_widens(thread_cm, weighed_cm, scale_mg, stitches):
    grams = weighed_cm * 450 * 1000 / 1e5
    weighed = {"weight_mg": round(grams * 1000), "whole_stitches": 1000.0, "scale_mg": scale_mg}
    thread = {"unravelled": stitches, "thread_mm": max(1, round(thread_cm * 10 * stitches))}
    counted = told().found.loop.u
    weighed_too = told(**weighed).found.loop.u
    assert weighed_too <= counted * (1 + 1e-12)
    assert told(**weighed, **thread).found.loop.u <= weighed_too * (1 + 1e-12)


def test_without_a_grist_a_weight_says_nothing_yet():
    answer = told(yarn_id=None, **WEIGHED)
    assert answer.found.chief == "gauge"
    assert len(answer.steps) == 1
    assert (answer.cloth, answer.fullness, answer.tex) == (None, None, None)


def test_a_swatch_not_measured_says_nothing():
    answer = told(finished=None)
    assert (answer.gauge, answer.found, answer.washing, answer.steps) == (None, None, None, ())


@pytest.mark.parametrize(
    ("pattern", "area_u"),
    [("stocking stitch", 0.0), ("Garter stitch", 0.30), ("trellis of our own", 0.30)],
)
def test_what_is_no_plain_knit_is_less_sure_by_geometry(pattern, area_u):
    loop = told(pattern=pattern).found.loop
    assert loop.u / loop.value == pytest.approx(hypot(0.07, area_u / 2))


def test_no_plain_knit_is_said_in_the_working():
    (first, *_) = told(pattern="garter stitch").steps
    assert "garter stitch is another fabric" in first.source
    assert first.standing == "assumed"


def test_wraps_that_were_measured_give_a_second_firmness():
    wraps = a_reading(id="wrapped", kind="wraps", value=16_000)
    book = a_book(*yarn(), wraps, held={"G-1": (96, 96 / 0.45)})
    answer = tell(a_swatch(), Lots(book))
    assert answer.fullness.by_wraps == pytest.approx(2.54 / 16 / (0.00959 * 1.8091), rel=1e-3)
    assert answer.fullness.loft == "denser"


def test_what_washing_did():
    """20 stitches in 10 cm become 22: the width is 20/22 of what it was."""
    washing = told(worked=Count(20.0, 100, 31.5, 105)).washing
    assert washing.width.value == pytest.approx(20 / 22)
    assert washing.height.value == pytest.approx(1.0)
    half = 0.5 / sqrt(3)
    by_hand = hypot(half / 20, half / 22, 0.01, 0.01) * 20 / 22
    assert washing.width.u == pytest.approx(by_hand)


def test_a_garment_takes_its_gauge_from_a_swatch_and_says_so():
    swatch = a_swatch()
    answer = knit_to(swatch)
    (part,) = answer.parts
    assert part.need.value == pytest.approx(497.1, abs=0.05)
    assert list(part.need.causes) == ["loop length from the gauge, swatch first try"]
    assert part.working[0].how == "22 × 30 in 10 cm, counted on the swatch first try"
    assert part.working[1].what == "Yarn in one stitch, by gauge"


def test_a_need_narrows_when_its_swatch_is_weighed_and_again_when_it_is_unravelled():
    counted = knit_to(a_swatch()).need
    weighed = knit_to(a_swatch(**WEIGHED)).need
    unravelled = knit_to(a_swatch(**WEIGHED, **UNRAVELLED)).need
    assert counted.u > weighed.u > unravelled.u
    assert unravelled.u / unravelled.value < 0.015


def test_parts_knit_to_one_swatch_share_its_errors():
    swatch = a_swatch(**WEIGHED)
    sleeve = a_part("sleeve", position=2, gauge=gauge_of(swatch))
    plan = a_plan(losses=Losses(0, 0, 0.0, 0), gauge=gauge_of(swatch))
    book = a_book(*yarn(), swatch, plan, a_part(), sleeve, held={"G-1": (270, 600)})
    answer = reckon(book).plan("pullover")
    first, second = (one.need for one in answer.parts)
    assert answer.need.u == pytest.approx(first.u + second.u)


def test_grist_cancels_between_a_weighed_swatch_and_skeins_known_by_weight():
    """A skein that was only weighed, against a need from a swatch that was only weighed."""
    swatch = a_swatch(**WEIGHED)
    gauge = gauge_of(swatch)
    swatch = replace(swatch, pattern="1×1 rib")  # leaves the weight nearly alone
    plan = a_plan(gauge=gauge, losses=Losses(0, 0, 0.0, 0))
    skeins = [a_skein("G-1"), a_skein("G-2")]
    book = a_book(
        a_yarn(),
        *skeins,
        swatch,
        plan,
        a_part(),
        a_promise("G-2", 600_000),
        held={"G-1": (96, 96 / 0.45), "G-2": (270, 0)},
    )
    (group,) = reckon(book).plan("pullover").groups
    grist = f"grist of {GREY}"
    assert group.need.causes[grist] < 0
    assert group.supply.causes[grist] < 0
    margin = group.supply - group.need
    apart = hypot(group.supply.causes[grist], group.need.causes[grist])
    assert abs(margin.causes[grist]) < apart / 2


def test_a_plan_keeps_the_numbers_it_was_cast_on_with():
    swatch = a_swatch()
    taken = gauge_of(swatch)
    washed_again = replace(swatch, finished=Count(24.0, 100, 33.0, 100))
    part = knit_to(washed_again, gauge=taken, state="being knit").parts[0]
    assert part.need.value == pytest.approx(497.1, abs=0.05)


def test_what_was_weighed_counts_only_for_its_own_needle():
    swatch = a_swatch(**WEIGHED, **UNRAVELLED)
    other_needle = replace(gauge_of(swatch), needle_mm=5.0)
    assert (
        knit_to(swatch).need.causes.keys() != knit_to(swatch, gauge=other_needle).need.causes.keys()
    )
    assert list(knit_to(swatch, gauge=other_needle).need.causes) == [
        "loop length from the gauge, swatch first try"
    ]


def test_a_typed_gauge_is_no_swatchs():
    typed = knit_to(a_swatch(**UNRAVELLED), gauge=Gauge(22.0, 30.0, needle_mm=4.0))
    assert list(typed.need.causes) == ["yarn in a stitch, by the gauge of pullover"]


def test_a_yarn_is_judged_by_the_stitch_the_swatch_shows():
    """The thread says 1.5 cm where the gauge says 1.81: the fabric is firmer than it seemed."""
    (part,) = knit_to(a_swatch(unravelled=100.0, thread_mm=1500)).parts
    firm = float(part.remarks[0].text.split()[1].rstrip(":"))
    assert firm > sqrt(450) / 1.6


def test_a_swatch_of_another_yarn_is_doubted():
    other = a_swatch(yarn_id="cream two-ply")
    plan = a_plan(gauge=gauge_of(other))
    book = a_book(*yarn(), a_yarn("cream two-ply"), other, plan, a_part(), held={"G-1": (270, 600)})
    (part,) = reckon(book).plan("pullover").parts
    (doubt,) = [one for one in part.remarks if one.doubt]
    assert doubt.text == "The swatch first try is knit in cream two-ply"
    own = knit_to(a_swatch()).parts[0].remarks
    unknown = knit_to(a_swatch(yarn_id=None)).parts[0].remarks
    assert not any(one.doubt for one in (*own, *unknown))


def test_the_stitch_of_a_gauge_wherever_it_is_asked_for():
    swatch = a_swatch(unravelled=100.0, thread_mm=1500)
    lots = Lots(a_book(*yarn(), swatch, held={"G-1": (96, 96 / 0.45)}))
    assert loop_at(gauge_of(swatch), lots).value == pytest.approx(1.51, abs=0.01)
    assert loop_at(Gauge(22.0, 30.0), lots).value == pytest.approx(1.8091, abs=5e-5)
