import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.craft.moisture import (
    agreed_by,
    blend_regain,
    content_from_regain,
    dry_mass,
    dry_shares,
    invoice_mass,
    is_dry,
    mass_at,
    regain_from_content,
    regain_of,
    regains,
)

SHARE = st.floats(0, 0.5)


def test_a_wool_at_its_regain_by_hand():
    """100 g of dry wool at 17 % weighs 117 g."""
    assert mass_at(100, 0.17) == pytest.approx(117)
    assert dry_mass(117, 0.17) == pytest.approx(100)


def test_shares_of_a_label_are_converted_first():
    """50 wool (17 %) and 50 cotton (8.5 %): dry 42.735 and 46.083 of 88.818."""
    shares = dry_shares({"wool": 50, "cotton": 50}, {"wool": 0.17, "cotton": 0.085})
    assert shares == {
        "wool": pytest.approx(0.48115, abs=5e-6),
        "cotton": pytest.approx(0.51885, abs=5e-6),
    }


@pytest.mark.property
@given(SHARE)
def test_regain_and_content_are_inverse_and_differ(content):
    regain = regain_from_content(content)
    assert content_from_regain(regain) == pytest.approx(content, abs=1e-12)
    assert regain >= content


@pytest.mark.property
@given(st.floats(0.1, 1e5), st.floats(0.01, 0.4), st.floats(0.01, 0.4))
def test_a_blend_weighs_what_its_fibres_weigh(grams, wool, silk):
    """Conditioned apart and added up, or conditioned as a blend."""
    label, regain = {"wool": 70.0, "silk": 30.0}, {"wool": wool, "silk": silk}
    shares = dry_shares(label, regain)
    apart = sum(mass_at(grams * part, regain[fibre]) for fibre, part in shares.items())
    assert mass_at(grams, blend_regain(shares, regain)) == pytest.approx(apart)


def test_dry_is_when_weighings_agree():
    assert is_dry(400, 398)
    assert not is_dry(400, 397)


def test_the_table():
    assert regain_of("silk").eu == pytest.approx(0.11)
    assert regain_of("wool, all forms").eu is None
    assert regain_of("wool, all forms").astm == pytest.approx(0.136)
    for row in regains():
        agreed = [one for one in (row.by_eu, row.by_astm) if one]
        assert agreed
        for one in agreed:
            assert (one.standing == "memory") == ("remembered" in one.source)
        assert (row.standing == "memory") == ("remembered" in row.source)


def test_a_rule_that_is_silent_says_so():
    assert agreed_by("EU", "silk").regain == pytest.approx(0.11)
    assert agreed_by("ASTM", "wool, all forms").standing == "published"
    with pytest.raises(ValueError, match="the EU rule has no regain for 'wool, all forms'"):
        agreed_by("EU", "wool, all forms")


@pytest.mark.parametrize(
    ("call", "words"),
    [
        (lambda: regain_of("asbestos"), "no agreed regain is known here for 'asbestos'"),
        (lambda: regain_from_content(1), "moisture content must be"),
        (lambda: content_from_regain(-0.1), "regain cannot be less"),
        (lambda: mass_at(-1, 0.1), "dry mass in g cannot be less"),
        (lambda: dry_mass(-1, 0.1), "mass in g cannot be less"),
        (lambda: blend_regain({}, {}), "the shares of a blend must be more than zero"),
        (lambda: dry_shares({"wool": 0}, {"wool": 0.17}), "the shares of a blend must be"),
        (lambda: invoice_mass(100, 1.2, 0.1), "moisture content must be"),
        (lambda: is_dry(0, 1), "mass in g must be more than zero"),
    ],
)
def test_outside_the_domain(call, words):
    with pytest.raises(ValueError, match=words):
        call()
