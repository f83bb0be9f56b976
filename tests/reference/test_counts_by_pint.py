"""Counts against pint's own textile units, which nobody here wrote."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pint import UnitRegistry

from app.craft.counts import from_tex, to_tex
from app.craft.units import base_units

UNITS = UnitRegistry()
DIRECT = {
    "tex": "tex",
    "dtex": "dtex",
    "denier": "denier",
    "jute": "jute",
    "grains per yard": "grain / yard",
}
INDIRECT = {
    "metric": "number_meter",
    "cotton": "number_english",
    "worsted": "(560 yard) / pound",
    "linen": "(300 yard) / pound",
    "Yorkshire skein": "(256 yard) / pound",
    "woollen run": "(1600 yard) / pound",
    "Galashiels cut": "(300 yard) / (24 ounce)",
    "French cotton": "(1000 meter) / (500 gram)",
    "yd/lb": "yard / pound",
    "yd/oz": "yard / ounce",
    "m/100 g": "meter / (100 gram)",
    "yd/100 g": "yard / (100 gram)",
}
NUMBER = st.floats(0.01, 1e5)


@pytest.mark.property
@given(st.sampled_from(sorted(DIRECT)), NUMBER)
def test_direct_counts(system, number):
    theirs = (number * UNITS(DIRECT[system])).to("tex").magnitude
    assert to_tex(system, number) == pytest.approx(theirs, rel=1e-12)
    assert from_tex(system, theirs) == pytest.approx(number, rel=1e-12)


@pytest.mark.property
@given(st.sampled_from(sorted(INDIRECT)), NUMBER)
def test_indirect_counts(system, number):
    theirs = (1 / (number * UNITS(INDIRECT[system]))).to("tex").magnitude
    assert to_tex(system, number) == pytest.approx(theirs, rel=1e-12)
    assert from_tex(system, theirs) == pytest.approx(number, rel=1e-12)


@pytest.mark.parametrize("word", ["g", "kg", "oz", "lb"])
def test_masses_as_typed(word):
    theirs = UNITS.Quantity(1, word).to("mg").magnitude
    assert float(base_units(word, "mass")) == pytest.approx(theirs, rel=1e-12)


@pytest.mark.parametrize("word", ["mm", "cm", "m", "in", "ft", "yd"])
def test_lengths_as_typed(word):
    theirs = UNITS.Quantity(1, word).to("mm").magnitude
    assert float(base_units(word, "length")) == pytest.approx(theirs, rel=1e-12)
