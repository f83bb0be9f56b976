"""A part cut in two at a row: nothing of what is knit changes, and no stitch is lost between."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.book.gauge import Gauge
from app.book.plan import RoleYarn
from app.book.shape import Counted, Metres, Run, Runs
from app.planning.knitting.split import Otherwise, split
from app.planning.needs import needs_of
from app.planning.schedule import schedule
from app.planning.yarns import Lots
from tests.books import a_book, a_part, a_plan, a_yarn


def cut(shape, rows, how=None, **part):
    book = a_book(a_yarn(), a_plan(), a_part(shape=shape, **part))
    (need,) = needs_of(book.plan["pullover"], book.parts, Lots(book))
    return split(need, rows, how or Otherwise(), "rest")


def test_a_tube_at_row_40():
    knit, rest = cut(Counted(229, 120), 40, place="body", in_round=True, edges="cast on and off")
    assert knit.shape == Runs((Run(40, 229, 229),))
    assert rest.shape == Runs((Run(80, 229, 229),))
    assert (knit.id, rest.id, rest.name, rest.position) == (
        "body",
        "rest",
        "body, from round 41",
        2,
    )
    assert (knit.edges, rest.edges) == ("cast on", "cast off")


def test_a_sleeve_in_the_middle_of_its_shaping():
    """48 to 80 in 135 rounds, 16 pairs: after 64 rounds, 8 pairs by hand (every 8th round)."""
    knit, rest = cut(Runs((Run(135, 48, 80),)), 64, place="sleeve", in_round=True)
    (below,), (above,) = knit.shape.runs, rest.shape.runs
    assert (below.rows, below.stitches, below.stitches_to) == (64, 48, above.stitches)
    assert (above.rows, above.stitches_to) == (71, 80)
    assert below.stitches_to in (64, 66)


def test_another_gauge_keeps_the_length():
    """80 rows at 30 in 10 cm are 26.7 cm: 75 rows at 28."""
    _, rest = cut(Counted(229, 120), 40, Otherwise(Gauge(20.0, 28.0)))
    assert rest.shape.runs[0].rows == 75
    assert rest.gauge == Gauge(20.0, 28.0)


def test_so_many_rows_more_in_another_yarn():
    yarns = (RoleYarn("main", "grey two-ply"), RoleYarn("white", "white single"))
    how = Otherwise(yarn_id="brown", rows=30)
    knit, rest = cut(Counted(229, 120), 40, how, yarns=yarns)
    assert rest.shape.runs[0].rows == 30
    assert rest.yarns == (RoleYarn("main", "brown"), yarns[1])
    assert knit.yarns == yarns


def test_runs_that_follow_keep_their_shares():
    runs = (Run(10, 80, 80), Run(20, 80, 80, "1×1 rib"), Run(30, 70, 60))
    knit, rest = cut(Runs(runs), 20, Otherwise(rows=20))
    assert [one.rows for one in knit.shape.runs] == [10, 10]
    assert [one.rows for one in rest.shape.runs] == [5, 15]


@pytest.mark.parametrize(("shape", "rows"), [(Counted(10, 10), 0), (Counted(10, 10), 10)])
def test_nothing_to_cut(shape, rows):
    with pytest.raises(ValueError, match="between its first row and its last"):
        cut(shape, rows)


def test_an_amount_has_no_row_to_cut_at():
    with pytest.raises(ValueError, match="between its first row and its last"):
        cut(Metres(1000), 1)


@pytest.mark.property
@given(
    st.lists(
        st.tuples(st.integers(1, 60), st.integers(2, 200), st.integers(2, 200)),
        min_size=1,
        max_size=4,
    ),
    st.data(),
)
def test_no_row_is_lost(runs, data):
    runs = tuple(Run(*one) for one in runs)
    whole = sum(one.rows for one in runs)
    if whole < 2:
        return
    at = data.draw(st.integers(1, whole - 1))
    knit, rest = cut(Runs(runs), at)
    plain = Gauge(22.0, 30.0)
    below, above = schedule(knit.shape, plain), schedule(rest.shape, plain)
    assert sum(one.rows for one in below) == at
    assert sum(one.rows for one in above) == whole - at
    assert above[-1].stitches_to == runs[-1].stitches_to
