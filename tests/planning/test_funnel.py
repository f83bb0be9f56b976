import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.book.fleece import Fleece
from app.book.settings import StepLosses
from app.craft.fleece import STEPS
from app.planning.funnel import funnel

OWN = Fleece("f", "Bramble", yield_pct=60.0)
PLAIN = StepLosses(skirt=15.0, carded=10.0, combed=25.0, spin=3.0, finish=0.0)


def test_the_worked_chain_from_raw_fleece_to_yarn():
    """404.3 g raw → 343.6 skirted → 206.2 scoured → 185.6 prepared → 180 g of yarn: the worked
    example of a sweater's fleece, forwards."""
    found = funnel(404.3, "raw", OWN, PLAIN)
    assert [one.name for one in found] == ["raw", "skirted", "scoured", "carded", "yarn"]
    assert [round(one.g, 1) for one in found] == [404.3, 343.7, 206.2, 185.6, 180.0]
    assert round(found[1].lost_g, 1) == 60.6


@pytest.mark.parametrize(
    ("state", "names"),
    [
        ("skirted", ["skirted", "scoured", "carded", "yarn"]),
        ("drying", ["drying", "scoured", "carded", "yarn"]),
        ("scoured", ["scoured", "carded", "yarn"]),
        ("carded", ["carded", "yarn"]),
        ("combed", ["combed", "yarn"]),
        ("part spun", ["part spun", "yarn"]),
    ],
)
def test_a_funnel_begins_where_the_fleece_is(state: str, names: list[str]):
    assert [one.name for one in funnel(500.0, state, OWN, PLAIN)] == names


@pytest.mark.property
@given(st.floats(0, 10_000), st.sampled_from(sorted(STEPS)))
def test_what_is_lost_is_all_that_is_missing_and_no_stage_grows(now_g: float, state: str):
    found = funnel(now_g, state, OWN, PLAIN)
    assert sum(one.lost_g for one in found) == pytest.approx(now_g - found[-1].g, abs=1e-6)
    assert all(one.lost_g >= -1e-9 for one in found)
