"""Metres of every construction by another route: the area of its outline, by the shoelace formula,
times the metres in a square metre of fabric; and the outline against the body it was drawn for."""

from dataclasses import replace
from itertools import pairwise

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from app.craft.constructions import constructions
from app.craft.constructions.drawing import Knit
from app.craft.constructions.set_in import SHOULDER_SLOPE_CM
from app.craft.constructions.wanting import want
from app.craft.fabric import loop_cm, metres_per_m2
from tests.craft.constructions.random_bodies import WORDS, orders

KNIT = Knit(22, 30)


def shoelace(points):
    """Area of a polygon in the square of its unit."""
    around = [*points, points[0]]
    return abs(sum(x0 * y1 - x1 * y0 for (x0, y0), (x1, y1) in pairwise(around))) / 2


def metres_by_rows(piece):
    loop = loop_cm(piece.knit.stitches, piece.knit.rows).value
    return sum(run.rows * (run.stitches + run.stitches_to) / 2 for run in piece.runs) * loop / 100


def metres_by_area(piece):
    stitches, rows = piece.knit.stitches, piece.knit.rows
    fabric = metres_per_m2(stitches, rows, loop_cm(stitches, rows)).value
    return shoelace(piece.outline) / 10_000 * fabric


@pytest.mark.property
@pytest.mark.parametrize("word", WORDS)
@settings(max_examples=20, deadline=None)
@given(data=st.data())
def test_rows_and_area_give_the_same_metres(word, data):
    drawing = data.draw(orders(word)).drawn()
    assume(drawing is not None)
    for piece in drawing.pieces:
        assert metres_by_rows(piece) == pytest.approx(metres_by_area(piece), rel=0.01)


def test_the_shoelace_of_a_square_with_a_notch():
    assert shoelace([(0, 0), (4, 0), (4, 4), (3, 4), (3, 2), (1, 2), (1, 4), (0, 4)]) == 12


BODY = {
    "chest": 96.0,
    "waist": 80.0,
    "hips": 104.0,
    "cross back": 40.0,
    "armhole depth": 20.0,
    "body length": 60.0,
    "back waist length": 42.0,
    "neck": 44.0,
    "arm length to underarm": 44.0,
    "upper arm": 30.0,
    "wrist": 16.0,
    "head": 56.0,
    "hand": 19.0,
    "hand length": 18.0,
    "foot": 23.0,
    "foot length": 25.0,
}
"""A body of our own, in cm."""

EASE = {"chest": 8.0, "cross back": 0.0, "armhole depth": 2.0, "upper arm": 5.0, "wrist": 4.0}

TOPS = ("pullover", "cardigan", "waistcoat")

EDGES = 4
"""Two side seams of two edges each: half a multiple of two stitches at each."""


def drawing(word, **choices):
    construction = constructions()[word]
    return construction.draw(want(construction, BODY, KNIT, ease=EASE, choices=choices).wanted)


def wide(piece):
    across = [x for x, _ in piece.outline]
    return max(across) - min(across)


def tall(piece):
    return max(y for _, y in piece.outline)


def sits(piece):
    """Width at the cast-on."""
    at = [x for x, y in piece.outline if y == 0]
    return max(at) - min(at)


def alike(stitches):
    """A difference in width of at most so many stitches."""
    return stitches * 10 / KNIT.stitches


ROW_PAIR = 2 * 10 / KNIT.rows


@pytest.mark.parametrize("word", [word for word in WORDS if word.startswith(TOPS)])
def test_a_top_is_as_wide_and_as_long_as_its_body(word):
    """(96 + 8) cm around; 60 cm from the hem to the nape, of which the hem is 5."""
    made = drawing(word, neckline="round")
    flat = "raglan" not in word and "yoke" not in word
    trunk = [p for p in made.pieces if p.place in ("back", "front", "body")]
    around = sum(p.copies * sits(p) for p in trunk)
    missing = 3.0 if "front bands" in {p.name for p in made.pieces} else 0.0
    assert around == pytest.approx(104 - missing, abs=alike(2))
    slope = 2.0 if "set-in" in word or "shaped" in word else 0.0
    up = trunk[0] if flat else made.piece("body")
    length = tall(up) + (0 if flat else tall(made.piece("yoke")))
    assert length == pytest.approx(60 - 5 + slope, abs=ROW_PAIR)


@pytest.mark.property
@pytest.mark.parametrize("word", [word for word in WORDS if word.startswith(TOPS)])
@settings(max_examples=20, deadline=None)
@given(data=st.data())
def test_any_body_gets_a_top_of_its_width_and_length(word, data):
    """Around the body within half a multiple (of two) at each edge, but for what front bands
    overlap; from hem to nape within a pair of rows."""
    order = data.draw(orders(word))
    straight = replace(order, choices={**order.choices, "body": "straight"})
    made = straight.drawn()
    assume(made is not None)
    wanted, knit, named = straight.wanted(), order.knit, {p.name for p in made.pieces}
    trunk = [p for p in made.pieces if p.place in ("back", "front", "body")]
    around = sum(p.copies * p.runs[0].stitches for p in trunk)
    count = knit.across(wanted.cm("chest"))
    overlap = knit.across(order.measures["front band depth"]) if "front bands" in named else 0
    assert count - overlap - EDGES <= around <= count + EDGES
    hem = next(p for p in made.pieces if p.name in ("hem", "back hem", "back and front hems"))
    slope = SHOULDER_SLOPE_CM if "set-in" in word or "shaped" in word else 0.0
    above = tall(made.piece("yoke")) if "yoke" in named else 0.0
    length = tall(hem) + tall(trunk[0]) + above - slope
    assert length == pytest.approx(wanted.cm("body length"), abs=knit.long(4))


@pytest.mark.parametrize("word", [w for w in WORDS if w.startswith(("pullover", "cardigan"))])
@pytest.mark.parametrize(
    ("sleeve", "reach"), [("long", 1.0), ("three-quarter", 0.7), ("short", 0.3)]
)
def test_a_sleeve_reaches_where_it_is_to(word, sleeve, reach):
    """44 cm to the underarm, less the cuff of 5 cm, which takes at most a third of a short one."""
    made = drawing(word, sleeve=sleeve).piece("sleeves")
    cuff = min(5.0, reach * 44 / 3)
    upward = made.runs[0].rows * 10 / KNIT.rows
    assert upward == pytest.approx(reach * 44 - cuff, abs=ROW_PAIR)
    if "round yoke" not in word:
        top = 2 * 22.0 if "drop" in word else 35.0
        upper = made.runs[0].stitches_to * 10 / KNIT.stitches
        assert upper == pytest.approx(top, abs=alike(2))
        if sleeve == "long":
            assert sits(made) == pytest.approx(20.0, abs=alike(2))


def test_a_fitted_body_follows_hips_waist_and_chest():
    """Hips 104 + half the ease of 8, waist 80 + 8, chest 96 + 8; half of each in a back."""
    back = drawing("pullover, drop shoulder", body="fitted").piece("back")
    ends = [back.runs[0].stitches, back.runs[0].stitches_to, back.runs[1].stitches_to]
    wanted = [(104 + 4) / 2, (80 + 8) / 2, (96 + 8) / 2]
    assert [n * 10 / KNIT.stitches for n in ends] == pytest.approx(wanted, abs=alike(1))


@pytest.mark.parametrize(("nape_to_waist", "rows"), [(42, 40), (58, 24), (30, 76)])
def test_the_waist_lies_where_it_was_measured(nape_to_waist, rows):
    """60 − 42 − 5 cm of hem: 13 cm, 39 rows, in pairs 40; at least a quarter from either end of
    the 60 − 22 − 5 = 33 cm below the arms: 24 of 100 rows."""
    construction = constructions()["pullover, drop shoulder"]
    measures = {**BODY, "back waist length": nape_to_waist}
    made = construction.draw(
        want(construction, measures, KNIT, ease=EASE, choices={"body": "fitted"}).wanted
    )
    assert made.piece("back").runs[0].rows == rows


def test_a_set_in_body_is_shaped_in_to_the_cross_back():
    runs = drawing("waistcoat, shaped armholes").piece("back").runs
    cross = runs[2]
    assert cross.stitches == cross.stitches_to < runs[1].stitches < runs[0].stitches
    assert cross.stitches * 10 / KNIT.stitches == pytest.approx(40.0, abs=alike(1))


@pytest.mark.parametrize(
    ("word", "name", "across", "up"),
    [
        ("scarf", "scarf", 22, 170),
        ("cowl", "cowl", 66, 28),
        ("shawl, triangular", "shawl", 160, 75),
        ("shawl, half-round", "shawl", 140, 70),
        ("blanket", "middle", 92, 122),
        ("hat", "sides", 56 * 0.92, 0.28 * 56 - 5),
        ("hat", "crown", 56 * 0.92 - 8 / 2.2, 0.14 * 56),
        ("mittens", "cuffs", 0.9 * 19 * 1.08, 6),
        ("socks", "cuffs", 0.9 * 48 / 2.2, 4),
        ("socks", "legs", 23 * 0.92, 20 - 4 - 23 * 0.92 / 2 * 22 / 30),
    ],
)
def test_a_small_thing_is_as_wide_and_as_long_as_wanted(word, name, across, up):
    """Within half a multiple: of a hat's eight wedges, of four else; and a pair of rows."""
    piece = drawing(word).piece(name)
    multiple = 8 if word == "hat" else 4
    assert wide(piece) == pytest.approx(across, abs=alike(multiple / 2))
    assert tall(piece) == pytest.approx(up, abs=2 * ROW_PAIR)


def test_a_mitten_and_a_sock_are_as_long_as_hand_and_foot():
    hand = drawing("mittens").piece("hands")
    assert tall(hand) == pytest.approx(18, abs=ROW_PAIR)
    sock = drawing("socks")
    turned = sock.piece("heels").runs[1].rows * 10 / KNIT.rows
    foot = turned + tall(sock.piece("feet")) + tall(sock.piece("toes"))
    assert foot == pytest.approx(25 * 0.94, abs=ROW_PAIR)
