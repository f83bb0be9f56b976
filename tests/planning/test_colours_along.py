import pytest

from app.book.holding import ColourAt
from app.book.plan import RoleYarn
from app.book.shape import Counted
from app.planning import reckon
from app.planning.colours_along import colour_at
from app.planning.picture import picture
from tests.books import a_book, a_part, a_plan, a_promise, a_skein, a_yarn

RUNNING = (ColourAt(20_000, "#000000"), ColourAt(44_000, "#f0f0f0"))


@pytest.mark.parametrize(
    ("metres", "colour"),
    [
        (0, "#000000"),
        (20, "#000000"),
        (32, "#787878"),
        (33, "#828282"),
        (44, "#f0f0f0"),
        (90, "#f0f0f0"),
    ],
)
def test_the_colour_runs_from_one_into_the_next(metres, colour):
    assert colour_at(a_skein(colours=RUNNING), metres) == colour


def test_the_order_they_were_noted_in_does_not_matter():
    assert colour_at(a_skein(colours=RUNNING[::-1]), 32) == "#787878"


def test_a_skein_of_one_colour_has_none_along_it():
    assert colour_at(a_skein(colour="#808080"), 10) == ""


def running_balls(*promises):
    """Two sleeves of 32.56 m each, and two balls that change alike from black to pale."""
    change = (ColourAt(0, "#000000"), ColourAt(100_000, "#f0f0f0"))
    return a_book(
        a_yarn(),
        a_skein("G-1", colours=change),
        a_skein("G-2", colours=change),
        a_plan(yarns=(RoleYarn("main", "grey two-ply"),)),
        a_part(shape=Counted(60, 30), copies=2),
        *promises,
        held={"G-1": (45, 100), "G-2": (45, 100)},
    )


def colours_of(book) -> list[list[str]]:
    pieces = picture(book, reckon(book), "pullover").pieces
    return [[band.knit.threads[0].colour for band in one.bands] for one in pieces]


def test_a_ball_that_changes_is_drawn_row_by_row_and_each_sleeve_has_its_half():
    one, other = colours_of(running_balls(a_promise("G-1", 100_000)))
    assert one[0] < one[-1] <= other[0] < other[-1]


def test_knit_from_the_inside_it_begins_with_its_last_colour():
    one, other = colours_of(running_balls(a_promise("G-1", 100_000, from_inside=True)))
    assert one[0] > one[-1] >= other[0] > other[-1]


def test_two_balls_are_knit_in_the_order_they_were_put_in():
    """Each sleeve has a ball of its own, and both are knit from the same end."""
    ordered = a_promise("G-1", 32_600, position=2), a_promise("G-2", 32_600, position=1)
    book = running_balls(*ordered)
    pieces = picture(book, reckon(book), "pullover").pieces
    assert [one.bands[0].knit.threads[0].holding_id for one in pieces] == ["G-2", "G-1"]
    one, other = colours_of(book)
    assert one[1] == other[1]
