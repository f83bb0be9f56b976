"""All 34 pairs of Sharma, Wu, Dalal 2005, table 1: exact to the four printed decimals."""

import pytest

from app.craft.colour import difference
from tests.published.printed import printed

pytestmark = pytest.mark.published

PAIRS = printed("ciede2000")


@pytest.mark.parametrize("row", PAIRS, ids=[row["pair"] for row in PAIRS])
def test_a_printed_pair(row):
    one = (float(row["L1"]), float(row["a1"]), float(row["b1"]))
    other = (float(row["L2"]), float(row["a2"]), float(row["b2"]))
    assert difference(one, other) == pytest.approx(float(row["difference"]), abs=5.1e-5)


def test_all_of_them_are_here():
    assert [int(row["pair"]) for row in PAIRS] == list(range(1, 35))
