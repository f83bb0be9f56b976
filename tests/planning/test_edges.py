"""Edges of a piece: cast-on or picked-up row, ordinary or stretchy cast-off, seam or none."""

from math import sqrt

import pytest

from app.book.gauge import Gauge
from app.book.shape import Run
from app.craft.figure import Figure
from app.planning.edges import cast_off_m, cast_on_m, edge_step, edges
from tests.books import a_part

LOOP = Figure(sqrt(21.6 / 6.6), "cm")
ROW = 229 * LOOP.value / 100
TAIL = 3.3 * 229 / 220
RUNS, GAUGE = (Run(120, 229, 229),), Gauge(22.0, 30.0)


def metres(**part):
    return edges(a_part(**part), RUNS, GAUGE, LOOP).value


@pytest.mark.golden
@pytest.mark.parametrize(
    ("way", "by_hand"),
    [
        ("none", 0),
        ("cast on and off", ROW + TAIL + 1.15 * ROW),
        ("cast on, off and seams", ROW + TAIL + 1.15 * ROW + 2 * 0.40),
        ("cast on, stretchy cast-off", ROW + TAIL + 2.0 * ROW),
        ("cast on, stretchy cast-off and seams", ROW + TAIL + 2.0 * ROW + 2 * 0.40),
        ("picked up and cast off", ROW + 1.15 * ROW),
        ("picked up, stretchy cast-off", ROW + 2.0 * ROW),
    ],
)
def test_each_way_by_hand(way, by_hand):
    """A row of 229 stitches takes 4.14 m, its long tail 3.44 m; 120 rows are 40 cm."""
    assert metres(edges=way) == pytest.approx(by_hand)


def test_what_is_knit_in_the_round_has_no_seam():
    round_ = metres(edges="cast on, off and seams", in_round=True)
    assert round_ == metres(edges="cast on and off")


def test_a_piece_without_rows_has_no_edges():
    part = a_part(edges="cast on and off")
    assert edges(part, (), GAUGE, LOOP) == Figure(0.0, "m")
    assert cast_on_m(part, (), GAUGE, LOOP) == cast_off_m(part, (), LOOP) == 0.0


def test_edges_are_unsure_by_a_fifth():
    found = edges(a_part(edges="cast on and off"), RUNS, GAUGE, LOOP)
    assert found.u == pytest.approx(0.2 * found.value)


@pytest.mark.parametrize(
    ("part", "how"),
    [
        (
            {"edges": "cast on, off and seams"},
            "cast-on row and tail of 3.3 × the width, cast-off of 1.15 rows; seam of 2 × its "
            "length",
        ),
        (
            {"edges": "picked up, stretchy cast-off"},
            "picked-up row, cast-off of 2 rows",
        ),
    ],
)
def test_the_working_says_which(part, how):
    assert edge_step(a_part(**part), Figure(9.0, "m")).how == how
