import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.craft.sizes import ASSUMED, EASES, between, body, groups_for, printed


def test_a_body_from_its_chest():
    """Chest 53.3 is size 2 of the children's table: arm 21.6, upper arm 17.8, as printed."""
    known = body(53.3)
    assert known["arm length to underarm"].cm == pytest.approx(21.6)
    assert known["upper arm"].cm == pytest.approx(17.8)
    assert known["upper arm"].standing == "published"
    assert known["chest"].u == 0


def test_an_adult_lies_midway_between_the_two_tables():
    """Chest 104.15: a woman's L, upper arm 30.5, and midway between a man's M and L, 33.0 and 38.1:
    35.55. Half the difference is the uncertainty."""
    arm = body(104.15)["upper arm"]
    assert arm.cm == pytest.approx((30.5 + 35.55) / 2)
    assert arm.u == pytest.approx((35.55 - 30.5) / 2)
    assert arm.standing == "memory"


def test_the_wearers_own_measures_come_first():
    known = body(96, {"upper arm": 41.0, "ease": -4})
    assert known["upper arm"].cm == 41.0
    assert known["upper arm"].standing == "measured"
    assert known["upper arm"].u == 0
    assert "ease" not in known


def test_what_no_table_holds_is_assumed_and_wide():
    known = body(92)
    for name, (share, _) in ASSUMED.items():
        assert known[name].standing == "assumed"
        assert known[name].u == pytest.approx(share * known[name].cm)
    assert known["body length"].cm == 60


@pytest.mark.parametrize(
    ("chest", "groups"), [(45, ("baby",)), (60, ("child",)), (96, ("woman", "man"))]
)
def test_who_a_chest_belongs_to(chest, groups):
    assert groups_for(chest) == groups


@pytest.mark.property
@given(st.floats(30, 180))
def test_any_chest_has_a_body_of_sensible_size(chest):
    known = body(chest)
    assert all(1 < one.cm < 200 for one in known.values())
    assert known["upper arm"].cm < known["chest"].cm
    assert all(one.u > 0 for name, one in known.items() if name != "chest")


@pytest.mark.parametrize("chest", [29.9, 181, 0, -5])
def test_a_chest_nobody_has(chest):
    with pytest.raises(ValueError, match="a chest must lie between 30 and 180 cm"):
        body(chest)


def test_an_own_measure_of_nothing():
    with pytest.raises(ValueError, match="wrist must be more than zero"):
        body(96, {"wrist": 0})


def test_between_points_and_beyond_their_ends():
    points = ((10, 1), (20, 3), (30, 4))
    assert [between(points, x) for x in (5, 10, 15, 25, 30, 99)] == [1, 1, 2, 3.5, 4, 4]


def test_every_row_of_the_table_makes_sense():
    for row in printed():
        assert 0 < row.low_cm <= row.high_cm
        assert row.standing in ("published", "memory")
        assert row.source
        assert row.middle_cm == (row.low_cm + row.high_cm) / 2


@pytest.mark.published
def test_ease_by_chart_version():
    """The older chart's standard fit is 2 to 4 in; the newer one's close fit is nothing at all."""
    eases = {ease.name: (ease.low_cm, ease.high_cm) for ease in EASES}
    assert eases["standard"] == (5, 10)
    assert eases["close (older chart)"] != eases["close (2018 chart)"]
    assert {ease.standing for ease in EASES if "2018" in ease.name} == {"memory"}
