import pytest

from app.book.settings import StepLosses
from app.work.fleece_doubt import doubt_of
from tests.work.flock import BRAMBLE

STEPS = StepLosses()


@pytest.mark.parametrize(
    ("after", "weighed", "what"),
    [
        ("combed", 120, None),
        ("combed", 121, "more"),
        ("combed", 26, None),
        ("combed", 24, "less"),
        ("raw", 80, "back"),
    ],
)
def test_a_slip_of_the_scale_is_asked_about_without_a_step_too(after, weighed, what):
    """100 g of combed top, such as is dyed: damp air puts a little on, never a fifth."""
    doubt = doubt_of(BRAMBLE, STEPS, "combed", after, 100_000, weighed * 1000)
    assert (doubt.what if doubt else None) == what


def test_after_a_step_a_gram_more_is_asked_about():
    assert doubt_of(BRAMBLE, STEPS, "scoured", "carded", 100_000, 101_000)
