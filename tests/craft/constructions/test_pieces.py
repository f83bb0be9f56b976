import pytest

from app.craft.constructions.drawing import Impossible, Knit, KnitRun
from app.craft.constructions.pieces import edging, outline, piece, words_of

SQUARE = Knit(10, 10)
"""A stitch and a row of a centimetre each."""


def test_the_outline_of_a_front_with_a_neck():
    """20 cm wide; after 10 rows 4 stitches are cast off and the neck widens to 8 over 5."""
    runs = (KnitRun(10, 20, 20), KnitRun(5, 16, 12, gap=4, gap_to=8))
    assert outline(runs, SQUARE) == (
        (10.0, 0.0),
        (10.0, 10.0),
        (10.0, 15.0),
        (4.0, 15.0),
        (2.0, 10.0),
        (0.0, 10.0),
        (-2.0, 10.0),
        (-4.0, 15.0),
        (-10.0, 15.0),
        (-10.0, 10.0),
        (-10.0, 0.0),
    )


def test_the_outline_of_half_a_front():
    runs = (KnitRun(10, 10, 10), KnitRun(5, 10, 6, gap=0, gap_to=4))
    assert outline(runs, SQUARE, half=True) == (
        (10.0, 0.0),
        (10.0, 10.0),
        (10.0, 15.0),
        (4.0, 15.0),
        (0.0, 10.0),
        (0.0, 0.0),
    )


def test_what_is_done_between_runs_is_told():
    runs = (
        KnitRun(10, 20, 20),
        KnitRun(4, 16, 12),
        KnitRun(6, 16, 16),
        KnitRun(2, 12, 12, gap=4, gap_to=4),
    )
    assert words_of(runs) == (
        "Work 10 rows on 20 stitches.",
        "Cast off 4 stitches in all, 2 at each side: 16 stitches.",
        "Decrease one stitch at each end of the next and every 2nd row, 2 times: 12 stitches, "
        "then work 1 row more.",
        "Increase 4 stitches evenly: 16 stitches.",
        "Work 6 rows on 16 stitches.",
        "Cast off 4 stitches in the middle for the neck; work each side alone.",
        "Work 2 rows on 12 stitches, 6 on each side.",
    )


def test_half_a_front_is_shaped_at_one_edge():
    runs = (
        KnitRun(10, 12, 12),
        KnitRun(4, 10, 8),
        KnitRun(4, 6, 4, gap=2, gap_to=4),
    )
    assert words_of(runs, half=True) == (
        "Work 10 rows on 12 stitches.",
        "Cast off 2 stitches at the armhole edge: 10 stitches.",
        "Decrease one stitch at the armhole edge of the next and every 2nd row, 2 times: "
        "8 stitches, then work 1 row more.",
        "Cast off 2 stitches at the neck edge.",
        "Decrease one stitch at the neck edge of the next and every 2nd row, 2 times: "
        "4 stitches, then work 1 row more.",
    )


def test_both_edges_at_once_are_told_one_beside_the_other():
    (told,) = words_of((KnitRun(10, 20, 8, gap=0, gap_to=4),))
    assert told == (
        "Over 10 rows decrease one stitch at each armhole edge of the next and every 2nd row, "
        "3 times, then every 4th row, once; at the same time decrease one stitch at each neck "
        "edge of the next row, then every 6th row, once: 8 stitches, 4 on each side."
    )


def test_half_a_front_is_taken_in_at_its_side_below_the_armhole():
    runs = (KnitRun(10, 20, 16), KnitRun(4, 12, 10))
    assert words_of(runs, half=True) == (
        "Decrease one stitch at the side edge of the next and every 2nd row, 3 times, then every "
        "4th row, once: 16 stitches, then work 1 row more.",
        "Cast off 4 stitches at the armhole edge: 12 stitches.",
        "Decrease one stitch at the armhole edge of the next and every 2nd row, 2 times: "
        "10 stitches, then work 1 row more.",
    )


def test_what_is_left_of_a_parted_piece_is_told_for_each_side():
    runs = (KnitRun(10, 20, 20), KnitRun(4, 16, 8, gap=4, gap_to=4))
    told = piece("back", "back", runs, SQUARE, edges="cast off and seams").words
    assert told[-2:] == (
        "Decrease one stitch at each end of the next and every row, 4 times: 8 stitches, 4 on each "
        "side.",
        "Cast off the 8 stitches that are left, 4 on each side.",
    )


def test_a_piece_tells_how_it_begins_and_ends():
    """As its edges say, and not twice."""
    runs = (KnitRun(10, 20, 20, "garter stitch"),)
    assert piece("scarf", "piece", runs, SQUARE).words == (
        "Cast on 20 stitches.",
        "Work 10 rows on 20 stitches, in garter stitch.",
        "Cast off the 20 stitches that are left.",
    )
    goes_on = piece("sides", "body", runs, SQUARE, edges="none").words
    assert goes_on == ("Work 10 rows on 20 stitches, in garter stitch.",)
    loose = piece("shawl", "piece", runs, SQUARE, edges="stretchy cast-off").words
    assert loose[-1] == "Cast off the 20 stitches that are left, loosely."


@pytest.mark.parametrize(
    ("cast_on", "cast_off", "sewn", "edges"),
    [
        (True, True, True, "cast on, off and seams"),
        (True, True, False, "cast on and off"),
        (True, False, True, "cast on and seams"),
        (True, False, False, "cast on"),
        (False, True, True, "cast off and seams"),
        (False, True, False, "cast off"),
        (False, False, False, "none"),
    ],
)
def test_what_is_done_at_the_edges(cast_on, cast_off, sewn, edges):
    assert edging(cast_on=cast_on, cast_off=cast_off, sewn=sewn) == edges


def test_runs_without_rows_are_left_out():
    made = piece("back", "back", (KnitRun(0, 5, 5), KnitRun(10, 20, 20)), SQUARE)
    assert made.runs == (KnitRun(10, 20, 20),)


@pytest.mark.parametrize(
    "runs", [(), (KnitRun(0, 5, 5),), (KnitRun(-1, 5, 5),), (KnitRun(5, 5, 0),)]
)
def test_nothing_left_to_knit(runs):
    with pytest.raises(Impossible, match="leave nothing for the back") as why:
        piece("back", "back", runs, SQUARE)
    assert why.value.reason == "nothing left"
