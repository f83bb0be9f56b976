from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.craft.grades import grade_named, grade_of, grades


def test_a_mean_falls_into_its_grade():
    assert grade_of(27).name == "56s"
    assert grade_of(27).blood == "3/8 blood"
    assert grade_of(15).name == "finer than 80s"
    assert grade_of(45).name == "coarser than 36s"


def test_a_mean_is_read_to_the_hundredth_it_is_printed_to():
    assert grade_of(19.144).name == "80s"
    assert grade_of(19.146).name == "70s"


def test_an_uneven_fleece_is_one_grade_lower():
    assert grade_of(27, sd=7.59).name == "56s"
    assert grade_of(27, sd=7.6).name == "54s"
    assert grade_of(45, sd=20).name == "coarser than 36s"


def test_a_grade_by_its_count():
    assert grade_named("56").micron_low == 26.4
    assert grade_named(" 56s ") == grade_named("56")
    with pytest.raises(ValueError, match="no grade of wool is called '57s'"):
        grade_named("57s")


def test_the_grades_meet_without_a_gap():
    for finer, coarser in pairwise(grades()):
        assert coarser.micron_low == pytest.approx(finer.micron_high + 0.01)
    assert grades()[0].micron_low is None
    assert grades()[-1].micron_high is None


@pytest.mark.property
@given(st.floats(5, 60), st.floats(0, 10))
def test_coarser_wool_is_never_a_finer_grade(micron, more):
    place = [one.name for one in grades()].index
    assert place(grade_of(micron).name) <= place(grade_of(micron + more).name)


def test_outside_the_domain():
    with pytest.raises(ValueError, match="the mean diameter in µm must be more"):
        grade_of(0)
    with pytest.raises(ValueError, match="a spread in µm must be more"):
        grade_of(27, sd=0)
