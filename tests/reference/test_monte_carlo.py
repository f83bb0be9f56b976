"""Linear propagation against drawing every cause at random (JCGM 101:2008).

20,000 draws tell a standard deviation to half a percent; sums that are not straight lines may
differ by more, and how much is said beside each.
"""

import random
from math import pi, sqrt
from statistics import fmean, stdev

import pytest

from app.craft.chain import Making, backwards
from app.craft.figure import Figure
from app.craft.fleece import LOSS_U, Losses
from app.craft.loop_ways import by_gauge, by_weight, loop_from
from app.craft.needle_choice import needle_for
from app.craft.needles import predict_gauge
from app.craft.reel import skein_length

DRAWS = 20_000


def drawn(make):
    """Mean and standard deviation of a sum that takes a source of chance."""
    chance = random.Random(11)
    found = [make(chance) for _ in range(DRAWS)]
    return fmean(found), stdev(found)


def test_a_reel_before_finishing():
    """Half a turn and pile-up drawn from their rectangles, the girth from its bell: a straight
    sum, so to 1 %."""
    length = skein_length(1.5, 142, finished=False)
    mean, sd = drawn(
        lambda chance: (
            1.5 * 142 * (1 + chance.gauss(0, 0.005) + chance.uniform(-0.05, 0.05))
            + chance.uniform(-0.75, 0.75)
        )
    )
    assert length.value == pytest.approx(mean, rel=0.001)
    assert length.u == pytest.approx(sd, rel=0.02)


def test_the_stitches_a_hand_of_ten_percent_gives():
    """A quotient of 10 %: the mean is off by a percent, the width by three."""
    ahead = predict_gauge(4, 12)
    around = pi * (4 + 25.4 / 12) / 10

    def stitches(chance):
        ratio = chance.gauss(1.36, 0.08)
        return 10 * sqrt(21.6 / ratio) / (chance.gauss(1, 0.1) * around)

    mean, sd = drawn(stitches)
    assert ahead.stitches.value == pytest.approx(mean, rel=0.02)
    assert ahead.stitches.u == pytest.approx(sd, rel=0.06)


def test_the_needle_for_a_gauge():
    choice = needle_for(22, 12)

    def needle(chance):
        loop = 10 * sqrt(21.6 / chance.gauss(1.36, 0.08)) / 22
        return 10 * loop / (chance.gauss(1, 0.1) * pi) - 25.4 / 12

    mean, sd = drawn(needle)
    assert choice.needle.value == pytest.approx(mean, abs=0.1 * choice.needle.u)
    assert choice.needle.u == pytest.approx(sd, rel=0.06)


def test_two_ways_to_the_loop_weighed_together():
    """Weights are fixed by what was expected, as the maker's would be."""
    tex = Figure(450, "tex", {"grist": 9.0})
    weight, gauge = by_weight(10, 1228, tex), by_gauge(22, 30)
    found = loop_from(weight, gauge)
    share = found.combined.weights["weight"]

    def loop(chance):
        by_scale = 1e5 * (10 + chance.uniform(-0.5, 0.5)) / (chance.gauss(450, 9) * 1228)
        by_law = gauge.loop.value * chance.gauss(1, 0.07)
        return share * by_scale + (1 - share) * by_law

    mean, sd = drawn(loop)
    assert found.loop.value == pytest.approx(mean, rel=0.002)
    assert found.loop.u == pytest.approx(sd, rel=0.02)


def test_raw_wool_for_a_jumper():
    """Five shares multiplied and divided by: 11 % wide, so the linear width is a few percent
    short of the drawn one, and the drawn mean a percent above."""
    making = Making(
        450, 2, Losses(0.15, 0.10, 0.03, 0.02), Figure(0.60, "share", {"yield": 0.05}), 0.08, 0.05
    )
    raw = backwards(1000, making).stages["raw"]

    def wool(chance):
        kept = chance.gauss(0.60, 0.05)
        for step, lost in (("skirt", 0.15), ("prepare", 0.10), ("spin", 0.03), ("finish", 0.02)):
            kept *= 1 - chance.gauss(lost, LOSS_U[step])
        return 450 / kept

    mean, sd = drawn(wool)
    assert raw.value == pytest.approx(mean, rel=0.02)
    assert raw.value < mean
    assert raw.u == pytest.approx(sd, rel=0.06)
