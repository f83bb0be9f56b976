import pytest

from app.craft.constructions.ease import PARTS, chest_ease, ease_by_part, ease_named
from app.craft.sizes import EASES

BODY = {"chest": 96.0, "upper arm": 30.0, "wrist": 16.0, "head": 56.0, "foot": 23.0}


@pytest.mark.published
@pytest.mark.parametrize(
    ("name", "middle"),
    [
        ("very close (older chart)", -2.5),
        ("close (older chart)", 3.75),
        ("standard", 7.5),
        ("loose", 12.5),
        ("oversized", 20.0),
    ],
)
def test_the_names_and_versions_of_the_charts(name, middle):
    """Craft Yarn Council, older chart as printed in 2011."""
    assert chest_ease(name) == middle
    assert "2011" in ease_named(name).source


def test_the_newer_chart_says_so():
    assert chest_ease("very close (2018 chart)") == -7.5
    assert chest_ease("close (2018 chart)") == 0
    assert {one.name for one in EASES} >= {"close (2018 chart)", "close (older chart)"}


def test_a_name_no_chart_has():
    with pytest.raises(ValueError, match="no chart of ease has 'roomy'"):
        ease_named("roomy")


def test_ease_by_part():
    """Of 10 cm at the chest: 6 at the upper arm; 3 at any wrist; a hat is 8 % smaller."""
    ease = ease_by_part(10, BODY, {})
    assert ease == pytest.approx(
        {"chest": 10, "upper arm": 6, "wrist": 3, "head": -4.48, "foot": -1.84}
    )
    assert set(ease) <= set(PARTS)


def test_a_wish_of_her_own_comes_first():
    assert ease_by_part(10, BODY, {"upper arm": 1.0, "chest": 20.0})["upper arm"] == 1.0
    assert ease_by_part(10, BODY, {"chest": 20.0})["upper arm"] == 12


def test_a_tight_body_has_no_tighter_sleeves():
    tight = ease_by_part(-5, BODY, {})
    assert tight["chest"] == -5
    assert tight["upper arm"] == 0
