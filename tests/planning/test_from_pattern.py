"""Parts from a size of a written pattern: counted at the own gauge, or shared out of a total."""

import pytest

from app.book.gauge import Gauge
from app.book.pattern import PatternSize, Share, SizePart
from app.book.shape import Run, Stated
from app.planning.from_pattern import (
    SHARE_U_PCT,
    USUAL_SHARES,
    WHOLE,
    at_gauge,
    case_of,
    counted_parts,
    shares_of,
    stated_parts,
    uncounted,
)
from tests.books import a_plan
from tests.patterns import a_size, five_sizes

OWN = Gauge(20.0, 28.0)
PLAN, PATTERN = a_plan(gauge=OWN), five_sizes()


def runs(size="3", case="stitches", own=OWN):
    return {
        part.name: part.shape.runs[0]
        for part in counted_parts(PLAN, PATTERN, a_size(size), own, case)
    }


@pytest.mark.golden
def test_printed_stitches_with_lengths_by_the_tape():
    """40 cm at 28 rows are 112 rows, 45 cm are 126; 66 rows at 30 are 22 cm, 61.6 rows at 28."""
    assert runs() == {
        "Body": Run(112, 229, 229),
        "Sleeves": Run(126, 50, 80),
        "Yoke": Run(62, 349, 90),
    }


@pytest.mark.golden
def test_the_other_two_cases():
    assert runs(case="stitches and rows")["Body"] == Run(120, 229, 229)
    assert runs(case="stitches and rows")["Yoke"] == Run(66, 349, 90)
    assert runs(case="size")["Body"] == Run(112, 208, 208)
    assert runs(case="size")["Sleeves"] == Run(126, 45, 73)


def test_a_part_knows_its_place_its_edges_and_how_unsure_it_is():
    body, sleeves, yoke = counted_parts(PLAN, PATTERN, a_size("3"), OWN, "stitches")
    assert (body.id, body.place, body.in_round, body.edges) == (
        "pullover-Body",
        "body",
        True,
        "cast on",
    )
    assert (sleeves.edges, yoke.edges) == ("cast on", "cast off")
    assert (sleeves.copies, sleeves.place, yoke.position) == (2, "sleeve", 3)
    assert {body.shape_u_pct, sleeves.shape_u_pct, yoke.shape_u_pct} == {10.0}


@pytest.mark.parametrize(
    ("name", "edges", "in_round"),
    [
        ("Back", "cast on, off and seams", False),
        ("Front bands", "picked up and cast off", False),
        ("Collar", "picked up and cast off", True),
        ("Hood lining", "picked up and cast off", True),
        ("Gusset", "cast on, off and seams", False),
    ],
)
def test_edges_follow_the_place(name, edges, in_round):
    size = PatternSize("M", 1000, None, (SizePart(name, cast_on=40, rows=20),))
    (part,) = counted_parts(PLAN, PATTERN, size, OWN, "stitches")
    assert (part.edges, part.in_round) == (edges, in_round)


def edges_of(*parts):
    size = PatternSize("M", 1000, None, parts)
    made = counted_parts(PLAN, PATTERN, size, OWN, "stitches")
    return {one.name: (one.edges, one.in_round) for one in made}


def a_size_part(name, cast_on=40, widest=None):
    return SizePart(name, cast_on=cast_on, widest=widest, rows=20)


def test_hems_and_cuffs_are_cast_on_and_knit_on_from():
    told = edges_of(*(a_size_part(one) for one in ("Hem", "Body", "Cuffs", "Sleeves", "Yoke")))
    assert told == {
        "Hem": ("cast on", True),
        "Body": ("none", True),
        "Cuffs": ("cast on", True),
        "Sleeves": ("none", True),
        "Yoke": ("cast off", True),
    }
    flat = edges_of(*(a_size_part(one) for one in ("Hem", "Back", "Front", "Sleeves")))
    assert flat["Hem"] == ("cast on and seams", False)
    assert flat["Back"] == ("cast off and seams", False)
    assert flat["Sleeves"] == ("cast on and off", True)


def test_a_hat_is_cast_on_at_its_brim_and_drawn_together():
    told = edges_of(*(a_size_part(one) for one in ("Brim", "Sides", "Crown")))
    brim, sides, crown = (told[one][0] for one in ("Brim", "Sides", "Crown"))
    assert (brim, sides, crown) == ("cast on", "none", "none")


def test_a_yoke_that_widens_is_knit_from_the_neck():
    told = edges_of(a_size_part("Yoke", 90, 300), a_size_part("Body"), a_size_part("Sleeves"))
    assert {name: edges for name, (edges, _) in told.items()} == {
        "Yoke": "cast on",
        "Body": "cast off",
        "Sleeves": "cast off",
    }


def test_a_part_that_meets_no_other_is_cast_on_and_off():
    assert edges_of(a_size_part("Yoke"))["Yoke"] == ("cast on and off", True)
    assert edges_of(a_size_part("Hem"))["Hem"] == ("cast on, off and seams", False)


def test_what_cannot_be_counted_is_named_and_left_out():
    parts = (SizePart("Body", cast_on=200, rows=100), SizePart("Collar", cast_on=90))
    size = PatternSize("M", 1000, None, parts)
    assert uncounted(size) == ("Collar",)
    assert [one.name for one in counted_parts(PLAN, PATTERN, size, OWN, "size")] == ["Body"]
    assert at_gauge(parts[1], "size", PATTERN, OWN) is None


@pytest.mark.golden
def test_a_stated_total_is_carried_over_and_shared_as_usual():
    """1310 m × 1.013; body, sleeves and yoke in the usual shares of 48 : 34 : 18."""
    body, sleeves, yoke = stated_parts(PLAN, PATTERN, a_size("3"), OWN, "stitches")
    whole = 1310 * (28 / 30) * (22 * 30 / (20 * 28)) ** 0.5
    assert body.shape.mm / 1000 == pytest.approx(whole * 0.48, abs=0.01)
    assert sleeves.shape.mm / 1000 == pytest.approx(whole * 0.34 / 2, abs=0.01)
    assert yoke.shape.mm / 1000 == pytest.approx(whole * 0.18, abs=0.01)
    assert {one.shape_u_pct for one in (body, sleeves, yoke)} == {SHARE_U_PCT}
    assert sum(USUAL_SHARES[one] for one in ("body", "sleeve", "yoke")) == 100


def test_a_pattern_that_tells_its_shares_is_believed():
    shares = tuple(Share(name, pct) for name, pct in (("Body", 50), ("Sleeves", 30), ("Yoke", 20)))
    told = shares_of(five_sizes(shares=shares), a_size("1").parts)
    assert told == {"Body": 0.5, "Sleeves": 0.3, "Yoke": 0.2}
    half_told = shares_of(five_sizes(shares=shares[:2]), a_size("1").parts)
    assert half_told == shares_of(PATTERN, a_size("1").parts)


def test_a_size_without_parts_is_one_whole_and_one_without_yarn_has_none():
    (whole,) = stated_parts(PLAN, PATTERN, PatternSize("M", 960, 900_000), PATTERN.gauge, "size")
    assert (whole.name, whole.shape, whole.shape_u_pct) == (WHOLE, Stated(900_000), 0.0)
    assert stated_parts(PLAN, PATTERN, PatternSize("M", 960), OWN, "size") == ()


def test_where_nobody_said_the_stitches_are_kept():
    assert case_of(a_plan()) == "stitches"
    assert case_of(a_plan(follows="size")) == "size"
