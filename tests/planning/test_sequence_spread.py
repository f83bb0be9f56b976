"""A sequence over several pieces, and shares as there is of each yarn."""

import pytest

from app.book.sequence import Band, Sequence, SequenceYarn
from app.planning.sequence_piece import taken_by
from app.planning.sequence_refused import Refused
from app.planning.sequence_spread import by_supply, spread, within
from tests.planning.test_sequence_fade import a_tube

HALVES = (SequenceYarn("main", 0.5, 0.5), SequenceYarn("white", 0.5, 0.5))


def places(knit) -> list[tuple[int, int | None] | None]:
    return [(one.from_row, one.to_row) if one else None for _, one in knit]


def test_rows_are_counted_through_all_pieces():
    pieces = [a_tube(10), a_tube(20), a_tube(10)]
    whole = Sequence("alternate", HALVES, from_row=6, to_row=25)
    assert places(spread(pieces, whole)) == [(6, None), (1, 15), None]


def test_each_piece_has_its_own_part_of_a_ramp():
    yarns = (SequenceYarn("main", 1.0, 0.0), SequenceYarn("white", 0.0, 1.0))
    (_, low), (_, high) = spread([a_tube(50), a_tube(51)], Sequence("fade", yarns))
    assert [one.share for one in low.yarns] == [1.0, 0.0]
    assert low.yarns[0].share_to == pytest.approx(0.51)
    assert high.yarns[0].share == pytest.approx(0.50)
    assert [one.share_to for one in high.yarns] == [0.0, 1.0]


def test_before_a_fade_that_brings_the_main_yarn_in_is_the_other_yarn():
    yarns = (SequenceYarn("main", 0.0, 1.0), SequenceYarn("white", 1.0, 0.0))
    whole = Sequence("fade", yarns, from_row=11, to_row=20)
    (_, before), (_, _), (_, after) = spread([a_tube(10)] * 3, whole)
    assert [one.role for one in before.yarns] == ["white"]
    assert after is None


def test_a_fade_of_yarns_that_all_leave_is_followed_by_the_main_one():
    yarns = (SequenceYarn("main", 0.6, 0.5), SequenceYarn("white", 0.4, 0.3))
    (_, _), (_, after) = spread([a_tube(10)] * 2, Sequence("fade", yarns, to_row=10))
    assert after is None


def test_shares_follow_what_there_is():
    """200 m: 150 of one and 90 of the other, half a metre kept back of each."""
    found = by_supply([a_tube(200)], {"main": 150.0, "white": 90.0}, slice(None))
    assert found["main"] == pytest.approx(149.5 / 239)
    yarns = tuple(SequenceYarn(role, share, share) for role, share in found.items())
    taken = taken_by(spread([a_tube(200)], Sequence("alternate", yarns)))
    assert taken["main"] <= 150
    assert taken["white"] <= 90


def test_too_little_together_is_refused_with_what_lacks():
    with pytest.raises(Refused) as found:
        by_supply([a_tube(200)], {"main": 100.0, "white": 90.0}, slice(None))
    assert found.value.reason == "too little together"
    assert found.value.short_m == pytest.approx(11.0)


def test_only_the_rows_of_the_sequence_count():
    assert by_supply([a_tube(200)], {"main": 20.5, "white": 20.5}, slice(10, 50))["main"] == 0.5


def test_the_yarn_that_lacks_most_is_named():
    knit = spread([a_tube(100)], Sequence("alternate", HALVES))
    assert within(knit, {"main": 50.0}) is knit
    with pytest.raises(Refused) as found:
        within(knit, {"main": 45.0, "white": 30.0})
    assert (found.value.role, found.value.short_m) == ("white", pytest.approx(20.0))


@pytest.mark.parametrize("first", [3, 4, 6, 7, 10])
def test_stripes_go_on_from_one_piece_into_the_next(first):
    bands = (Band("main", 3), Band("white", 2), Band("madder", 1))
    whole = Sequence("stripes", bands=bands)
    pieces = [a_tube(first), a_tube(25 - first)]
    rows = [role for piece, one in spread(pieces, whole) for role in piece.roles(one)]
    assert rows == ["main"] * 3 + ["white"] * 2 + ["madder"] + rows[:19]
