import pytest

from app.work.skein_doubt import skein_doubt


@pytest.mark.parametrize(
    ("grams", "metres", "wraps", "what"),
    [
        (96, 213, None, None),
        (9, 12_000, None, "thin"),
        (100, 20_000, None, None),
        (100, 20_001, None, "thin"),
        (100, 20, None, None),
        (100, 19, None, "thick"),
        (96, 213, 12, None),
        (96, 213, 40, "wraps"),
        (96, 213, 5, "wraps"),
        (0, 213, 12, None),
        (96, 0, 12, None),
    ],
)
def test_what_can_hardly_be(grams: float, metres: float, wraps: float | None, what: str | None):
    """96 g in 213 m are 1101 yd/lb, of which 0.376 × √1101 = 12.5 wraps are expected."""
    doubt = skein_doubt(grams * 1000, metres * 1000, wraps and round(wraps * 1000))
    assert (doubt and doubt.what) == what
