import pytest

from app.craft.twist_direction import SLOPES, direction, of_wheel, opposite


def test_the_letter_is_read_in_either_case():
    assert direction(" z ") == "Z"
    assert direction("S") == "S"


@pytest.mark.parametrize("typed", ["", "left", "SZ", "5"])
def test_anything_else_is_no_twist(typed):
    with pytest.raises(ValueError, match="twist is S or Z"):
        direction(typed)


def test_plying_goes_the_other_way_and_back_again():
    for one in SLOPES:
        assert opposite(one) != one
        assert opposite(opposite(one)) == one


def test_a_wheel_turning_clockwise_makes_z():
    assert of_wheel(clockwise=True) == "Z"
    assert of_wheel(clockwise=False) == "S"


def test_each_direction_is_told_by_its_letter():
    for letter, told in SLOPES.items():
        assert told.endswith(f"the letter {letter}")
