import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.craft.shaping import (
    button_places,
    even_spacing,
    even_spacing_flat,
    multiples_near,
    one_in_every,
    ordinal,
    pick_up,
    shaping_text,
)


def rows_used(spacing):
    return sum(times * every for times, every in spacing)


def test_eleven_in_a_hundred_and_eight():
    assert even_spacing(11, 108) == ((2, 9), (9, 10))


def test_flat_work_is_shaped_on_every_second_row():
    """11 in 108: 54 pairs of rows, 1 time every 4 pairs and 10 times every 5."""
    assert even_spacing_flat(11, 108) == ((1, 8), (10, 10))
    assert even_spacing_flat(16, 135) == ((13, 8), (3, 10))


def test_no_shaping_and_shaping_every_row():
    assert even_spacing(0, 40) == ()
    assert even_spacing(40, 40) == ((40, 1),)
    assert even_spacing(0, 0) == ()


@pytest.mark.property
@given(st.integers(1, 300), st.integers(0, 2000))
def test_the_sum_is_checked(events, more):
    rows = events + more
    spacing = even_spacing(events, rows)
    assert rows_used(spacing) == rows
    assert sum(times for times, _ in spacing) == events
    assert max(e for _, e in spacing) - min(e for _, e in spacing) <= 1


@pytest.mark.property
@given(st.integers(1, 300), st.integers(0, 2000))
def test_the_sum_is_checked_when_flat(events, more):
    rows = 2 * events + more
    spacing = even_spacing_flat(events, rows)
    assert rows_used(spacing) == rows - rows % 2
    assert all(every % 2 == 0 for _, every in spacing)


@pytest.mark.parametrize(("events", "rows"), [(41, 40), (-1, 40), (1, 0)])
def test_shapings_that_do_not_fit(events, rows):
    with pytest.raises(ValueError, match="do not fit in"):
        even_spacing(events, rows)


def test_flat_shapings_that_do_not_fit():
    with pytest.raises(ValueError, match="on every second row do not fit in 39 rows"):
        even_spacing_flat(20, 39)


def test_spread_over_one_row():
    """24 over 204: 12 after 8 stitches and 12 after 9."""
    assert one_in_every(24, 204) == ", one in every 8 or 9 stitches"
    assert one_in_every(4, 36) == ", one in every 9 stitches"
    assert one_in_every(0, 36) == one_in_every(37, 36) == ""


def test_picking_up_along_rows():
    assert pick_up(20, 26) == ((3, 4), (3, 4), (4, 5))
    assert pick_up(22, 30) == ((2, 3), (3, 4), (3, 4), (3, 4))
    assert pick_up(20, 20) == ((1, 1),)
    assert pick_up(18, 36) == ((1, 2),)


@pytest.mark.property
@given(st.integers(10, 40), st.floats(1.0, 2.0))
def test_picking_up_keeps_the_gauge(stitches, ratio):
    """Over the whole pattern, to within what 30 rows can tell."""
    groups = pick_up(stitches, stitches * ratio)
    taken, rows = sum(s for s, _ in groups), sum(r for _, r in groups)
    assert taken / rows == pytest.approx(1 / ratio, abs=1 / 30)


def test_more_stitches_than_rows_are_not_picked_up_alone():
    with pytest.raises(ValueError, match="pick up one in every row and increase after"):
        pick_up(26, 20)


def test_multiples_of_a_border():
    """A 2×2 rib: 4 in the round, 4 and 2 over when flat."""
    assert multiples_near(101, 4) == (100, 104)
    assert multiples_near(101, 4, plus=2) == (98, 102)
    assert multiples_near(102, 4, plus=2) == (102, 102)
    assert multiples_near(1, 4, plus=2) == (2, 2)


@pytest.mark.property
@given(st.integers(0, 500), st.integers(1, 40), st.integers(0, 10))
def test_a_multiple_is_a_multiple(stitches, multiple, plus):
    for count in multiples_near(stitches, multiple, plus):
        assert (count - plus) % multiple == 0
        assert count >= plus


@pytest.mark.parametrize("numbers", [(10, 0, 0), (10, 4, -1), (-1, 4, 0)])
def test_multiples_of_nothing(numbers):
    with pytest.raises(ValueError, match="whole numbers above zero"):
        multiples_near(*numbers)


def test_buttons_along_a_band():
    """60 cm, 7 holes of 2 cm, 2 cm at each end: (60 − 4 − 14)/6 = 7 cm between holes."""
    assert button_places(60, 7, 2, 2) == (2, 11, 20, 29, 38, 47, 56)


def test_one_button_sits_in_the_middle():
    assert button_places(20, 1, 2, 3) == (9,)


@pytest.mark.property
@given(st.floats(20, 100), st.integers(1, 10), st.floats(0.5, 1.5), st.floats(0, 2))
def test_buttons_are_the_same_from_either_end(length, buttons, hole, edge):
    places = button_places(length, buttons, hole, edge)
    mirrored = [length - place - hole for place in reversed(places)]
    assert list(places) == pytest.approx(mirrored)


@pytest.mark.parametrize(
    ("numbers", "words"),
    [
        ((20, 0, 2, 1), "at least one button, not 0"),
        ((20, 12, 2, 1), "12 buttonholes do not fit"),
        ((0, 3, 2, 1), "the length of the band must be more"),
        ((20, 3, 0, 1), "the length of a buttonhole must be more"),
        ((20, 3, 2, -1), "the edge cannot be less"),
    ],
)
def test_buttons_that_do_not_fit(numbers, words):
    with pytest.raises(ValueError, match=words):
        button_places(*numbers)


@pytest.mark.parametrize(
    ("run", "words"),
    [
        (
            (128, 48, 80),
            "Increase one stitch at each end of the next and every 8th row, 16 times: 80 stitches, "
            "then work 7 rows more.",
        ),
        ((1, 48, 48), "Work 1 row on 48 stitches."),
        (
            (4, 20, 18),
            "Decrease one stitch at each end of the next row: 18 stitches, then work 3 rows more.",
        ),
        (
            (6, 20, 10),
            "Decrease one stitch at each end of the next and every row, 4 times, then every 2nd "
            "row, once: 10 stitches.",
        ),
        (
            (6, 20, 15),
            "Decrease one stitch at each end of the next row, then every 4th row, once, 1 more on "
            "the last: 15 stitches, then work 1 row more.",
        ),
        (
            (6, 40, 20),
            "Cast off 20 stitches in even steps over 6 rows (3, 3 and 4 on each side, every 2nd "
            "row): 20 stitches.",
        ),
        ((6, 40, 19), "Cast off 21 stitches in even steps over 6 rows: 19 stitches."),
        ((2, 40, 20), "Cast off 20 stitches in even steps over 2 rows: 20 stitches."),
        ((2, 40, 60), "Increase 20 stitches evenly over 2 rows: 60 stitches."),
        ((9, 40, 41), "Increase 1 stitch evenly over 9 rows: 41 stitches."),
    ],
)
def test_a_run_in_words(run, words):
    assert shaping_text(*run) == words


def test_a_run_in_the_round_in_words():
    assert shaping_text(16, 40, 44, in_round=True) == (
        "Increase one stitch on each side of the marker on the next and every 8th round, "
        "2 times: 44 stitches, then work 7 rounds more."
    )
    assert shaping_text(3, 80, 60, in_round=True) == (
        "Decrease 20 stitches evenly over 3 rounds: 60 stitches."
    )


def test_a_run_shaped_at_one_edge():
    assert shaping_text(8, 20, 16, where="at the neck edge of", ends=1) == (
        "Decrease one stitch at the neck edge of the next and every 2nd row, 4 times: "
        "16 stitches, then work 1 row more."
    )


@pytest.mark.property
@given(st.integers(1, 300), st.integers(2, 300), st.integers(2, 300), st.booleans())
def test_every_run_is_told_with_where_it_ends(rows, stitches, stitches_to, in_round):
    told = shaping_text(rows, stitches, stitches_to, in_round)
    assert f"{stitches_to} stitches" in told
    assert told.endswith(".")


def test_ordinals():
    assert [ordinal(n) for n in (1, 2, 3, 4, 11, 12, 13, 21, 112)] == [
        *("1st", "2nd", "3rd", "4th", "11th", "12th", "13th", "21st", "112th")
    ]
