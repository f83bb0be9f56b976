"""The guide's own example of an uncertainty budget, worked through figures (JCGM 100:2008, H.1):
an end gauge of 50 mm compared with a standard."""

import pytest

from app.craft.figure import Figure

pytestmark = pytest.mark.published

NM = 1e-6
"""A nanometre in mm."""


def length_of_the_gauge() -> Figure:
    """l = l_S + d − l_S·(δα·θ + α_S·δθ), with the inputs as printed."""
    standard = Figure(50.000623, "mm", {"standard": 25e-6})
    difference = Figure(215e-6, "mm", {"difference": 9.7e-6})
    alpha = Figure(11.5e-6, "1/K", {"expansion": 1.2e-6})
    theta = Figure(-0.1, "K", {"temperature": 0.41})
    delta_alpha = Figure(0.0, "1/K", {"difference of expansion": 0.58e-6})
    delta_theta = Figure(0.0, "K", {"difference of temperature": 0.029})
    strain = delta_alpha.times(theta, "1") + alpha.times(delta_theta, "1")
    return standard + difference - standard.times(strain, "mm")


def test_the_length():
    assert length_of_the_gauge().value == pytest.approx(50.000838, abs=5e-7)


@pytest.mark.parametrize(
    ("cause", "printed_nm"),
    [
        ("standard", 25),
        ("difference", 9.7),
        ("difference of expansion", 2.9),
        ("difference of temperature", 16.6),
        ("expansion", 0),
        ("temperature", 0),
    ],
)
def test_the_contributions(cause, printed_nm):
    part = length_of_the_gauge().causes[cause]
    assert abs(part) / NM == pytest.approx(printed_nm, abs=0.1)


def test_the_combined_uncertainty():
    """Printed 32 nm; 31.7106 nm before rounding."""
    assert length_of_the_gauge().u / NM == pytest.approx(31.7106, abs=5e-3)
