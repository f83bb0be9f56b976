"""Bodies no such garment fits on, each with its kind of reason and in words."""

import pytest

from app.craft.constructions import construction_of
from app.craft.constructions.drawing import Impossible, Knit
from app.craft.constructions.wanting import want

KNIT = Knit(22, 30)


def refusal(word, measures, knit=KNIT, ease=None, choices=None):
    construction = construction_of(word)
    wanted = want(construction, {"chest": 96, **measures}, knit, ease=ease, choices=choices).wanted
    with pytest.raises(Impossible) as why:
        construction.draw(wanted)
    return why.value.reason, str(why.value)


@pytest.mark.parametrize(
    ("word", "measures", "reason", "words"),
    [
        ("pullover, drop shoulder", {"body length": 20}, "nothing left", "body is too short"),
        ("pullover, drop shoulder", {"neck": 150}, "neck too wide", "leaves no shoulders"),
        (
            "pullover, raglan",
            {"arm length to underarm": 0.2},
            "nothing left",
            "sleeve is too short",
        ),
        (
            "pullover, raglan",
            {"upper arm": 2, "wrist": 2},
            "sleeve does not fit",
            "underarm takes the whole",
        ),
        ("pullover, raglan", {"upper arm": 70}, "sleeve does not fit", "upper arm of 70 cm"),
        ("pullover, drop shoulder", {"upper arm": 70}, "sleeve does not fit", "upper arm of 70 cm"),
        ("pullover, round yoke", {"neck": 100}, "neck too wide", "neck of 100 cm does not belong"),
        ("cardigan, drop shoulder", {"neck": 100}, "neck too wide", "as 96 cm of chest"),
        (
            "pullover, set-in sleeve",
            {"chest": 60, "cross back": 58},
            "nothing left",
            "cross back of 58 cm",
        ),
        ("hat", {"head": 20}, "nothing left", "smaller than anyone"),
        ("blanket", {"width": 8}, "nothing left", "border leaves nothing"),
        ("hat", {"brim depth": 30}, "nothing left", "between brim and crown"),
        ("hat", {"head": 10}, "nothing left", "between brim and crown"),
        ("mittens", {"hand length": 1}, "nothing left", "too small for a mitten"),
        ("socks", {"leg": 6}, "nothing left", "too short for heel and toe"),
        ("shawl, triangular", {"depth": 20}, "too steep", "too wide for its depth"),
    ],
)
def test_a_body_it_does_not_fit_on(word, measures, reason, words):
    kind, told = refusal(word, measures)
    assert kind == reason
    assert words in told


def test_ease_that_takes_more_than_the_body_has():
    kind, told = refusal("pullover, drop shoulder", {}, ease={"chest": -96})
    assert (kind, told) == ("nothing left", "chest with its ease must be more than zero")


def test_a_gauge_with_too_few_rows_for_its_shaping():
    """Rows as long as stitches are wide, and longer: lines, crowns and wedges get too steep."""
    long_rows = Knit(30, 12)
    assert refusal("pullover, raglan", {}, long_rows)[0] == "too steep"
    assert refusal("hat", {}, long_rows)[0] == "too steep"
    assert refusal("shawl, half-round", {}, Knit(40, 18))[0] == "too steep"
    assert refusal("pullover, set-in sleeve", {}, Knit(10, 2))[0] == "sleeve does not fit"


def test_a_round_yoke_by_measure_that_does_not_come_out():
    choices = {"proportions": "by measure"}
    wide = refusal("pullover, round yoke", {"neck": 150}, choices=choices)
    assert wide == ("neck too wide", "the neck takes 330 of 308 stitches")
    thin = refusal("pullover, round yoke", {"upper arm": 2, "wrist": 2}, choices=choices)
    assert thin[0] == "sleeve does not fit"
    ease = {"armhole depth": 0.0}
    shallow = refusal("pullover, round yoke", {"armhole depth": 2}, ease=ease, choices=choices)
    assert shallow[0] == "too steep"


def test_a_scarf_without_a_row():
    assert refusal("scarf", {"length": 0.1}) == (
        "nothing left",
        "these measures leave nothing for the scarf",
    )
