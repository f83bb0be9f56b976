"""Shares of a stated total: unsure one by one, the whole no less sure for it."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.book.shape import Counted, Stated
from app.craft.figure import total
from app.planning.needs import needs_of, stated_factor
from app.planning.shares import share_causes
from app.planning.yarns import Lots
from tests.books import a_book, a_part, a_plan, a_yarn

PLAN, LOTS = a_plan(), Lots(a_book(a_yarn()))


def shared(*metres, u=20.0):
    return [
        a_part(f"p{i}", shape=Stated(m * 1000), shape_u_pct=u, position=i)
        for i, m in enumerate(metres)
    ]


def of(parts):
    return [one.roles[0].need for one in needs_of(PLAN, parts, LOTS)]


@pytest.mark.golden
def test_two_equal_halves():
    """Half of 1000 m, each share unsure by 20 %: 500 × ½ × 20 % = 50 m from each of two causes."""
    causes = share_causes(PLAN, shared(500, 500))
    assert causes["p0"] == pytest.approx(
        {"the share of pullover, p0": 50, "the share of pullover, p1": -50}
    )
    first, second = of(shared(500, 500))
    factor = stated_factor()
    assert first.u == pytest.approx(((500 * factor.u) ** 2 + 2 * (50 * factor.value) ** 2) ** 0.5)
    assert first.covariance(second) < (500 * factor.u) ** 2


def test_one_part_has_nothing_to_share_with():
    assert share_causes(PLAN, shared(500)) == {}
    assert share_causes(PLAN, [*shared(500), a_part(shape=Counted(9, 9), shape_u_pct=10.0)]) == {}
    assert share_causes(PLAN, shared(500, 500, u=0.0)) == {}


def test_the_working_says_so():
    (step,) = needs_of(PLAN, shared(500, 400), LOTS)[0].working
    assert "its share of the whole is unsure too" in step.source


@pytest.mark.property
@given(st.lists(st.integers(1, 5000), min_size=1, max_size=8))
def test_the_total_is_no_less_sure(metres):
    whole = total(of(shared(*metres)), "m")
    assert whole.value == pytest.approx(sum(metres) * stated_factor().value)
    assert whole.u == pytest.approx(sum(metres) * stated_factor().u)
