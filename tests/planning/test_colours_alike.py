"""Yarns that read as one beside each other, and those that do not."""

import pytest

from app.planning.colours_alike import apart, reads_as_one
from app.planning.yarns import Lots
from tests.books import a_book, a_yarn

GREY, NEAR, DARK = "#8a8a86", "#8b8b87", "#6f6f6b"


def together(own=None, **other):
    """Whether a grey yarn of 450 tex and another read as one, whichever is named first."""
    own = {"colour": GREY, "target_tex": 450.0} | (own or {})
    lots = Lots(a_book(a_yarn(**own), a_yarn("other", **{"target_tex": 470.0} | other)))
    said = reads_as_one("grey two-ply", "other", lots)
    assert reads_as_one("other", "grey two-ply", lots) == said
    return said


def test_the_same_colour_is_no_distance():
    assert apart(GREY, GREY) == 0


def test_a_yarn_near_in_all_reads_as_one():
    assert together(colour=NEAR)


def test_a_yarn_is_not_mixed_with_itself():
    lots = Lots(a_book(a_yarn(colour=GREY, target_tex=450.0)))
    assert not reads_as_one("grey two-ply", "grey two-ply", lots)


@pytest.mark.parametrize(
    "other",
    [
        {"colour": DARK},
        {"colour": ""},
        {"colour": NEAR, "fibre": "alpaca"},
        {"colour": NEAR, "target_tex": 600.0},
        {"colour": NEAR, "target_tex": None},
    ],
)
def test_another_colour_fibre_or_grist_does_not(other):
    assert not together(**other)


def test_a_tenth_of_the_finer_grist_is_the_limit():
    assert together(colour=NEAR, target_tex=494.9)
    assert not together(colour=NEAR, target_tex=495.1)


def test_where_a_colour_was_not_noted_its_name_tells():
    unnoted = {"colour": "", "colour_name": "Moor"}
    assert together(unnoted, colour=NEAR, colour_name="moor")
    assert not together(unnoted, colour=NEAR, colour_name="heather")
    assert not together({"colour": ""}, colour=NEAR)
