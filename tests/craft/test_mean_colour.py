"""A patch of a picture blended in light, not in the numbers of a screen."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.craft.mean_colour import light, mean_colour, screen

CHANNEL = st.integers(0, 255)
PIXEL = st.tuples(CHANNEL, CHANNEL, CHANNEL)


@pytest.mark.published
@pytest.mark.parametrize(
    ("number", "linear"),
    [(0, 0.0), (10, 0.003035), (11, 0.003347), (128, 0.215861), (188, 0.502886), (255, 1.0)],
)
def test_light_of_a_number(number: int, linear: float) -> None:
    """IEC 61966-2-1, its two branches: 10/255/12.92, and ((v + 0.055)/1.055)^2.4 above."""
    assert light(number) == pytest.approx(linear, abs=1e-6)


def test_half_black_half_white_is_half_the_light() -> None:
    """1.055 × 0.5^(1/2.4) − 0.055 = 0.73536, of 255 = 187.5: not 127.5, the mean of the numbers."""
    assert mean_colour([(0, 0, 0), (255, 255, 255)]) == "#bcbcbc"


def test_channels_are_blended_apart() -> None:
    assert mean_colour([(255, 0, 10), (255, 0, 10), (255, 0, 10)]) == "#ff000a"


def test_a_patch_of_nothing_has_no_colour() -> None:
    with pytest.raises(ValueError, match="at least one"):
        mean_colour([])


@pytest.mark.property
@given(CHANNEL)
def test_there_and_back(number: int) -> None:
    assert screen(light(number)) == number


@pytest.mark.property
@given(st.lists(PIXEL, min_size=1, max_size=40))
def test_the_mean_lies_between_the_darkest_and_the_brightest(pixels: list) -> None:
    mean = mean_colour(pixels)
    for at, channel in enumerate(zip(*pixels, strict=True)):
        assert min(channel) <= int(mean[1 + 2 * at : 3 + 2 * at], 16) <= max(channel)
