import pytest

from app.craft.constructions import construction_of
from app.craft.constructions.drawing import Knit
from app.craft.constructions.wanting import want

KNIT = Knit(22, 30)


def drawn(**measures):
    construction = construction_of("pullover, set-in sleeve")
    body = {name.replace("_", " "): cm for name, cm in measures.items()}
    return construction.draw(want(construction, {"chest": 96, **body}, KNIT).wanted)


def cap_of(drawing):
    """Rows above the underarm."""
    return drawing.piece("sleeves").rows - drawing.piece("sleeves").runs[0].rows


def test_a_cap_by_hand():
    """Armhole: 114 to 96 stitches, 5 cast off at once and 4 slanted over 8 rows, straight for the
    rest of 68: 2.27 + √(1.82² + 2.67²) + 20 = 25.5 cm. Cap: 76 stitches less 5 on each side, a top
    of 20: 2.27 + 4.55 + √(10.45² + 16²) = 25.9 cm, 2 % to ease in."""
    made = drawn()
    (join,) = [join for join in made.joins if join.how == "eased into"]
    assert join.wants / 2 == pytest.approx(25.5, abs=0.05)
    assert join.has / 2 == pytest.approx(25.9, abs=0.05)
    assert made.piece("sleeves").runs[-1].stitches == 66
    assert made.piece("sleeves").runs[-1].stitches_to == 20


def test_a_thin_arm_gets_a_wider_sleeve_in_a_deep_armhole():
    """Its cap would stand taller than nine tenths of the armhole."""
    made = drawn(upper_arm=18, wrist=14, armhole_depth=30)
    of_the_arm = KNIT.pairs(18 + 4.5)
    assert made.piece("sleeves").runs[0].stitches_to > of_the_arm
    assert cap_of(made) <= KNIT.along(0.9 * (30 + 7.5 / 4))


def test_a_thick_arm_gets_a_deeper_armhole():
    """An armhole is at least 0.55 of the sleeve's width deep: 0.55 × (50 + 4.5) = 30 cm."""
    back = drawn(upper_arm=50, armhole_depth=20).piece("back")
    shoulder = 6
    assert back.rows - back.runs[0].rows - shoulder == KNIT.along(0.55 * 54.5, 2)


def test_shoulders_slope():
    """29 stitches each in four steps as even as can be: 7, 7, 7 and 8."""
    back = drawn().piece("back")
    assert back.runs[-1].stitches > 2 * back.runs[-1].stitches_to
    assert back.words[-2:] == (
        "Cast off 42 stitches in even steps over 6 rows (7, 7 and 7 on each side, every 2nd row): "
        "16 stitches, 8 on each side.",
        "Cast off the 16 stitches that are left, 8 on each side.",
    )
