"""Our propagation against the `uncertainties` package, on the trade's own sums."""

from math import pi

import pytest
from hypothesis import given
from hypothesis import strategies as st
from uncertainties import ufloat
from uncertainties.umath import sqrt

from app.craft.chain import Making, backwards
from app.craft.cloth import square_metre
from app.craft.figure import Figure
from app.craft.fleece import LOSS_U, Losses
from app.craft.gauge import counted
from app.craft.loop_ways import by_gauge, by_needle, by_thread, by_weight, loop_from
from app.craft.needle_choice import needle_for
from app.craft.needles import predict_gauge
from app.craft.reel import scale_mass, skein_length

GAUGE = st.floats(8, 40)


def same(ours, theirs):
    assert ours.value == pytest.approx(theirs.nominal_value, rel=1e-9)
    assert ours.u == pytest.approx(theirs.std_dev, rel=1e-6, abs=1e-12)


@pytest.mark.property
@given(st.floats(0.5, 3), st.integers(10, 400), st.floats(10, 300))
def test_linear_density_of_a_skein(girth, turns, grams):
    length, mass = skein_length(girth, turns, finished=True), scale_mass(grams)
    whole = girth * turns
    reel = ufloat(whole, whole * 0.005) + ufloat(0, girth / 2 / 3**0.5)
    same(mass.per(length, "g/m"), ufloat(grams, 0.5 / 3**0.5) / reel)


@pytest.mark.property
@given(st.floats(1, 40), st.integers(200, 5000), st.floats(50, 2000), GAUGE, GAUGE)
def test_grams_of_a_square_metre_from_a_weighed_swatch(grams, stitches, tex, across, along):
    yarn = Figure(tex, "tex", {"grist": tex * 0.03})
    cloth = square_metre(across, along, by_weight(grams, stitches, yarn).loop, yarn)
    mass, density = ufloat(grams, 0.5 / 3**0.5), ufloat(tex, tex * 0.03)
    loop = 1e5 * mass / (density * stitches)
    metres = loop * across * along
    same(cloth.m_per_m2, metres)
    same(cloth.g_per_m2, metres * density / 1000)


@pytest.mark.property
@given(st.floats(20, 60), GAUGE, GAUGE, st.floats(2, 10), st.floats(5, 25))
def test_all_ways_to_the_loop_combined(thread, across, along, needle, wraps):
    ways = [by_thread(thread, 20), by_gauge(across, along), by_needle(needle, wraps)]
    theirs = [ufloat(way.loop.value, way.loop.u) for way in ways]
    weights = [1 / one.std_dev**2 for one in theirs]
    mean = sum(w * one for w, one in zip(weights, theirs, strict=True)) / sum(weights)
    same(loop_from(*ways).loop, mean)


@pytest.mark.property
@given(st.floats(2, 10), st.floats(5, 25), st.booleans())
def test_gauge_and_needle_by_the_hand(needle, wraps, washed):
    hand, ratio = ufloat(1, 0.1), ufloat(1.36, 0.08)
    area = 21.6 if washed else 19.0
    ahead = predict_gauge(needle, wraps, washed=washed)
    loop = hand * pi * (needle + 25.4 / wraps) / 10
    same(ahead.loop, loop)
    same(ahead.stitches, 10 * sqrt(area / ratio) / loop)
    same(ahead.rows, 10 * sqrt(area * ratio) / loop)
    stitches = ahead.stitches.value
    wanted = 10 * (10 * sqrt(area / ratio) / stitches) / (hand * pi) - 25.4 / wraps
    same(needle_for(stitches, wraps, washed=washed).needle, wanted)


@pytest.mark.property
@given(st.floats(10, 60), st.floats(50, 300))
def test_a_gauge_counted_on_a_swatch(count, width):
    theirs = 100 * ufloat(count, 0.5 / 3**0.5) / ufloat(width, 1.0)
    same(counted(count, width, "st/10 cm", "a"), theirs)


LOST = st.floats(0.01, 0.4)


@pytest.mark.property
@given(st.floats(10, 3000), LOST, LOST, LOST, LOST, st.floats(0.4, 0.8))
def test_raw_wool_through_every_loss(metres, skirt, prepare, spin, finish, scoured):
    making = Making(
        450, 2, Losses(skirt, prepare, spin, finish), Figure(scoured, "share", {"yield": 0.05})
    )
    kept = ufloat(scoured, 0.05)
    for step, lost in (("skirt", skirt), ("prepare", prepare), ("spin", spin), ("finish", finish)):
        kept = kept * (1 - ufloat(lost, LOSS_U[step]))
    same(backwards(metres, making).stages["raw"], metres * 0.45 / kept)
