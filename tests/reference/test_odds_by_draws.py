"""The odds of a plan against drawing what is measured and knit at random (JCGM 101:2008).

Linear odds hold within two points where the answer is one sum and no source is wider than 10 %.
Where roles must suffice together, and where a left-over is cut at zero, a sum of margins must not
be taken for the answer: there the draws and the sum differ, and the reckoning goes with the draws.
"""

from math import sqrt
from statistics import NormalDist

import numpy as np
import pytest

from app.book.gauge import Gauge
from app.book.plan import Losses, RoleYarn
from app.book.shape import Counted, Run, Runs, Strand
from app.planning import reckon
from tests.books import a_book, a_part, a_plan, a_promise, a_reading, a_skein, a_yarn

DRAWS = 200_000
TWO_POINTS = 0.02
NO_LOSSES = Losses(0, 0, 0.0, 0)
LOOP_CM = sqrt(21.6 / (2.2 * 3.0))
GREY, CREAM = "grey two-ply", "cream"


def drawn(seed):
    return np.random.default_rng(seed)


def by_label(code, metres):
    return a_reading(
        code, round(1000 * metres), kind="length", id=f"{code} taped", instrument="tape"
    )


def a_tube(skeins, rows=120, shape_u_pct=0.0, in_grams=False):
    """229 stitches by so many rows at 22 × 30, from skeins measured by tape, or only weighed."""
    part = a_part(shape=Counted(229, rows), shape_u_pct=shape_u_pct)
    codes = {f"G-{n}": metres for n, metres in enumerate(skeins, 1)}
    held = {one: (m * 0.45, 0.0 if in_grams else m) for one, m in codes.items()}
    yarn = a_yarn(target_tex=450.0)
    promises = [a_promise(one, round(1000 * m)) for one, m in codes.items()]
    shelf = [a_skein(one) for one in codes]
    lengths = [] if in_grams else [by_label(one, m) for one, m in codes.items()]
    plan = a_plan(losses=NO_LOSSES, gauge=Gauge(22.0, 30.0))
    return a_book(yarn, plan, part, *shelf, *lengths, *promises, held=held)


def the_plan(book):
    return reckon(book).plan("pullover")


@pytest.mark.parametrize("rows", [100, 112, 118, 124, 130])
@pytest.mark.parametrize("shape_u_pct", [0.0, 5.0, 10.0])
def test_one_sum_of_taped_skeins_and_a_product_of_gauge_and_shape(rows, shape_u_pct):
    """Yarn in a stitch ± 7 %, shape up to ± 10 %, each skein ± 2 % for itself."""
    book = a_tube((213.0, 200.0, 100.0), rows, shape_u_pct)
    chance = drawn(rows)
    loop = LOOP_CM * chance.normal(1, 0.07, DRAWS)
    shape = chance.normal(1, shape_u_pct / 100, DRAWS)
    supply = sum(m * chance.normal(1, 0.02, DRAWS) for m in (213.0, 200.0, 100.0))
    odds = float(np.mean(supply >= 229 * rows * loop / 100 * shape))
    assert the_plan(book).odds == pytest.approx(odds, abs=TWO_POINTS)


ONLY_WEIGHED = [430.0, 470.0, 500.0, 530.0, 580.0]


@pytest.mark.parametrize("metres", ONLY_WEIGHED)
def test_one_sum_of_skeins_that_were_only_weighed(metres):
    """Metres of a gram by a grist that was aimed at, ± 10 % and common to the skeins, drawn as a
    factor of a maker is: log-normal."""
    chance = drawn(round(metres))
    supply = metres * np.exp(chance.normal(0, 0.10, DRAWS))
    need = 229 * 120 * LOOP_CM / 100 * chance.normal(1, 0.07, DRAWS)
    odds = the_plan(a_tube((metres / 2, metres / 2), in_grams=True)).odds
    assert odds == pytest.approx(float(np.mean(supply >= need)), abs=TWO_POINTS)


@pytest.mark.parametrize("metres", ONLY_WEIGHED)
def test_a_quotient_is_no_sum_and_may_stray_a_little_further(metres):
    """The same with the grist itself drawn from a bell: grams divided by it are skewed."""
    chance = drawn(round(metres))
    supply = metres / chance.normal(1, 0.10, DRAWS)
    need = 229 * 120 * LOOP_CM / 100 * chance.normal(1, 0.07, DRAWS)
    odds = the_plan(a_tube((metres / 2, metres / 2), in_grams=True)).odds
    assert odds == pytest.approx(float(np.mean(supply >= need)), abs=0.03)


def a_striped(grey, cream):
    """Three rows in four of grey, one of cream, both to one gauge."""
    strands = (Strand("main", 0.75), Strand("contrast", 0.25))
    part = a_part(shape=Runs((Run(120, 229, 229, "stocking stitch", None, strands),)))
    yarns = (RoleYarn("main", GREY), RoleYarn("contrast", CREAM))
    promises = [
        a_promise("G-1", round(1000 * grey)),
        a_promise("C-1", round(1000 * cream), role="contrast"),
    ]
    lengths = [by_label("G-1", grey), by_label("C-1", cream)]
    shelf = [a_yarn(), a_yarn(CREAM), a_skein(), a_skein("C-1", CREAM)]
    held = {"G-1": (grey * 0.45, grey), "C-1": (cream * 0.45, cream)}
    plan = a_plan(losses=NO_LOSSES, yarns=yarns)
    return a_book(*shelf, plan, part, *lengths, *promises, held=held)


def test_roles_that_must_suffice_together_are_not_one_sum():
    """The gauge is common, the skeins are not: the sum of both margins would promise more."""
    plan = the_plan(a_striped(390.0, 126.0))
    chance = drawn(7)
    loop = LOOP_CM * chance.normal(1, 0.07, DRAWS)
    knit = 229 * 120 / 100 * loop
    grey, cream = 390 * chance.normal(1, 0.02, DRAWS), 126 * chance.normal(1, 0.02, DRAWS)
    together = float(np.mean((grey >= 0.75 * knit) & (cream >= 0.25 * knit)))
    summed = plan.groups[0].supply + plan.groups[1].supply
    margin = summed - plan.groups[0].need - plan.groups[1].need
    as_one_sum = NormalDist().cdf(margin.value / margin.u)
    assert plan.odds == pytest.approx(together, abs=TWO_POINTS)
    assert as_one_sum - together > TWO_POINTS
    assert together - plan.groups[0].odds * plan.groups[1].odds > TWO_POINTS


@pytest.mark.parametrize("metres", [480.0, 497.0, 520.0])
def test_a_left_over_is_cut_at_zero(metres):
    """What is left is the margin where there is one, and nothing where there is none."""
    plan = the_plan(a_tube((metres,)))
    chance = drawn(round(metres))
    need = 229 * 120 * LOOP_CM / 100 * chance.normal(1, 0.07, DRAWS)
    margin = metres * chance.normal(1, 0.02, DRAWS) - need
    left = float(np.mean(np.maximum(margin, 0.0)))
    assert plan.left_m == pytest.approx(left, abs=0.5)
    assert plan.left_m - (plan.groups[0].supply - plan.groups[0].need).value > 2.0
