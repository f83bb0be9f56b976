import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.craft.counts import to_tex
from app.craft.yarn_class import (
    by_gauge,
    by_grist,
    by_wraps,
    class_opinion,
    class_sentence,
    yarn_classes,
)


def numbers(classes):
    return [one.number for one in classes]


@pytest.mark.published
@pytest.mark.parametrize(
    ("yards_per_pound", "number"),
    [(2401, 0), (2400, 1), (1901, 1), (1200, 3), (901, 3), (900, 4), (401, 5), (400, 6), (90, 6)],
)
def test_grist_by_a_printed_handspun_chart(yards_per_pound, number):
    assert number in numbers(by_grist(to_tex("yd/lb", yards_per_pound)))


@pytest.mark.published
@pytest.mark.parametrize(
    ("per_4_inches", "number"),
    [(33, 0), (45, 0), (27, 1), (32, 1), (23, 2), (24, 3), (16, 4), (15, 5), (7, 6), (4, 7)],
)
def test_gauge_by_the_craft_yarn_council(per_4_inches, number):
    assert number in numbers(by_gauge(per_4_inches / 1.016))


def test_wraps_are_evidence_too():
    assert numbers(by_wraps(10.5)) == [4]
    assert numbers(by_wraps(16)) == [1]
    assert numbers(by_wraps(4)) == [6]


def test_between_two_ranges_both_or_the_nearer_one():
    assert numbers(by_gauge(26.5 / 1.016)) == [1, 2]
    assert numbers(by_gauge(26.2 / 1.016)) == [2]


def test_what_is_said_when_they_agree():
    assert class_sentence(550) == "3 Light by its grist"
    assert class_sentence(450, 21.5) == "3 Light by its grist and its gauge"


def test_what_is_said_when_they_disagree():
    assert class_sentence(450, 17) == (
        "3 Light by its grist, 4 Medium by its gauge: "
        "knit like this the fabric is more open than is usual for the yarn"
    )
    assert "the fabric is firmer" in class_sentence(450, 30)


def test_wraps_that_disagree_say_how_the_yarn_is():
    """450 tex is class 3 (12 or 13 wraps): 9 wraps are loftier, 16 denser."""
    assert class_opinion(450, 21.5, 12).sentence == "3 Light by its grist and its gauge"
    assert class_opinion(450, 21.5, 9).sentence.endswith(
        "its wraps say 5 Bulky: the yarn is loftier than usual"
    )
    assert class_opinion(450, wraps_per_inch=16.5).sentence.endswith("denser than usual")


def test_the_working_of_a_class():
    opinion = class_opinion(450, 21.5, 12)
    assert [step.how for step in opinion.steps] == [
        "1102 yd/lb: 3 Light",
        "21.8 stitches in 4 in: 3 Light",
        "12 wraps per inch: 3 Light",
    ]
    assert opinion.agreed == opinion.by_grist == opinion.by_gauge == opinion.by_wraps
    assert class_opinion(450).by_gauge == ()
    assert class_opinion(450, 5).steps[1].standing == "memory"


@pytest.mark.property
@given(st.floats(20, 50_000), st.floats(20, 50_000))
def test_thicker_yarn_never_has_a_lower_class(one, other):
    thin, thick = sorted((one, other))
    assert by_grist(thin)[0].number <= by_grist(thick)[0].number


def test_the_classes_run_from_0_to_7_each_with_a_source():
    assert numbers(yarn_classes()) == list(range(8))
    assert all(one.source for one in yarn_classes())
    assert yarn_classes()[4].label == "4 Medium"


@pytest.mark.parametrize("call", [lambda: by_grist(0), lambda: by_gauge(-2), lambda: by_wraps(0)])
def test_outside_the_domain(call):
    with pytest.raises(ValueError, match="must be more than zero"):
        call()
