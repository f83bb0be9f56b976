import pytest

from app.craft.constructions import construction_of
from app.craft.constructions.drawing import Knit
from app.craft.constructions.wanting import choices_of, sizes_of, want
from app.craft.sizes import body

PULLOVER = construction_of("pullover, drop shoulder")
KNIT = Knit(22, 30)


def test_what_nobody_measured_comes_from_the_body_table_with_its_width():
    taken = want(PULLOVER, {"chest": 96, "wrist": 17}, KNIT)
    assert taken.wanted.measures["upper arm"] == body(96)["upper arm"].cm
    assert taken.assumed["upper arm"].u > 0
    assert "wrist" not in taken.assumed
    assert "chest" not in taken.assumed


def test_without_a_chest_the_usual_one_is_assumed():
    taken = want(construction_of("hat"), {"head": 50}, KNIT)
    assert taken.assumed == {}
    assert want(PULLOVER, {}, KNIT).assumed["chest"].u == 8


def test_the_garments_own_sizes_are_assumed_or_wished():
    scarf = construction_of("scarf")
    assert want(scarf, {}, KNIT).assumed["width"].u == 4
    assert want(scarf, {"width": 30, "length": 150}, KNIT).assumed == {}
    assert sizes_of(PULLOVER)["hem depth"] == (5.0, 0.0)


def test_every_band_has_its_pattern_and_may_have_its_gauge():
    own = Knit(26, 36, 3.0)
    choices = {"cuff pattern": "1×1 rib"}
    wanted = want(PULLOVER, {"chest": 96}, KNIT, choices=choices, band_knits={"cuff": own}).wanted
    assert wanted.bands["cuff"].knit == own
    assert wanted.bands["cuff"].pattern == "1×1 rib"
    assert wanted.bands["hem"].knit == KNIT
    assert wanted.bands["hem"].pattern == "2×2 rib"


def test_a_construction_may_say_what_its_band_is_worked_in():
    assert choices_of(construction_of("blanket"))["border pattern"][0] == "garter stitch"


def test_the_usual_choice_is_the_first():
    wanted = want(PULLOVER, {"chest": 96}, KNIT).wanted
    assert wanted.choices["neckline"] == "round"
    assert wanted.choices["sleeve"] == "long"
    assert wanted.ease["chest"] == 7.5


def test_ease_by_its_name():
    wanted = want(PULLOVER, {"chest": 96}, KNIT, choices={"ease": "oversized"}).wanted
    assert wanted.cm("chest") == 116


def test_a_value_a_choice_does_not_have():
    with pytest.raises(ValueError, match="neckline is one of round, V, high, not 'square'"):
        want(PULLOVER, {"chest": 96}, KNIT, choices={"neckline": "square"})


def test_a_choice_of_another_construction_is_left_alone():
    assert "front" not in want(PULLOVER, {}, KNIT, choices={"front": "opened"}).wanted.choices
