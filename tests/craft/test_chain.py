from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.craft.chain import Making, backwards, forwards
from app.craft.figure import Figure
from app.craft.fleece import Losses

WORKED = Making(
    450,
    2,
    Losses(skirt=0.15, prepare=0.10, spin=0.03, finish=0.0),
    Figure(0.60, "share", {"yield": 0.05}),
    shrink=0.08,
    take_up=0.05,
)

LOST = st.floats(0, 0.5)
MAKING = st.builds(
    Making,
    st.floats(20, 3000),
    st.integers(1, 6),
    st.builds(Losses, skirt=LOST, prepare=LOST, spin=LOST, finish=LOST),
    st.floats(0.3, 1.0).map(lambda part: Figure(part, "share", {"yield": 0.05})),
    shrink=LOST,
    take_up=LOST,
)


def test_the_worked_chain_backwards():
    """400 m at 450 tex, two-ply, 8 % shrinkage, 5 % take-up."""
    chain = backwards(400, WORKED)
    assert chain.yarn_g.value == pytest.approx(180)
    assert chain.plied_m.value == pytest.approx(434.78, abs=0.005)
    assert chain.single_m.value == pytest.approx(915.3, abs=0.05)
    assert chain.single_tex.value == pytest.approx(196.65, abs=0.005)
    wanted = {"prepared": 185.6, "scoured": 206.2, "skirted": 343.6, "raw": 404.3}
    assert {name: g.value for name, g in chain.stages.items()} == {
        name: pytest.approx(g, abs=0.05) for name, g in wanted.items()
    }


def test_the_raw_wool_is_as_unsure_as_the_yield():
    raw = backwards(400, WORKED).stages["raw"]
    assert raw.chief_cause == "yield"
    assert raw.causes["yield"] == pytest.approx(-raw.value * 0.05 / 0.60)


def test_the_worked_chain_forwards():
    """404.3 g raw become the same 400 m."""
    chain = forwards(Figure(404.285, "g"), "raw", WORKED)
    assert chain.finished_m.value == pytest.approx(400, abs=0.01)
    assert chain.single_m.value == pytest.approx(915.3, abs=0.05)
    assert chain.stages["prepared"].value == pytest.approx(185.57, abs=0.01)


def test_the_working_of_a_chain():
    steps = {step.what: step for step in backwards(400, WORKED).steps}
    assert steps["Finished yarn"].how == "400.0 m × 450.0 tex"
    assert steps["To ply"].how == "400.0 m ÷ 0.92"
    assert steps["Singles"].how == "434.8 m ÷ 0.95 × 2 singles"
    assert steps["Wool, raw"].how == "180.0 g of yarn ÷ 0.4452 kept of it"
    assert steps["Wool, raw"].u > 0


def test_what_the_finish_takes_comes_off_the_bobbins_first():
    greasy = Making(450, 2, Losses(0.15, 0.10, 0.03, 0.25), Figure(0.9, "share"))
    assert backwards(400, greasy).spun_g.value == pytest.approx(240)


def test_a_chain_ply_takes_three_lengths_from_one_bobbin():
    chained = Making(450, 3, WORKED.losses, WORKED.yield_share, chain_plied=True, take_up=0.05)
    chain = backwards(100, chained)
    assert chain.single_m.value == pytest.approx(315.79, abs=0.005)
    assert "one bobbin, three times" in chain.steps[3].how


@pytest.mark.property
@given(MAKING, st.floats(1, 10_000))
def test_there_and_back(making, metres):
    wanted = backwards(metres, making)
    again = forwards(wanted.stages["raw"], "raw", making)
    assert again.finished_m.value == pytest.approx(metres, rel=1e-9)
    assert again.stages["prepared"].value == pytest.approx(wanted.stages["prepared"].value)


@pytest.mark.property
@given(MAKING, st.floats(1, 10_000))
def test_mass_is_kept_but_for_what_is_named_as_lost(making, metres):
    chain = backwards(metres, making)
    on_the_bobbins = chain.single_m.value * chain.single_tex.value / 1000
    assert on_the_bobbins == pytest.approx(chain.spun_g.value)
    assert chain.yarn_g.value == pytest.approx(on_the_bobbins * (1 - making.losses.finish))
    grams = [chain.yarn_g.value, *(stage.value for stage in chain.stages.values())]
    assert all(later >= earlier * (1 - 1e-12) for earlier, later in pairwise(grams))


@pytest.mark.parametrize(
    ("call", "words"),
    [
        (lambda: backwards(0, WORKED), "finished length in m must be more"),
        (lambda: forwards(Figure(100, "g"), "felted", WORKED), "no state of wool"),
        (lambda: Making(0, 2, WORKED.losses, WORKED.yield_share), "linear density in tex"),
        (lambda: Making(450, 0, WORKED.losses, WORKED.yield_share), "the number of plies"),
        (
            lambda: Making(450, 2, WORKED.losses, WORKED.yield_share, chain_plied=True),
            "three plies, not 2",
        ),
        (lambda: backwards(1, Making(450, 2, WORKED.losses, WORKED.yield_share, 1.0)), "shrinkage"),
    ],
)
def test_outside_the_domain(call, words):
    with pytest.raises(ValueError, match=words):
        call()
