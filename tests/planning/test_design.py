from dataclasses import replace
from itertools import pairwise

import pytest

from app.book.book import Book
from app.book.design import Choice, Design
from app.book.gauge import Gauge
from app.book.person import Measure
from app.book.plan import Plan
from app.book.shape import Run
from app.craft.constructions import construction_of, constructions
from app.craft.constructions.drawing import Impossible
from app.craft.fabric import loop_cm, metres_per_m2
from app.planning.design import (
    drawing_of,
    part_id,
    parts_from,
    shape_share,
    shaping_words,
    taken_for,
)
from app.planning.needs import needs_of
from app.planning.schedule import schedule
from app.planning.yarns import Lots

GAUGE = Gauge(22, 30, needle_mm=4.0)
ALL_MEASURES = {
    "chest": 960,
    "waist": 800,
    "hips": 1040,
    "cross back": 400,
    "armhole depth": 200,
    "body length": 600,
    "neck": 440,
    "arm length to underarm": 440,
    "upper arm": 300,
    "wrist": 160,
}


def design(word="pullover, drop shoulder", *, mm=None, ease=None, **choices):
    return Design(
        word,
        tuple(Measure(*one) for one in (mm or {"chest": 960}).items()),
        tuple(Measure(*one) for one in (ease or {}).items()),
        tuple(Choice(name.replace("_", " "), value) for name, value in choices.items()),
    )


def plan(of):
    return Plan("jumper", "Jumper for Ines", gauge=GAUGE, design=of)


def parts(of):
    return {part.name: part for part in parts_from(plan(of), GAUGE)}


def test_every_piece_becomes_a_part_with_its_rows():
    made = parts(design())
    back = drawing_of(design(), GAUGE).piece("back")
    assert [(r.rows, r.stitches, r.stitches_to) for r in made["back"].shape.runs] == [
        (r.rows, r.stitches, r.stitches_to) for r in back.runs
    ]
    assert (made["back"].place, made["back"].in_round) == ("back", False)
    assert (made["sleeves"].place, made["sleeves"].copies) == ("sleeve", 2)
    assert (made["neck band"].place, made["neck band"].in_round) == ("neck", True)
    assert [part.position for part in made.values()] == list(range(1, len(made) + 1))
    assert all(part.plan_id == "jumper" for part in made.values())


def test_ids_follow_from_names_and_stay_when_drawn_anew():
    assert parts(design())["neck band"].id == part_id("jumper", "neck band") == "jumper-neck-band"
    wider = parts(design(mm={"chest": 1100}))
    assert {part.id for part in wider.values()} == {part.id for part in parts(design()).values()}
    assert wider["back"] != parts(design())["back"]


def test_a_plan_without_a_design_has_no_drawn_parts():
    assert parts_from(Plan("idea", "An idea"), GAUGE) == ()


def test_bands_may_have_a_gauge_and_needle_of_their_own():
    made = parts(design(band_gauge="24 × 32", cuff_needle="3.25", neck_band_gauge="26x34"))
    assert made["back and front hems"].gauge == Gauge(24, 32, needle_mm=4.0)
    assert made["cuffs"].gauge == Gauge(24, 32, needle_mm=3.25)
    assert made["cuffs"].shape.runs[0].needle_mm == 3.25
    assert made["neck band"].gauge == Gauge(26, 34, needle_mm=4.0)
    assert made["back"].gauge is None


def test_a_needle_alone_leaves_the_gauge():
    made = parts(design(band_needle="3.5"))
    assert made["cuffs"].gauge is None
    assert made["cuffs"].shape.runs[0].needle_mm == 3.5
    assert made["sleeves"].shape.runs[0].needle_mm is None


@pytest.mark.parametrize(
    ("typed", "words"),
    [
        ("24", "a gauge is written 24 × 32"),
        ("24 × 32 × 2", "a gauge is written 24 × 32"),
        ("four × five", "stitches must be a number more than zero"),
        ("0 × 32", "stitches must be a number"),
        ("24 × nan", "rows must be a number"),
    ],
)
def test_a_gauge_of_a_band_that_is_none(typed, words):
    with pytest.raises(ValueError, match=words):
        parts(design(band_gauge=typed))


def test_a_needle_that_is_none():
    with pytest.raises(ValueError, match="a needle must be a number"):
        parts(design(band_needle="-3"))


def test_what_nobody_measured_widens_the_shape():
    """All measured: the 10 % a garment differs from its drawing by. Only the chest: more."""
    measured = parts(design(mm=ALL_MEASURES))
    guessed = parts(design())
    assert {part.shape_u_pct for part in measured.values()} == {10.0}
    assert {part.shape_u_pct > 10.5 for part in guessed.values()} == {True}


def test_the_effect_of_a_width_by_another_road():
    """A scarf is as unsure as its width and length: 4/22 and 20/170, and the 10 %."""
    scarf = construction_of("scarf")
    taken = taken_for(design("scarf"), Gauge(80, 100))
    wanted = ((4 / 22) ** 2 + (20 / 170) ** 2 + 0.1**2) ** 0.5
    assert shape_share(scarf, taken) == pytest.approx(wanted, rel=0.02)


def test_a_measure_that_would_not_be_drawn_larger_counts_by_its_share():
    """A shawl as wide as its depth allows: a wider one is refused, and counts as 20/160."""
    shawl = construction_of("shawl, triangular")
    taken = taken_for(design("shawl, triangular", mm={"depth": 600}), GAUGE)
    assert shape_share(shawl, taken) == pytest.approx(((20 / 160) ** 2 + 0.1**2) ** 0.5)


def test_a_body_it_does_not_fit_on_is_refused():
    with pytest.raises(Impossible, match="too short for its armhole"):
        parts(design(mm={"chest": 960, "body length": 200}))
    with pytest.raises(ValueError, match="no construction is called 'toga'"):
        parts(design("toga"))


def test_a_run_in_words():
    """135 rows at 30 in 10 cm."""
    assert shaping_words(Run(135, 48, 80), in_round=False, gauge=GAUGE) == (
        "Increase one stitch at each end of the next and every 8th row, 13 times, then every 10th "
        "row, 3 times: 80 stitches, then work 8 rows more. It is 45.0 cm (17.7 in) long."
    )


def shoelace(points):
    around = [*points, points[0]]
    return abs(sum(x0 * y1 - x1 * y0 for (x0, y0), (x1, y1) in pairwise(around))) / 2


@pytest.mark.parametrize("word", sorted(constructions()))
def test_the_need_of_a_plain_garment_is_its_area(word):
    """Without edges, the metres the reckoning gives are those of the outlines' area."""
    made = parts_from(plan(design(word)), GAUGE)
    plain = [replace(part, edges="none") for part in made]
    needs = needs_of(plan(design(word)), plain, Lots(Book()))
    metres = sum(one.roles[0].need.value for one in needs)
    area = sum(shoelace(one.outline) * one.copies for one in drawing_of(design(word), GAUGE).pieces)
    fabric = metres_per_m2(22, 30, loop_cm(22, 30)).value
    assert metres == pytest.approx(area / 10_000 * fabric, rel=0.01)
    assert all(schedule(part.shape, GAUGE) for part in made)
