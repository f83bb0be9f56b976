"""What holds for every construction, whatever the body and the gauge."""

import random
from collections import Counter
from dataclasses import replace
from typing import get_args

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from app.craft.constructions import constructions
from app.craft.constructions.drawing import Impossible, Knit, Reason
from app.craft.constructions.wanting import choices_of, sizes_of, want
from app.craft.patterns import pattern_of
from app.craft.sizes import body
from tests.craft.constructions.random_bodies import WORDS, orders, stitches_in

pytestmark = pytest.mark.property

IN_PIECES = [word for word in WORDS if "shawl" not in word and word not in ("scarf", "cowl")]

few = settings(max_examples=20, deadline=None)
every = pytest.mark.parametrize("word", WORDS)


def drawn(data, word):
    order = data.draw(orders(word))
    drawing = order.drawn()
    assume(drawing is not None)
    return order, drawing


def pieces_of(drawing):
    return drawing.pieces if drawing else None


def banded(piece):
    return piece.place in ("band", "cuff", "neck") and len({run.pattern for run in piece.runs}) == 1


@every
@few
@given(data=st.data())
def test_counts_are_whole_and_above_zero(word, data):
    _, drawing = drawn(data, word)
    for piece in drawing.pieces:
        for run in piece.runs:
            assert all(isinstance(n, int) for n in (run.rows, run.stitches, run.stitches_to))
            assert run.rows > 0
            assert min(run.stitches, run.stitches_to) > 0
            assert 0 <= run.gap <= run.gap_to


@every
@few
@given(data=st.data())
def test_bands_respect_their_multiple(word, data):
    """In the round a multiple, flat with the edge stitches; a mitred border grows besides."""
    _, drawing = drawn(data, word)
    for piece in drawing.pieces:
        if not banded(piece) or piece.name == "border":
            continue
        pattern = pattern_of(piece.runs[0].pattern)
        plus = 0 if piece.in_round else pattern.plus or 0
        assert (piece.runs[0].stitches - plus) % (pattern.multiple or 1) == 0


@every
@few
@given(data=st.data())
def test_what_is_shaped_at_both_sides_is_even(word, data):
    """A piece that lies in the middle of the body loses and gains in pairs."""
    _, drawing = drawn(data, word)
    for piece in drawing.pieces:
        if piece.place in ("back", "body", "yoke") or piece.name in ("front", "sleeves"):
            assert all((run.stitches - run.stitches_to) % 2 == 0 for run in piece.runs) or (
                word.endswith("round yoke")
            )


@pytest.mark.parametrize("word", IN_PIECES)
@few
@given(data=st.data())
def test_pieces_fit_each_other(word, data):
    _, drawing = drawn(data, word)
    assert [join for join in drawing.joins if not join.holds] == []


@every
@few
@given(data=st.data())
def test_a_piece_is_its_own_mirror_image_or_has_one(word, data):
    _, drawing = drawn(data, word)
    for piece in drawing.pieces:
        points = {(round(x, 6), round(y, 6)) for x, y in piece.outline}
        if piece.name == "fronts":
            assert piece.copies == 2
            assert min(x for x, _ in points) == 0
        else:
            assert points == {(round(-x, 6) + 0.0, y) for x, y in points}


@every
@few
@given(data=st.data())
def test_inches_and_centimetres_draw_the_same(word, data):
    order, _ = drawn(data, word)
    tape = {name: round(cm * 10) / 10 for name, cm in order.measures.items()}
    ruler = {name: (cm / 2.54) * 2.54 for name, cm in tape.items()}
    assert pieces_of(order.drawn(ruler)) == pieces_of(order.drawn(tape))


GROWING = ("chest", "body length", "arm length to underarm", "foot length", "leg", "hand length")
SIZES = ("width", "length", "around", "height", "span", "depth", "radius")


def with_ease(order, more):
    return order.drawn(ease={"chest": order.ease["chest"] + more})


def larger(order, name, share):
    return order.drawn({**order.measures, name: order.measures[name] * (1 + share)})


@every
@few
@given(data=st.data())
def test_a_tenth_more_never_takes_less(word, data):
    """Of the chest, any length, or its ease. In a body fitted to a waist and hips that stay as they
    are the chest moves so little fabric that rounding may outweigh it: see below."""
    order, _ = drawn(data, word)
    order = replace(order, choices={**order.choices, "body": "straight"})
    drawing = order.drawn()
    assume(drawing is not None)
    took = stitches_in(drawing)
    more = [larger(order, name, 0.10) for name in (*GROWING, *SIZES) if name in order.measures]
    more += [with_ease(order, 4.0)] if order.ease else []
    assert all(stitches_in(one) >= took for one in more if one is not None)


@every
@few
@given(data=st.data(), share=st.floats(0.0, 0.10))
def test_a_little_more_takes_no_less_but_for_rounding(word, data, share):
    """Counts are whole and go in pairs: a piece may lose two rows and two stitches to rounding."""
    order, drawing = drawn(data, word)
    a_row = sum(p.copies * max(run.stitches for run in p.runs) for p in drawing.pieces)
    a_stitch = sum(p.copies * p.rows for p in drawing.pieces)
    least = stitches_in(drawing) - 2 * (a_row + a_stitch)
    more = [larger(order, name, share) for name in (*GROWING, *SIZES) if name in order.measures]
    more += [with_ease(order, 40 * share)] if order.ease else []
    assert all(stitches_in(one) >= least for one in more if one is not None)


def sensible(word, chance):
    """A body near the table's, an ordinary gauge, any choices."""
    chest = chance.uniform(40, 150)
    construction = constructions()[word]
    known = {name: one.cm * chance.gauss(1, 0.05) for name, one in body(chest).items()}
    stitches = chance.uniform(12, 34)
    return want(
        construction,
        {**known, "chest": chest},
        Knit(stitches, stitches * chance.uniform(1.2, 1.5)),
        choices={name: chance.choice(v) for name, v in choices_of(construction).items()},
    ).wanted


def test_sensible_bodies_are_hardly_ever_refused():
    """At most 2 % of any construction, whatever the reasons, and each with its kind of reason."""
    chance = random.Random(20260101)
    refused = Counter()
    for word in WORDS:
        for _ in range(100):
            try:
                constructions()[word].draw(sensible(word, chance))
            except Impossible as why:
                refused[word, why.reason] += 1
    assert {reason for _, reason in refused} <= set(get_args(Reason))
    by_word = {word: sum(n for (one, _), n in refused.items() if one == word) for word in WORDS}
    assert max(by_word.values()) <= 2, refused


@every
def test_what_it_needs_is_named(word):
    """Every measure is one of the body's, every ease has its part, no size is nobody's."""
    construction = constructions()[word]
    assert set(construction.measures) <= set(body(96))
    assert set(construction.eases) <= set(construction.measures)
    assert all(cm > 0 for cm, _ in sizes_of(construction).values())
    assert all(values for values in choices_of(construction).values())
