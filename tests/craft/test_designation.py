import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.craft.designation import (
    UNTWISTED,
    Designation,
    Fold,
    Turns,
    designation_of,
    fold_to_single,
    read_designation,
    single_to_fold,
)

TWO_PLY = Designation(450, 225, (Fold(1, Turns("Z", 320)), Fold(2, Turns("S", 160))))
CABLE = Designation(
    132, 20, (Fold(1, Turns("Z", 700)), Fold(2, Turns("S", 400)), Fold(3, Turns("Z", 200)))
)

DENSITY = st.floats(0.1, 9999).map(lambda tex: round(tex, 4))
TURNS = st.none() | st.just(UNTWISTED)
TURNS |= st.builds(Turns, st.sampled_from("SZ"), st.none() | st.integers(1, 3000))
OUTER = st.lists(st.builds(Fold, st.integers(2, 12), TURNS), max_size=3)
FOLDS = st.builds(lambda single, outer: (Fold(1, single), *outer), TURNS, OUTER)


@pytest.mark.parametrize(
    ("yarn", "from_fold", "from_single"),
    [
        (TWO_PLY, "R 450 tex S 160 / 2 Z 320; 225 tex", "225 tex Z 320 × 2 S 160; R 450 tex"),
        (
            CABLE,
            "R 132 tex Z 200 / 3 S 400 / 2 Z 700; 20 tex",
            "20 tex Z 700 × 2 S 400 × 3 Z 200; R 132 tex",
        ),
    ],
)
def test_both_orders(yarn, from_fold, from_single):
    assert fold_to_single(yarn) == from_fold
    assert single_to_fold(yarn) == from_single
    assert read_designation(from_fold) == yarn
    assert read_designation(from_single) == yarn


def test_what_a_maker_knows_of_her_yarn():
    yarn = read_designation("R450tex S/2")
    assert yarn == Designation(450, None, (Fold(1), Fold(2, Turns("S"))))
    assert fold_to_single(yarn) == "R 450 tex S / 2"


def test_the_letter_after_the_two_is_the_twist_of_the_singles():
    assert read_designation("R 450 tex/2 S").folds == (Fold(1, Turns("S")), Fold(2))


def test_a_single_and_yarns_wound_together_without_twist():
    single = Designation(None, 40, (Fold(1, Turns("Z", 660)),))
    assert fold_to_single(single) == single_to_fold(single) == "40 tex Z 660"
    assert read_designation("40 tex Z660") == single
    wound = read_designation("40 tex S 155 x 2 t0")
    assert wound.folds[1] == Fold(2, UNTWISTED)
    assert single_to_fold(wound) == "40 tex S 155 × 2 t0"


def test_a_decimal_comma_is_read():
    assert read_designation("R 69,3 tex Z 400 / 2 S 600; 34 tex").resultant_tex == 69.3


def test_a_skein_as_it_was_measured():
    assert fold_to_single(designation_of(450.704, 2, "S")) == "R 451 tex S / 2"
    assert fold_to_single(designation_of(98.76, 3, None)) == "R 98.8 tex / 3"
    assert fold_to_single(designation_of(225.4, 1, "Z")) == "225 tex Z"


@pytest.mark.property
@given(DENSITY, st.none() | DENSITY, FOLDS)
def test_what_is_written_is_read_back(single, whole, folds):
    yarn = Designation(whole, single, folds)
    assert read_designation(single_to_fold(yarn)) == yarn
    if whole is not None and len(folds) > 1:
        assert read_designation(fold_to_single(yarn)) == yarn


@pytest.mark.parametrize(
    "text", ["", "two-ply", "450", "R 450 tex", "450 tex Q", "450 tex × 2 × Z"]
)
def test_what_is_no_designation_is_said(text):
    with pytest.raises(ValueError, match="is no designation: write it as"):
        read_designation(text)


@pytest.mark.parametrize(
    ("make", "words"),
    [
        (lambda: Designation(None, None, (Fold(1),)), "needs a linear density"),
        (lambda: designation_of(0, 2, "S"), "linear density in tex must be more"),
        (lambda: designation_of(450, 0, "S"), "at least two pieces make a fold"),
        (lambda: Designation(0, None, (Fold(1),)), "must be more than zero"),
        (lambda: Designation(450, None, ()), "the first fold of a yarn is its single"),
        (lambda: Designation(450, None, (Fold(2),)), "the first fold of a yarn is its single"),
        (lambda: Designation(450, None, (Fold(1), Fold(1))), "at least two pieces"),
        (lambda: read_designation("225 tex × 1"), "at least two pieces"),
        (lambda: fold_to_single(Designation(None, 20, (Fold(1), Fold(2)))), "resultant of this"),
        (lambda: single_to_fold(Designation(40, None, (Fold(1), Fold(2)))), "single of this"),
    ],
)
def test_what_no_yarn_can_be(make, words):
    with pytest.raises(ValueError, match=words):
        make()
