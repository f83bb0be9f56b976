"""What a garment measures as drawn: read from its runs, against its outline and by hand."""

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from app.craft.constructions import construction_of
from app.craft.constructions.as_drawn import as_drawn, stitches_at
from app.craft.constructions.drawing import Knit
from app.craft.constructions.wanting import want
from tests.craft.constructions.random_bodies import WORDS, orders

KNIT = Knit(22, 30)
IN_ONE = ("raglan", "round yoke")


def measured(word, measures=None, **choices):
    construction = construction_of(word)
    chest = {"chest": 96} if "chest" in construction.measures else {}
    wanted = want(construction, chest | (measures or {}), KNIT, choices=choices).wanted
    return {one.measure: one for one in as_drawn(wanted, construction.draw(wanted))}


def test_a_straight_body_is_as_wide_at_its_waist_as_at_its_chest():
    """96 + 7.5 cm are 227.7 stitches, drawn in pairs on both sides: 228, 103.6 cm. So is the waist,
    for which 85.7 cm were asked: 40 stitches more, 18 cm."""
    chest, waist = (measured("pullover, drop shoulder")[one] for one in ("chest", "waist"))
    assert (chest.asked, chest.count, chest.unit) == (pytest.approx(227.7), 228, "stitches")
    assert chest.cm == pytest.approx(103.64, abs=0.01)
    assert chest.more == pytest.approx(0.3)
    assert chest.more_cm == pytest.approx(0.14, abs=0.01)
    assert waist.count == 228
    assert waist.more_cm == pytest.approx(103.64 - waist.asked_cm, abs=0.01)
    assert 15 < waist.more_cm < 20


def test_a_fitted_body_is_as_wide_as_was_asked():
    body = measured("cardigan, raglan", {"waist": 80, "hips": 104}, body="fitted")
    for name in ("chest", "waist", "hips"):
        assert abs(body[name].more) <= 2


def test_a_round_yoke_by_percentages_takes_no_heed_of_the_arm():
    """A third of 228 stitches, whatever was asked: 76, 34.5 cm for an arm of 50 + 4.5 cm."""
    by_share = measured("pullover, round yoke", {"upper arm": 50})["upper arm"]
    assert (by_share.count, by_share.more_cm) == (76, pytest.approx(34.55 - 54.5, abs=0.01))
    choices = {"proportions": "by measure"}
    by_measure = measured("pullover, round yoke", {"upper arm": 50}, **choices)["upper arm"]
    assert abs(by_measure.more_cm) < 0.5


def test_a_drop_shoulder_sleeve_is_as_wide_as_its_armhole():
    arm = measured("pullover, drop shoulder")["upper arm"]
    assert (arm.count, arm.cm) == (100, pytest.approx(45.45, abs=0.01))


def test_a_hat_goes_in_wedges():
    """56 × 0.92 = 51.5 cm, 113.3 stitches; 8 wedges of 14."""
    head = measured("hat", {"head": 56})["head"]
    assert (round(head.asked, 1), head.count, round(head.more_cm, 1)) == (113.3, 112, -0.6)


def test_a_short_sleeve_reaches_its_share_and_no_wrist():
    arm = measured("pullover, set-in sleeve", {"arm length to underarm": 44}, sleeve="short")
    assert "wrist" not in arm
    length = arm["arm length to underarm"]
    assert length.asked_cm == pytest.approx(0.3 * 44)
    assert length.more_cm == pytest.approx(0, abs=0.5)
    assert length.unit == "rows"


def test_a_hem_without_depth_counts_for_nothing():
    length = measured("pullover, raglan", {"hem depth": 0, "body length": 60})["body length"]
    assert length.more_cm == pytest.approx(0, abs=0.7)


def test_a_row_that_is_not_there():
    construction = construction_of("scarf")
    (piece,) = construction.draw(want(construction, {}, KNIT).wanted).pieces
    assert stitches_at(piece, piece.rows) == piece.runs[-1].stitches_to
    with pytest.raises(ValueError, match="the scarf has no row 511"):
        stitches_at(piece, piece.rows + 1)


@pytest.mark.parametrize("word", WORDS)
def test_every_ease_has_its_place(word):
    """But the width across the back of a garment in one piece, which nothing shapes."""
    construction = construction_of(word)
    places = measured(word)
    none = {"cross back"} if word.endswith(IN_ONE) else set()
    assert set(construction.eases) - none <= set(places)


@pytest.mark.property
@pytest.mark.parametrize("word", WORDS)
@settings(max_examples=15, deadline=None)
@given(data=st.data())
def test_lengths_are_drawn_as_they_were_asked_for(word, data):
    """Within four rows of the garment: each piece to a pair of rows; but where an arm or a quarter
    of the body sets the depth of an armhole."""
    order = data.draw(orders(word))
    drawing = order.drawn()
    assume(drawing is not None)
    for one in as_drawn(order.wanted(), drawing):
        if one.unit == "rows" and one.measure != "armhole depth":
            assert abs(one.more_cm) <= order.knit.long(4)


@pytest.mark.property
@pytest.mark.parametrize("word", ["scarf", "cowl", "hat", "socks", "mittens", "shawl, triangular"])
@settings(max_examples=15, deadline=None)
@given(data=st.data())
def test_widths_are_those_of_the_outline(word, data):
    order = data.draw(orders(word))
    drawing = order.drawn()
    assume(drawing is not None)
    (across,) = [one for one in as_drawn(order.wanted(), drawing) if one.unit == "stitches"]
    name = next(one.pieces[0] for one in drawing.places if one.measure == across.measure)
    outline = drawing.piece(name).outline
    bottom = [x for x, y in outline if y == 0]
    widest = [x for x, _ in outline] if "shawl" in word else bottom
    assert across.cm == pytest.approx(max(widest) - min(widest))
