import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.craft.fibres import (
    UNKNOWN,
    UNKNOWN_REGAIN,
    known_regains,
    label,
    label_percents,
    regain_name,
    regain_of_shares,
    regain_range,
)


@pytest.mark.parametrize(
    ("fibre", "combed", "name"),
    [
        ("wool", False, "wool, carded"),
        ("Merino ", True, "wool, combed"),
        ("alpaca", False, "animal hair, carded"),
        ("mohair", True, "animal hair, combed"),
        ("flax", False, "linen"),
        ("nylon", False, "nylon, staple"),
        ("silk", False, "silk"),
        ("unknown", False, None),
        ("dog", False, None),
        ("wool, trade", False, None),
    ],
)
def test_the_names_of_makers_lead_to_the_table(fibre, combed, name):
    assert regain_name(fibre, combed) == name


@pytest.mark.published
def test_the_allowances_of_the_regulation():
    """EU 1007/2011 Annex IX: carded wool 17.00, combed 18.25, cotton 8.50 %."""
    assert known_regains(["wool", "cotton", UNKNOWN]) == {"wool": 0.17, "cotton": 0.085}
    assert known_regains(["wool"], combed=True) == {"wool": 0.1825}


def test_the_water_of_a_blend_by_hand():
    """50 wool (17 %) and 50 cotton (8.5 %) on the label: dry 42.735 + 46.083 = 88.818 of 100, so
    11.182 of water: 12.59 %."""
    found = regain_of_shares({"wool": 50, "cotton": 50})
    assert found.value == pytest.approx(0.12590, abs=5e-5)
    assert found.u == 0


def test_what_is_not_known_makes_it_wide():
    """The EU's list goes from 1.5 to 18.25 %: mean 9.875, u 16.75/√12 = 4.835 points."""
    wide = regain_range()
    assert wide.value == pytest.approx(0.09875)
    assert wide.u == pytest.approx(0.04835, abs=1e-5)
    assert regain_of_shares({UNKNOWN: 100}).u == pytest.approx(wide.u)
    half = regain_of_shares({"wool": 50, UNKNOWN: 50})
    assert wide.u / 2 < half.u < wide.u * 0.55
    assert half.chief_cause == UNKNOWN_REGAIN


def test_a_label_in_whole_percents():
    assert label({"wool": 0.7, "silk": 0.3}) == "70 % wool, 30 % silk"
    assert (
        label({UNKNOWN: 2, "alpaca": 1, "wool": 1}) == "25 % alpaca, 25 % wool, 50 % unknown fibre"
    )
    assert label({"wool": 1}) == "100 % wool"
    assert label_percents({"wool": 1, "silk": 1, "alpaca": 1}) == {
        "alpaca": 34,
        "silk": 33,
        "wool": 33,
    }
    assert label_percents({"wool": 999, "silk": 1}) == {"wool": 100}


@pytest.mark.property
@given(st.dictionaries(st.sampled_from(["wool", "silk", "alpaca", UNKNOWN, "hemp"]),
                       st.floats(0.01, 1000), min_size=1))  # fmt: skip
def test_percents_sum_to_a_hundred_and_are_within_one(shares):
    found = label_percents(shares)
    assert sum(found.values()) == 100
    whole = sum(shares.values())
    for fibre, part in shares.items():
        assert abs(found.get(fibre, 0) - 100 * part / whole) < 1


@pytest.mark.parametrize("call", [regain_of_shares, label_percents])
def test_no_share_is_no_blend(call):
    with pytest.raises(ValueError, match="shares of a blend"):
        call({})
