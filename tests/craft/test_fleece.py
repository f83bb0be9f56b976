import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.craft.figure import Figure
from app.craft.fleece import (
    STEPS,
    Losses,
    plied_length,
    prepared_from,
    share_kept,
    share_scoured,
    single_length,
    single_tex,
    steps_from,
    wool_for,
    yarn_from,
    yarn_mass,
)

WORKED = Losses(skirt=0.15, prepare=0.10, spin=0.03, finish=0.0)
YIELD = Figure(0.60, "share", {"yield": 0.05})
DRY = Figure(0.0, "share")

LOST = st.floats(0, 0.6)
LOSSES = st.builds(Losses, skirt=LOST, prepare=LOST, spin=LOST, finish=LOST)
STATE = st.sampled_from(sorted(STEPS))


def test_the_lengths_of_the_worked_chain():
    """400 m at 450 tex, two-ply, 8 % shrinkage, 5 % take-up."""
    assert yarn_mass(400, 450) == pytest.approx(180)
    plied = plied_length(400, 0.08)
    single = single_length(plied, 0.05)
    assert plied == pytest.approx(434.78, abs=0.005)
    assert single == pytest.approx(457.67, abs=0.005)
    assert 2 * single == pytest.approx(915.3, abs=0.05)
    assert single_tex(180, 2, single) == pytest.approx(196.65, abs=0.005)


@pytest.mark.parametrize(
    ("state", "grams"), [("carded", 185.6), ("scoured", 206.2), ("skirted", 343.6), ("raw", 404.3)]
)
def test_the_masses_of_the_worked_chain(state, grams):
    assert wool_for(Figure(180, "g"), state, YIELD, WORKED).value == pytest.approx(grams, abs=0.05)


def test_forwards_is_backwards_by_hand():
    """1000 g raw × 0.85 × 0.60 × 0.90 × 0.97."""
    assert yarn_from(Figure(1000, "g"), "raw", YIELD, WORKED).value == pytest.approx(445.23)
    assert prepared_from(Figure(1000, "g"), "raw", YIELD, WORKED).value == pytest.approx(459.0)


def test_prepared_fibre_is_all_there_already():
    assert prepared_from(Figure(500, "g"), "combed", YIELD, WORKED) == Figure(500, "g")


def test_drying_wool_is_scoured_wool_and_water():
    wet = yarn_from(Figure(1000, "g"), "drying", YIELD, WORKED)
    assert wet.value == pytest.approx(1000 * 0.75 * 0.90 * 0.97)
    assert wet.chief_cause == "water in the drying wool"
    dry = share_kept("drying", YIELD, WORKED, water=DRY)
    assert dry.value == pytest.approx(share_kept("scoured", YIELD, WORKED).value)


def test_the_weight_on_the_scale_keeps_its_own_uncertainty():
    now = Figure(1000, "g", {"the scale's half division": 3.0})
    yarn = yarn_from(now, "raw", YIELD, WORKED)
    assert yarn.causes["the scale's half division"] == pytest.approx(3 * 0.44523)
    assert yarn.causes["yield"] == pytest.approx(445.23 * 0.05 / 0.60)


def test_chain_plying_takes_three_lengths_from_one_bobbin():
    assert single_length(100, 0.05, chain_plied=True) == pytest.approx(315.79, abs=0.005)


@pytest.mark.property
@given(STATE, LOSSES, st.floats(0.3, 1.0), st.floats(1, 1e5))
def test_what_is_asked_of_the_fleece_makes_the_yarn(state, losses, scoured, grams):
    wool = wool_for(Figure(grams, "g"), state, Figure(scoured, "share"), losses)
    assert yarn_from(wool, state, Figure(scoured, "share"), losses).value == pytest.approx(grams)
    assert wool.value >= grams * (1 - 1e-12)


@pytest.mark.property
@given(LOSSES, st.floats(0.3, 1.0))
def test_the_further_the_wool_has_come_the_more_of_it_stays(losses, scoured):
    kept = [
        share_kept(state, Figure(scoured, "share"), losses).value
        for state in ("raw", "skirted", "scoured", "carded")
    ]
    assert kept == sorted(kept)


@pytest.mark.property
@given(st.floats(1, 1e5), st.floats(0, 0.5), st.floats(0, 0.5), st.floats(20, 5000))
def test_mass_is_conserved_while_length_changes(metres, shrink, take_up, tex):
    single = single_length(plied_length(metres, shrink), take_up)
    mass = yarn_mass(metres, tex)
    assert 3 * single * single_tex(mass, 3, single) / 1000 == pytest.approx(mass)


def test_every_state_ends_in_the_same_two_steps():
    for state in STEPS:
        assert steps_from(state)[-2:] == ("spin", "finish")


@pytest.mark.parametrize(
    ("call", "message"),
    [
        (lambda: steps_from("felted"), "no state of wool is called 'felted'"),
        (lambda: share_kept("raw", Figure(0.0, "share"), WORKED), "a yield must lie above 0 %"),
        (lambda: share_kept("raw", Figure(1.2, "share"), WORKED), "a yield must lie above 0 %"),
        (lambda: share_kept("raw", YIELD, Losses(1.0, 0, 0, 0)), "loss in skirting must be"),
        (lambda: share_kept("drying", YIELD, WORKED, Figure(1.0, "share")), "the share of water"),
        (lambda: plied_length(400, 1.0), "shrinkage must be"),
        (lambda: single_length(0, 0.05), "plied length in m must be more than zero"),
        (lambda: single_tex(180, 0, 400), "the number of plies must be more than zero"),
        (lambda: yarn_mass(400, -450), "linear density in tex must be more than zero"),
    ],
)
def test_outside_the_domain(call, message):
    with pytest.raises(ValueError, match=message):
        call()


@pytest.mark.parametrize(
    ("state", "kept"),
    [("raw", 0.85 * 0.6), ("skirted", 0.6), ("drying", 0.75), ("scoured", 1.0), ("carded", 1.0)],
)
def test_what_is_left_once_it_is_clean_and_dry(state, kept):
    found = share_scoured(state, Figure(0.6, "share"), Losses(0.15, 0.10, 0.03, 0.0))
    assert found.value == pytest.approx(kept)
