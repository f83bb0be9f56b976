from math import sqrt

import pytest

from app.craft.figure import Figure, UnitMismatch, total
from app.craft.reel import (
    SHRINK_PRINTED,
    rectangular,
    scale_mass,
    shrink_default,
    shrink_measured,
    skein_length,
)


def test_the_skein_of_the_handbook():
    """142 turns of 1.5 m measured finished: 0.5 % of 213 m, and half of 1.5 m over √3."""
    length = skein_length(1.5, 142, finished=True, skein="G-014")
    assert length.value == 213
    assert length.unit == "m"
    assert length.causes == {
        "reel of 1.50 m": pytest.approx(1.065),
        "half a turn, G-014": pytest.approx(0.75 / sqrt(3)),
    }


def test_yarn_not_yet_finished_is_as_long_but_less_sure():
    loose = skein_length(1.5, 142, finished=False)
    assert loose.value == 213
    assert loose.chief_cause == "pile-up and stretch on the reel"
    assert loose.causes["pile-up and stretch on the reel"] == pytest.approx(213 * 0.05 / sqrt(3))


def test_skeins_share_the_reel_but_not_the_half_turn():
    """Four skeins: the girth adds up four-fold, the half turns only as a root."""
    skeins = [skein_length(1.5, 100, True, skein=f"G-{n}") for n in range(4)]
    whole = total(skeins, "m")
    assert whole.causes["reel of 1.50 m"] == pytest.approx(4 * 0.75)
    half_turns = sqrt(4) * 0.75 / sqrt(3)
    assert whole.u == pytest.approx(sqrt(3.0**2 + half_turns**2))


def test_skeins_of_two_reels_share_nothing():
    first = skein_length(1.5, 100, True, "G-1")
    assert first.covariance(skein_length(1.83, 100, True, "G-2")) == 0
    assert first.covariance(skein_length(1.5, 50, True, "G-3")) == pytest.approx(0.75 * 0.375)


def test_half_a_division_of_the_scale():
    assert scale_mass(96).u == pytest.approx(0.5 / sqrt(3))
    assert scale_mass(96, division_g=5, skein="G-014").causes == {
        "the scale's half division, G-014": pytest.approx(2.5 / sqrt(3))
    }
    assert scale_mass(0).value == 0


def test_a_rectangle_has_a_third_of_its_square():
    assert rectangular(3) == pytest.approx(sqrt(3))


@pytest.mark.published
def test_the_wide_shrinkage_reaches_the_printed_skeins():
    """Spinners' published measurements: 2014, 600 yd → 433 yd; 2008, 13 to 17 %. Both lie within
    two standard uncertainties of the default."""
    shrink = shrink_default()
    printed = 1 - 433 / 600
    assert printed == pytest.approx(0.278, abs=0.001)
    assert abs(printed - shrink.value) < 2 * shrink.u
    assert all(abs(share - shrink.value) < 2 * shrink.u + 1e-9 for share in SHRINK_PRINTED)


@pytest.mark.parametrize(
    ("call", "words"),
    [
        (lambda: skein_length(0, 142, True), "the girth of a reel must be more than zero"),
        (lambda: skein_length(1.5, 0, True), "the number of turns must be more than zero"),
        (lambda: scale_mass(-1), "a mass cannot be less than zero"),
        (lambda: scale_mass(10, 0), "the scale's division must be more than zero"),
    ],
)
def test_outside_the_domain(call, words):
    with pytest.raises(ValueError, match=words):
        call()


def test_what_a_skein_lost_in_finishing():
    """300 turns before and 217 after on one reel: 27.8 %, and the reel's own error cancels."""
    before = skein_length(1.83, 300, finished=True, skein="before")
    after = skein_length(1.83, 216.5, finished=True, skein="after")
    lost = shrink_measured(before, after)
    assert lost.value == pytest.approx(1 - 216.5 / 300)
    assert lost.causes["reel of 1.83 m"] == pytest.approx(0, abs=1e-12)
    assert lost.u == pytest.approx(sqrt(1 + 0.7217**2) * 0.5 / sqrt(3) / 300, rel=1e-3)
    assert lost.u < shrink_default().u


def test_a_skein_that_grew_lost_less_than_nothing():
    assert shrink_measured(Figure(200, "m"), Figure(204, "m")).value == pytest.approx(-0.02)


def test_lengths_in_another_unit_or_none_are_refused():
    with pytest.raises(UnitMismatch, match="a figure in m is wanted, not in cm"):
        shrink_measured(Figure(20_000, "cm"), Figure(190, "m"))
    with pytest.raises(ValueError, match="the length before finishing must be more"):
        shrink_measured(Figure(0, "m"), Figure(190, "m"))
    with pytest.raises(ValueError, match="the length after finishing must be more"):
        shrink_measured(Figure(200, "m"), Figure(0, "m"))
