import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.craft.relaxation import RELAXED, after_washing, washing_steps

GAUGE = st.floats(5, 60)


def test_an_unwashed_gauge_of_22_by_30_once_washed():
    """22 × 4.1/3.8 and 30 × 5.3/5.0."""
    stitches, rows = after_washing(22, 30)
    assert stitches.value == pytest.approx(23.737, abs=5e-4)
    assert rows.value == pytest.approx(31.8)
    assert stitches.u == pytest.approx(0.05 * stitches.value)


@pytest.mark.property
@given(GAUGE, GAUGE)
def test_washing_keeps_the_loop_and_packs_it_closer(stitches, rows):
    """The same l by Munden's law before and after, within the rounding of 21.6."""
    across, along = after_washing(stitches, rows)
    growth = across.value * along.value / (stitches * rows)
    assert growth == pytest.approx(21.6 / 19.0, rel=0.01)


def test_its_working_shows_the_constants():
    across, along = washing_steps(22, 30)
    assert across.how == "22 × 4.1 ÷ 3.8"
    assert along.how == "30 × 5.3 ÷ 5.0"
    assert across.value == after_washing(22, 30)[0].value
    assert "Munden" in along.source


def test_a_fabric_only_ever_packs_closer():
    areas = [state.area for state in RELAXED.values()]
    assert areas == sorted(areas)
    assert all(state.source for state in RELAXED.values())


def test_no_gauge_no_answer():
    with pytest.raises(ValueError, match="stitches in 10 cm must be more"):
        after_washing(0, 30)
    with pytest.raises(ValueError, match="rows in 10 cm must be more"):
        after_washing(22, 0)
