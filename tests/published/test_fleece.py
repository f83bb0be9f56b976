"""Fleeces as spinners and mills published their weights."""

import pytest

from app.craft.breeds import typical_yield
from app.craft.counts import POUND_G
from app.craft.figure import Figure
from app.craft.fleece import Losses, prepared_from, share_kept

pytestmark = pytest.mark.published


def test_half_a_fleece_from_raw_to_top():
    """A spinner's published measurement, 2017: 3.0 lb raw, 1.7 lb washed (56.7 %), 673 g of top
    and 109 g of comb waste (together 782 g against 771: rounding and moisture)."""
    raw, washed = 3.0 * POUND_G, 1.7 * POUND_G
    assert washed / raw == pytest.approx(0.567, abs=0.0005)
    combing = 109 / (673 + 109)
    losses = Losses(skirt=0.0, prepare=combing, spin=0.0, finish=0.0)
    top = prepared_from(Figure(raw, "g"), "raw", Figure(washed / raw, "share"), losses)
    assert top.value == pytest.approx(673, rel=0.02)
    assert top.value / raw == pytest.approx(0.495, abs=0.015)


@pytest.mark.parametrize(
    ("raw_kg", "yarn_kg", "overall"), [(1.3, 1.0, 0.769), (1.45, 1.0, 0.690), (1.2, 0.8, 0.667)]
)
def test_a_wool_works_printed_yields_are_above_a_hand_spinners(raw_kg, yarn_kg, overall):
    """Crossbred, Merino and sixteen balls of 50 g: what a mill keeps of the greasy weight is more
    than the usual losses by hand leave at the top of the breed's yield."""
    assert yarn_kg / raw_kg == pytest.approx(overall, abs=0.0005)
    by_hand = Losses(skirt=0.15, prepare=0.07, spin=0.03, finish=0.02)
    assert share_kept("raw", Figure(0.77, "share"), by_hand).value < overall


@pytest.mark.parametrize(
    ("breed", "low", "high"),
    [
        ("Corriedale", 50, 60),
        ("Columbia", 45, 55),
        ("Border Leicester", 60, 70),
        ("Rambouillet", 35, 55),
        ("Lincoln", 55, 80),
        ("Merino", 45, 70),
    ],
)
def test_printed_yields_lie_in_the_range(breed, low, high):
    """Oklahoma State University and printed breed tables; where they disagree, the whole span."""
    typical = typical_yield(breed).figure
    assert typical.value - typical.u <= low
    assert typical.value + typical.u >= high
