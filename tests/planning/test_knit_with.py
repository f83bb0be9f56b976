"""How the yarns of a piece work together, and that it is told again from its rows."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

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
from app.planning.knit_with import KnitWith, as_described, knit_shape, told_by

DOUBLE = KnitWith("stocking stitch", ends=2)
STRIPES = KnitWith("garter stitch", use="stripes", share_pct=25.0)


@pytest.mark.parametrize("shape", [Counted(80, 24), Rectangle(500, 400), Trapezoid(9, 9, 9)])
def test_plain_knitting_leaves_a_shape_as_it_is(shape):
    assert knit_shape(shape, KnitWith()) == shape
    assert knit_shape(shape, KnitWith("stocking stitch")) == shape
    assert told_by(shape) == KnitWith()


@pytest.mark.parametrize(
    ("knit", "pattern", "strands"),
    [
        (DOUBLE, "stocking stitch", (Strand("main", 1.0, 2),)),
        (STRIPES, "garter stitch", (Strand("main", 0.75), Strand("contrast", 0.25))),
        (
            KnitWith("lace", 2, "stranded", 40.0),
            "stranded",
            (Strand("main", 0.6, 2), Strand("contrast", 0.4, 2)),
        ),
        (KnitWith("", 1, "held along"), "stocking stitch", (Strand("main"), Strand("contrast"))),
    ],
)
def test_each_way_by_hand(knit, pattern, strands):
    assert knit_shape(Counted(80, 24), knit) == Runs((Run(24, 80, 80, pattern, None, strands),))


@pytest.mark.parametrize("shape", [Rectangle(1040, 400), Trapezoid(220, 360, 450)])
@pytest.mark.parametrize("knit", [DOUBLE, STRIPES, KnitWith("2×2 rib")])
def test_a_measured_piece_stays_measured(shape, knit):
    made = knit_shape(shape, knit)
    assert isinstance(made, Measured)
    assert (made.width_mm, made.length_mm) == (shape.width_mm, shape.length_mm)
    assert told_by(made) == knit
    assert as_described(made) == shape


def test_a_measured_piece_of_other_yarns_is_left_as_it_is():
    other = Measured(500, 500, 400, strands=(Strand("silk"),))
    assert told_by(other) is None
    assert as_described(other) == other
    assert knit_shape(other, DOUBLE) == other


@pytest.mark.parametrize("amount", [Stated(9_000), Metres(9_000)])
def test_an_amount_has_no_rows_to_knit(amount):
    assert knit_shape(amount, DOUBLE) == amount


def test_rows_keep_their_patterns_unless_one_is_named():
    rows = Runs((Run(4, 80, 80, "2×2 rib", 3.5), Run(20, 80, 90)))
    made = knit_shape(rows, KnitWith(ends=2))
    assert [(one.pattern, one.needle_mm) for one in made.runs] == [
        ("2×2 rib", 3.5),
        ("stocking stitch", None),
    ]
    assert told_by(made) == KnitWith("", 2)
    assert knit_shape(made, KnitWith()) == rows


@pytest.mark.parametrize(
    "runs",
    [
        (Run(4, 80, 80), Run(4, 80, 80, strands=(Strand(ends=2),))),
        (Run(4, 80, 80, strands=(Strand("silk"),)),),
        (Run(4, 80, 80, strands=(Strand(), Strand("contrast", 0.5))),),
        (Run(4, 80, 80, strands=(Strand(), Strand("a"), Strand("b"))),),
        (Run(4, 80, 80, strands=()),),
        (),
    ],
)
def test_what_is_knit_otherwise_is_not_told(runs):
    assert told_by(Runs(runs)) is None
    assert as_described(Runs(runs)) == Runs(runs)


def test_rows_all_alike_are_a_counted_piece():
    assert as_described(Runs((Run(24, 80, 80, "moss stitch"),))) == Counted(80, 24)
    for run in (Run(24, 80, 90), Run(24, 80, 80, needle_mm=4.0), Run(24, 0, 0)):
        assert as_described(Runs((run,))) == Runs((run,))
    assert as_described(Counted(80, 24)) == Counted(80, 24)


PATTERNS = st.sampled_from(["stocking stitch", "garter stitch", "2×2 rib", "Owls in a row"])
SHARED = st.builds(
    KnitWith, PATTERNS, st.integers(1, 6), st.just("stripes"), st.integers(1, 99).map(float)
)
ALONE = st.builds(KnitWith, PATTERNS, st.integers(1, 6), st.sampled_from(["", "held along"]))


@pytest.mark.property
@given(st.one_of(SHARED, ALONE), st.integers(1, 200), st.integers(1, 300))
def test_what_was_asked_is_told_again(knit, rows, stitches):
    made = knit_shape(Runs((Run(rows, stitches, stitches),)), knit)
    assert told_by(made) == knit
    assert as_described(made) == Counted(stitches, rows)
