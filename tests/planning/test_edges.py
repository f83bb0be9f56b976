"""Edges of a piece: cast-on or picked-up row, ordinary or stretchy cast-off, seams or none."""

from math import sqrt

import pytest

from app.book.gauge import Gauge
from app.book.shape import Run, Strand
from app.book.words import EDGES
from app.craft.figure import Figure
from app.planning.edges import (
    cast_off_m,
    cast_off_stitches,
    cast_on_m,
    edge_step,
    edges,
    seam_m,
)
from tests.books import a_part

LOOP = Figure(sqrt(21.6 / 6.6), "cm")
ROW = 229 * LOOP.value / 100
TAIL = 3.3 * 229 / 220
RUNS, GAUGE = (Run(120, 229, 229),), Gauge(22.0, 30.0)
SIDES, TOP = 2 * 0.40, 229 / 220

BY_HAND = {
    "none": 0,
    "cast on": ROW + TAIL,
    "cast on and seams": ROW + TAIL + SIDES,
    "cast on and off": ROW + TAIL + 1.15 * ROW,
    "cast on, off and seams": ROW + TAIL + 1.15 * ROW + SIDES + TOP,
    "cast on, stretchy cast-off": ROW + TAIL + 2.0 * ROW,
    "cast on, stretchy cast-off and seams": ROW + TAIL + 2.0 * ROW + SIDES + TOP,
    "cast off": 1.15 * ROW,
    "cast off and seams": 1.15 * ROW + SIDES + TOP,
    "stretchy cast-off": 2.0 * ROW,
    "picked up and cast off": ROW + 1.15 * ROW,
    "picked up, stretchy cast-off": ROW + 2.0 * ROW,
}


def metres(**part):
    return edges(a_part(**part), RUNS, GAUGE, LOOP).value


@pytest.mark.golden
@pytest.mark.parametrize("way", EDGES)
def test_each_way_by_hand(way):
    """A row of 229 stitches takes 4.14 m, its long tail 3.44 m; 120 rows are 40 cm. Half of both
    sides and of the last row is sewn with 2 m a metre: 2 × 40 cm and 104 cm."""
    assert metres(edges=way) == pytest.approx(BY_HAND[way])


def test_what_is_knit_in_the_round_has_no_seam():
    round_ = metres(edges="cast on, off and seams", in_round=True)
    assert round_ == metres(edges="cast on and off")


def test_a_piece_without_rows_has_no_edges():
    part = a_part(edges="cast on and off")
    assert edges(part, (), GAUGE, LOOP) == Figure(0.0, "m")
    assert cast_on_m(part, (), GAUGE, LOOP) == cast_off_m(part, (), LOOP) == 0.0
    assert seam_m(a_part(edges="cast on, off and seams"), (), GAUGE) == 0.0


def test_edges_are_unsure_by_a_fifth():
    found = edges(a_part(edges="cast on and off"), RUNS, GAUGE, LOOP)
    assert found.u == pytest.approx(0.2 * found.value)


def test_what_is_cast_off_on_the_way_is_cast_off():
    """100 stitches: 10 at the armholes, 8 decreased, 30 at the neck, 40 in steps over the shoulders
    and 12 at their end: 92."""
    back = (Run(50, 100, 100), Run(8, 90, 82), Run(40, 82, 82), Run(6, 52, 12))
    assert cast_off_stitches(a_part(edges="cast off and seams"), back) == 92
    assert cast_off_stitches(a_part(edges="cast on"), back) == 0


def test_one_of_a_pair_of_fronts_is_sewn_at_one_side():
    """A back of 100 stitches is sewn at both, over 40 cm; so are hems that share a part."""
    runs = (Run(120, 50, 50),)
    shared = {"edges": "cast off and seams", "copies": 2}
    top = 50 / 22 / 20
    for name in ("fronts", "Front hems", "Left and right front"):
        assert seam_m(a_part(name=name, **shared), runs, GAUGE) == pytest.approx(0.2 + top)
    for name in ("back and front hems", "sleeves"):
        assert seam_m(a_part(name=name, **shared), runs, GAUGE) == pytest.approx(0.4 + top)
    one = a_part(name="front", edges="cast off and seams")
    assert seam_m(one, runs, GAUGE) == pytest.approx(0.4 + top)


@pytest.mark.parametrize(
    ("way", "how"),
    [
        (
            "cast on, off and seams",
            "cast-on row and tail of 3.3 × the width, cast-off of 1.15 rows; seams of 2 × their "
            "length, half of each counted here",
        ),
        ("picked up, stretchy cast-off", "picked-up row, cast-off of 2 rows"),
        ("cast on", "cast-on row and tail of 3.3 × the width"),
        ("cast off", "cast-off of 1.15 rows"),
    ],
)
def test_the_working_says_which(way, how):
    assert edge_step(a_part(edges=way), Figure(9.0, "m")).how == how


def test_a_yarn_held_double_is_cast_on_and_off_double_and_sewn_single():
    double = (Run(120, 229, 229, strands=(Strand(ends=2),)),)
    part = a_part(edges="cast on, off and seams")
    one, two = (edges(part, runs, GAUGE, LOOP).value for runs in (RUNS, double))
    assert two - one == pytest.approx(ROW + TAIL + 1.15 * ROW)


def test_rows_without_a_yarn_are_cast_on_once():
    bare = (Run(120, 229, 229, strands=()),)
    assert cast_on_m(a_part(edges="cast on"), bare, GAUGE, LOOP) == pytest.approx(ROW + TAIL)
