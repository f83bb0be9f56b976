import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.craft.conditioning import conditioned_mass, moisture_step
from app.craft.moisture import regain_from_content, regains

EU = [row.fibre for row in regains() if row.eu]
BLEND = st.dictionaries(st.sampled_from(EU), st.floats(0.1, 100), min_size=1, max_size=4)


def test_wool_and_silk_by_hand():
    """113.65 g at 10 % are 103.318 g dry; 0.8 × 17 + 0.2 × 11 = 15.8 %; 119.642 g."""
    found = conditioned_mass(113.65, {"wool, carded": 80, "silk": 20}, 0.10)
    assert found.dry_g == pytest.approx(103.318, abs=5e-4)
    assert found.regain == pytest.approx(0.158)
    assert found.g == pytest.approx(119.642, abs=5e-4)
    assert found.water_g == pytest.approx(119.642 - 103.318, abs=5e-4)
    assert found.content == pytest.approx(0.158 / 1.158)


def test_shares_on_a_label_hold_less_of_the_thirstier_fibre():
    dry = conditioned_mass(100, {"wool, carded": 50, "cotton": 50}, 0.1)
    label = conditioned_mass(100, {"wool, carded": 50, "cotton": 50}, 0.1, as_labelled=True)
    assert label.dry_shares["wool, carded"] == pytest.approx(0.48115, abs=5e-6)
    assert label.g < dry.g


def test_the_rule_makes_a_difference():
    eu = conditioned_mass(100, {"jute": 1}, 0.1)
    astm = conditioned_mass(100, {"jute": 1}, 0.1, rule="ASTM")
    assert eu.g / astm.g == pytest.approx(1.17 / 1.1375)


def test_the_working_and_how_far_to_trust_it():
    steps = conditioned_mass(100, {"wool, carded": 3, "cotton": 1}, 0.1).steps
    assert [step.unit for step in steps] == ["g", "%", "g"]
    assert steps[1].how == "0.750 × 17 % + 0.250 × 8.5 %"
    assert steps[1].standing == "published"
    remembered = conditioned_mass(100, {"wool, carded": 3, "kapok": 1}, 0.1).steps[1]
    assert remembered.standing == "memory"
    assert "remembered" in remembered.source


def test_a_content_told_as_regain():
    step = moisture_step(0.12)
    assert step.value == pytest.approx(13.636, abs=5e-4)
    assert step.how == "12 ÷ (100 − 12)"


@pytest.mark.property
@given(BLEND, st.floats(1, 1e5), st.floats(0, 0.4), st.booleans())
def test_wool_at_its_agreed_regain_weighs_what_it_weighs(shares, grams, now, label):
    once = conditioned_mass(grams, shares, now, label)
    again = conditioned_mass(once.g, shares, once.regain, label)
    assert again.g == pytest.approx(once.g)
    assert sum(once.dry_shares.values()) == pytest.approx(1)


@pytest.mark.property
@given(BLEND, st.floats(1, 1e5), st.floats(0, 0.3))
def test_the_wetter_it_was_weighed_the_less_wool_there_is(shares, grams, now):
    assert conditioned_mass(grams, shares, now).g > conditioned_mass(grams, shares, now + 0.05).g


@pytest.mark.parametrize(
    ("call", "words"),
    [
        (lambda: conditioned_mass(0, {"silk": 1}, 0.1), "mass in g must be more than zero"),
        (lambda: conditioned_mass(100, {"silk": 1}, -0.1), "regain cannot be less than zero"),
        (lambda: conditioned_mass(100, {}, 0.1), "the shares of a blend must be more"),
        (lambda: conditioned_mass(100, {"silk": 2, "cotton": -1}, 0.1), "cotton cannot be less"),
        (lambda: conditioned_mass(100, {"moss": 1}, 0.1), "no agreed regain is known here"),
        (lambda: conditioned_mass(100, {"kapok": 1}, 0.1, rule="ASTM"), "the ASTM rule has no"),
        (lambda: regain_from_content(1), "moisture content must be"),
    ],
)
def test_outside_the_domain(call, words):
    with pytest.raises(ValueError, match=words):
        call()
