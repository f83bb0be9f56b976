from datetime import timedelta

import pytest

from app.book.reading import Reading
from app.work.fleece_drying import lost_since_last
from tests.books import DAY, a_reading


def damp(*grams: int) -> list[Reading]:
    return [
        a_reading("F-1", value * 1000, wool="damp", day=DAY + timedelta(place))
        for place, value in enumerate(grams)
    ]


@pytest.mark.parametrize("grams", [(), (1500,), (0, 1500)])
def test_one_weighing_says_nothing(grams: tuple[int, ...]):
    assert lost_since_last(damp(*grams)) is None


def test_the_last_two_are_compared():
    assert lost_since_last(damp(2000, 1500, 1200)) == 20.0
    assert lost_since_last(damp(1200, 1206)) == -0.5


def test_only_damp_weighings_of_mass_count():
    dry, wraps = a_reading("F-1", 900_000), a_reading("F-1", 11_000, kind="wraps", wool="damp")
    assert lost_since_last([*damp(1500, 1200), dry, wraps]) == 20.0
