"""Pieces lie where they are worn, and never on each other."""

from itertools import combinations
from math import cos, pi, sin

import pytest

from app.book.design import Design
from app.book.gauge import Gauge
from app.book.person import Measure
from app.book.shape import Counted, Rectangle
from app.craft.constructions import constructions
from app.planning import reckon
from app.planning.design import parts_from
from app.planning.picture import picture
from app.planning.picture_piece import Piece
from tests.books import a_book, a_part, a_plan, a_yarn

GAUGE = Gauge(22.0, 30.0, needle_mm=4.0)
WORDS = sorted(constructions())


def laid(*parts, **plan) -> tuple[Piece, ...]:
    book = a_book(a_yarn(), a_plan(**plan), *parts)
    return picture(book, reckon(book), "pullover").pieces


def bounds(piece: Piece) -> tuple[float, float, float, float]:
    points = piece.lies(piece.outline)
    across, down = [x for x, _ in points], [y for _, y in points]
    return min(across), min(down), max(across), max(down)


def apart(one: Piece, other: Piece) -> bool:
    """Whether some line parts two pieces: tried in every direction."""
    for step in range(180):
        x, y = cos(step * pi / 180), sin(step * pi / 180)
        ours, theirs = (
            [a * x + b * y for a, b in each.lies(each.outline)] for each in (one, other)
        )
        if max(ours) <= min(theirs) + 1e-9 or max(theirs) <= min(ours) + 1e-9:
            return True
    return False


@pytest.mark.parametrize("word", WORDS)
def test_no_piece_of_a_construction_lies_on_another(word: str):
    plan = a_plan(design=Design(word, (Measure("chest", 960), Measure("neck", 360))))
    pieces = laid(*parts_from(plan, GAUGE), design=plan.design)
    assert pieces
    assert all(apart(one, other) for one, other in combinations(pieces, 2))


def test_a_cardigan_lies_open_with_its_back_below_it():
    fronts = a_part("Fronts", shape=Rectangle(275, 660), copies=2)
    back = a_part("Back", shape=Rectangle(560, 660), position=2)
    sleeves = a_part("Sleeves", shape=Rectangle(300, 400), copies=2, position=3)
    left, right, below, *_ = laid(fronts, back, sleeves)
    assert bounds(left)[2] < 0 < bounds(right)[0]
    assert bounds(below)[1] > bounds(left)[3]


def test_hems_and_cuffs_hang_from_what_they_fit():
    body = a_part("Body", shape=Rectangle(1000, 400))
    hem = a_part("Hem", shape=Rectangle(450, 50), position=2)
    sleeves = a_part("Sleeves", shape=Rectangle(300, 400), copies=2, position=3)
    cuffs = a_part("Cuffs", shape=Rectangle(260, 60), copies=2, position=4)
    long = a_part("Border", shape=Rectangle(3000, 50), position=5)
    trunk, hangs, left, right, cuff, other, free = laid(body, hem, sleeves, cuffs, long)
    assert bounds(hangs)[1] == pytest.approx(bounds(trunk)[3] + 0.02 * trunk.width)
    assert (cuff.turn, other.turn) == (left.turn, right.turn)
    assert cuff.at[0] < left.at[0] < right.at[0] < other.at[0]
    assert bounds(free)[1] > bounds(hangs)[3]


def test_front_bands_as_long_as_the_fronts_stand_between_them():
    fronts = a_part("Fronts", shape=Rectangle(275, 600), copies=2)
    bands = a_part("Front bands", shape=Rectangle(620, 30), copies=2, position=2)
    neck = a_part("Collar", shape=Rectangle(400, 60), position=3)
    left, right, one, other, _ = laid(fronts, bands, neck)
    assert one.turn == other.turn == -90.0
    edges = [bounds(piece) for piece in (left, one, other, right)]
    assert all(edges[at][2] < edges[at + 1][0] for at in range(3))
    assert max(edge[3] for edge in edges) == pytest.approx(0.0)


def test_each_of_a_pair_has_its_own_crown_and_cuff():
    hands = a_part("Body", shape=Counted(60, 60), copies=2)
    tips = a_part("Crown", shape=Counted(40, 10), copies=2, position=2)
    cuffs = a_part("Cuff", shape=Counted(44, 20), copies=2, position=3)
    left, right, tip, other, cuff, _ = laid(hands, tips, cuffs)
    assert (tip.at[0], other.at[0]) == (left.at[0], right.at[0])
    assert tip.at[1] == other.at[1] < -left.height
    assert cuff.at[0] == pytest.approx(left.at[0])
    assert bounds(cuff)[1] > bounds(left)[3]


def test_sleeves_without_a_body_lie_side_by_side():
    left, right = laid(a_part("Sleeves", shape=Rectangle(300, 400), copies=2))
    assert left.turn == right.turn == 0.0
    assert bounds(left)[2] < bounds(right)[0]


def test_pieces_without_a_place_lie_side_by_side_and_then_below():
    parts = [a_part(f"square {at}", shape=Counted(220, 300), position=at) for at in range(5)]
    pieces = laid(*parts)
    rows = {round(one.at[1], 3) for one in pieces}
    assert 1 < len(rows) < 5
    assert all(one.turn == 0.0 for one in pieces)
