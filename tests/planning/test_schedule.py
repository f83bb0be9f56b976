import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.book.gauge import Gauge
from app.book.plan import Worked
from app.book.shape import (
    Counted,
    Measured,
    Metres,
    Rectangle,
    Run,
    Runs,
    Stated,
    Strand,
    Trapezoid,
)
from app.planning.schedule import alike_together, by_role, schedule, stitches_in

GAUGE = Gauge(22.0, 30.0)


@pytest.mark.published
def test_the_tube_and_the_sleeve():
    """By the arithmetic: 104 cm × 22/10 = 228.8; 22 to 36 cm is 48 to 80, 16 pairs."""
    assert schedule(Rectangle(1040, 400), GAUGE) == (Run(120, 229, 229),)
    assert schedule(Trapezoid(220, 360, 450), GAUGE) == (Run(135, 48, 80),)


def test_a_measured_piece_keeps_its_yarns_and_follows_the_gauge():
    held = Measured(220, 360, 450, "moss stitch", (Strand(ends=2),))
    assert schedule(held, GAUGE) == (Run(135, 48, 80, "moss stitch", None, (Strand(ends=2),)),)
    assert schedule(held, Gauge(20.0, 28.0))[0].rows == 126
    straight = Measured(1040, 1040, 400)
    assert schedule(straight, GAUGE, Worked(115.0, 110.0)) == schedule(
        Rectangle(1040, 400), GAUGE, Worked(115.0, 110.0)
    )


@pytest.mark.golden
def test_lace_that_is_blocked_out_is_worked_smaller():
    """A stole of 60 × 180 cm, blocked to 115 and 110 %: 52.2 cm are 115 stitches, 163.6 cm 491
    rows; a corner of 30 to 60 cm over 20 cm goes from 57 to 115 in 55."""
    blocked = Worked(115.0, 110.0)
    assert schedule(Rectangle(600, 1800), GAUGE, blocked) == (Run(491, 115, 115),)
    assert schedule(Trapezoid(300, 600, 200), GAUGE, blocked) == (Run(55, 57, 115),)


def test_fulled_cloth_is_worked_larger_and_counts_stand_as_they_are():
    fulled = Worked(85.0, 80.0)
    assert schedule(Rectangle(850, 400), GAUGE, fulled) == (Run(150, 220, 220),)
    assert schedule(Counted(80, 12), GAUGE, fulled) == (Run(12, 80, 80),)


def test_a_schedule_given_outright_and_counted_pieces_stand_as_they_are():
    runs = (Run(10, 40, 60), Run(4, 60, 60))
    assert schedule(Runs(runs), GAUGE) == runs
    assert schedule(Counted(80, 12), GAUGE) == (Run(12, 80, 80),)


def test_an_amount_has_no_rows():
    assert schedule(Metres(1000), GAUGE) == schedule(Stated(1000), GAUGE) == ()


def test_each_role_works_its_share_times_its_ends():
    carried = (Strand("main"), Strand("silk", 0.5, 2))
    runs = (Run(10, 40, 60, strands=carried), Run(2, 60, 60))
    assert by_role(runs) == {"main": 500 + 120, "silk": 500}


@pytest.mark.property
@given(st.integers(1, 3000), st.integers(1, 3000), st.integers(0, 3000))
def test_shaping_is_in_pairs_and_within_a_stitch_of_the_width(width, other, length):
    (run,) = schedule(Trapezoid(width, other, length), GAUGE)
    assert (run.stitches_to - run.stitches) % 2 == 0
    assert abs(run.stitches_to - other * 0.22) <= 1
    assert stitches_in(run) >= 0


def test_rows_in_the_same_yarns_are_taken_together():
    two = Run(2, 100, 100), Run(4, 100, 80)
    striped = Run(2, 50, 50, strands=(Strand("white"),))
    whole = alike_together((two[0], striped, two[1], Run(0, 9, 9, "moss stitch")))
    assert [(one.rows, stitches_in(one)) for one in whole] == [(6, 560.0), (2, 100.0)]
    assert by_role(whole) == by_role((*two, striped))
