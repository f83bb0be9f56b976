"""What finished garments change in the plans that are not begun."""

from dataclasses import replace

import pytest

from app.planning.learned_effect import learned_effect
from tests.books import a_mark, a_part, a_plan
from tests.planning.learning.test_garments_seen import NEXT, TUBE_M, book_of, old


def test_without_and_with_what_was_learned():
    sleeves = a_part("sleeves", "next", position=2, place="sleeve")
    second = a_plan("second"), a_part("second body", "second")
    one, other = learned_effect(book_of(old(times=1.1), NEXT, sleeves, second))
    assert other.name == "second"
    assert (one.plan_id, one.name) == ("next", "next")
    assert one.without.value == pytest.approx(2 * TUBE_M, rel=1e-4)
    assert 2 * TUBE_M * 1.05 < one.with_it.value < 2 * TUBE_M * 1.1
    assert one.with_it.u < one.without.u


@pytest.mark.parametrize(
    "records",
    [
        (NEXT,),
        (old(), a_plan("next")),
        (old(), replace(NEXT[0], state="being knit"), NEXT[1]),
        (old(), NEXT, a_mark("garment old took by gauge")),
    ],
    ids=["nothing finished", "no parts", "on the needles", "struck out"],
)
def test_where_nothing_is_learned_nothing_is_changed(records):
    assert learned_effect(book_of(*records)) == ()
