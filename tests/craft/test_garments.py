from math import hypot

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.craft.fabric import loop_cm, metres_per_m2
from app.craft.garments import KINDS, Piece, garment

FORTY_INCH = {
    "chest": 91.4,
    "ease": 10.2,
    "body length": 24 * 2.54,
    "arm length to underarm": 17.5 * 2.54,
    "wrist": 8 * 2.54 - 3,
    "upper arm": 14.5 * 2.54 - 6.1,
}
"""40 in round, back 24 in, sleeve 17.5 in to the underarm, wrist 8 in, upper arm 14.5 in, as the
knitted pieces come out."""


def area_of(kind: str, own: dict[str, float], part: str = "") -> float:
    return sum(p.area_cm2 for p in garment(kind, own).pieces if part in p.name)


@pytest.mark.published
def test_a_forty_inch_pullover_lies_below_the_printed_amount():
    """Budd, The Knitter's Handy Guide to Yarn Requirements: 1475 yd at 5 stitches per inch, a
    stated amount with a margin in it; geometry gives between 55 and 100 % of it."""
    loop = loop_cm(50 / 2.54, 70 / 2.54)
    metres = metres_per_m2(50 / 2.54, 70 / 2.54, loop).value * area_of("pullover", FORTY_INCH) / 1e4
    assert 0.55 < metres / 0.9144 / 1475 < 1.0


def test_the_sleeves_are_a_third_of_a_pullover():
    assert 0.30 < area_of("pullover", FORTY_INCH, "sleeve") / area_of("pullover", FORTY_INCH) < 0.38


@pytest.mark.published
def test_a_cardigan_takes_five_percent_more():
    """A printed general guide: cardigan +5 %."""
    ratio = area_of("cardigan", {"chest": 96}) / area_of("pullover", {"chest": 96})
    assert ratio == pytest.approx(1.05, abs=0.01)


def test_a_waistcoat_is_a_pullover_without_its_sleeves():
    """Up to the bands at its armholes."""
    without = area_of("pullover", {"chest": 96}) - area_of("pullover", {"chest": 96}, "sleeve")
    bands = area_of("waistcoat", {"chest": 96}, "armhole bands")
    assert area_of("waistcoat", {"chest": 96}) == pytest.approx(without + bands)


def test_a_piece_is_as_large_as_its_trapezoid():
    assert Piece("sleeve", 22, 36, 45, copies=2).area_cm2 == 2 * 29 * 45


@pytest.mark.parametrize("kind", sorted(KINDS))
def test_each_garment_names_its_own_shape_and_what_was_assumed(kind):
    made = garment(kind)
    assert made.kind == kind
    assert made.causes[f"the shape of a {kind} as drawn here"] == 0.10
    assert {f"{name}, assumed" for name in made.assumed} < set(made.causes)
    assert 0.10 < hypot(*made.causes.values()) < 0.35
    assert KINDS[kind].chief in made.assumed


def test_measuring_makes_it_surer():
    rough, better = garment("pullover", {"chest": 96}), garment("pullover", FORTY_INCH)
    assert hypot(*better.causes.values()) < hypot(*rough.causes.values())
    assert "upper arm" in rough.assumed
    assert "upper arm" not in better.assumed
    assert "chest" not in rough.assumed


def test_the_effect_of_an_assumed_measure_by_another_road():
    """A scarf 22 ± 4 cm wide: 4/22 of its area."""
    assert garment("scarf").causes["width, assumed"] == pytest.approx(4 / 22)
    assert garment("scarf", {"width": 30, "length": 150}).area_cm2 == 4500


def test_a_child_takes_a_smaller_hat():
    assert garment("hat", {"chest": 60}).area_cm2 < garment("hat", {"chest": 96}).area_cm2
    assert garment("hat", {"head": 50}).area_cm2 < garment("hat", {"head": 58}).area_cm2


@pytest.mark.property
@given(st.floats(32, 150), st.floats(1, 20))
def test_a_larger_chest_never_takes_less(chest, more):
    small, large = (
        area_of("pullover", {"chest": chest}),
        area_of("pullover", {"chest": chest + more}),
    )
    assert large > small


@pytest.mark.parametrize(
    ("kind", "own", "words"),
    [
        ("toga", {}, "no garment is called 'toga'"),
        ("pullover", {"chest": 400}, "a chest must lie between 30 and 180 cm"),
        ("pullover", {"chest": 96, "ease": -120}, "these measures leave nothing for"),
        ("pullover", {"chest": 96, "body length": 10}, "nothing for the body of a pullover"),
        ("scarf", {"width": 0, "length": 100}, "nothing for the scarf of a scarf"),
        ("hat", {"head": -3}, "head must be more than zero"),
    ],
)
def test_impossible_bodies_are_refused(kind, own, words):
    with pytest.raises(ValueError, match=words):
        garment(kind, own)
