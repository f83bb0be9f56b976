import pytest

from app.web.pages.picture_room import Box, Room, overlap

TILTED = [(0.0, 0.0), (10.0, 10.0), (0.0, 20.0), (-10.0, 10.0)]


def box(x: float, y: float, wide: float = 4.0, high: float = 4.0) -> Box:
    return Box(x, y, wide, high)


def test_outlines_overlap_only_where_they_do():
    assert overlap(TILTED, box(0, 10).corners)
    assert overlap(TILTED, box(5, 5).corners)
    assert not overlap(TILTED, box(9, 1).corners)
    assert not overlap(TILTED, box(30, 10).corners)
    doubled = [TILTED[0], *TILTED]
    assert overlap(doubled, box(0, 10).corners)


def test_words_stand_where_nothing_else_does():
    room = Room(-50, 50)
    room.fill(TILTED)
    assert room.place([box(0, 10), box(9, 1)]) == box(9, 1)
    assert room.place([box(9, 1), box(20, 0)]) == box(20, 0)
    assert room.place([box(9, 1)]) is None


def test_a_tag_may_lie_on_a_piece_but_not_on_another_tag():
    room = Room(-50, 50)
    room.fill(TILTED)
    assert room.place([box(0, 10)], on_pieces=True)
    assert room.place([box(1, 10)], on_pieces=True) is None


def test_words_move_in_from_the_edge_and_are_left_out_if_they_are_too_wide():
    room = Room(0, 20)
    assert room.place([box(-3, 5)]) == box(2, 5)
    assert room.place([box(25, 5)]) == box(18, 5)
    assert room.place([box(10, 50, wide=21)]) is None


@pytest.mark.parametrize("where", [(0.0, 0.0), (3.0, 4.0)])
def test_room_close_by_is_found_nearest_first(where: tuple[float, float]):
    room = Room(-200, 200)
    room.fill([(-20, -20), (20, -20), (20, 20), (-20, 20)])
    found = room.near(box(*where, 30, 10), (-20, -20, 20, 20))
    assert found is not None
    assert not overlap(found.corners, [(-20, -20), (20, -20), (20, 20), (-20, 20)])
    assert abs(found.y) <= 20 + 10 + 5 + 1
    assert room.near(box(0, 0, 500, 10), (-20, -20, 20, 20)) is None
