"""A part is changed that another was drawn to meet: found, and drawn to match where it can be."""

from dataclasses import replace

import pytest

from app.book.design import Choice, Design
from app.book.gauge import Gauge
from app.book.person import Measure
from app.book.plan import Plan
from app.book.shape import Counted, Runs
from app.craft.constructions import construction_of, constructions
from app.craft.constructions.meets import MEETS, meets, underarm_row
from app.planning.design import drawing_of, parts_from
from app.planning.parted import parted

GAUGE = Gauge(22.0, 30.0)


def drawn(word, *choices):
    measures = (Measure("chest", 960),) if "chest" in construction_of(word).measures else ()
    plan = Plan("p", "A plan", gauge=GAUGE, design=Design(word, measures, (), choices))
    return plan, {part.name: part for part in parts_from(plan, GAUGE)}


def with_rows(part, more, run=0, stitches=0):
    runs = list(part.shape.runs)
    old = runs[run]
    runs[run] = replace(
        old,
        rows=old.rows + more,
        stitches=old.stitches + stitches,
        stitches_to=old.stitches_to + stitches,
    )
    return replace(part, shape=Runs(tuple(runs)))


def found(plan, parts, **changed):
    parts = parts | {name.replace("_", " "): part for name, part in changed.items()}
    return {(one.part.name, one.other.name): one for one in parted(plan, [*parts.values()])}


@pytest.mark.parametrize("word", sorted(constructions()))
def test_what_is_knit_as_it_was_drawn_meets(word):
    plan, parts = drawn(word)
    assert found(plan, parts) == {}


@pytest.mark.golden
def test_a_longer_body_wants_longer_front_bands():
    """20 rows at 30 in 10 cm are 6.67 cm, 14.7 stitches at 22: from 134 to 148.7, and the rib wants
    146 or 150, which is nearer."""
    plan, parts = drawn("cardigan, round yoke")
    assert parts["front bands"].shape.runs[0].stitches == 134
    off = found(plan, parts, body=with_rows(parts["body"], 20))
    assert set(off) == {("front bands", "body")}
    one = off["front bands", "body"]
    assert (one.rows, one.matched.shape.runs[0].stitches) == (20, 150)
    assert one.matched.shape.runs[0].rows == 9
    assert found(plan, parts, body=with_rows(parts["body"], 20), front_bands=one.matched) == {}


def test_a_shorter_body_wants_shorter_ones_and_a_row_more_none():
    plan, parts = drawn("cardigan, round yoke")
    fewer = found(plan, parts, body=with_rows(parts["body"], -20))["front bands", "body"]
    assert (fewer.rows, fewer.matched.shape.runs[0].stitches) == (-20, 118)
    same = found(plan, parts, body=with_rows(parts["body"], 1))["front bands", "body"]
    assert (same.rows, same.matched) == (1, None)


def test_a_longer_body_below_the_arms_leaves_armholes_and_neck():
    """The back alone: its side seams do not meet the front any more. With both there is nothing."""
    plan, parts = drawn("pullover, set-in sleeve")
    longer = {name: with_rows(parts[name], 10) for name in ("back", "front")}
    assert set(found(plan, parts, back=longer["back"])) == {("front", "back")}
    assert found(plan, parts, **longer) == {}


def test_a_deeper_armhole_leaves_its_sleeve_and_neck_behind():
    plan, parts = drawn("pullover, set-in sleeve")
    deeper = {name: with_rows(parts[name], 10, run=2) for name in ("back", "front")}
    off = set(found(plan, parts, **deeper))
    assert off == {
        ("sleeves", "back"),
        ("sleeves", "front"),
        ("neck band", "back"),
        ("neck band", "front"),
    }


def test_a_wider_body_leaves_hem_and_yoke_behind_and_nothing_can_be_matched():
    plan, parts = drawn("pullover, raglan")
    off = found(plan, parts, body=with_rows(parts["body"], 0, stitches=8))
    assert set(off) == {("hem", "body"), ("yoke", "body")}
    assert {one.matched for one in off.values()} == {None}
    assert {one.rows for one in off.values()} == {0}


def test_a_part_described_anew_is_compared_as_well():
    plan, parts = drawn("cardigan, raglan")
    body = replace(parts["body"], shape=Counted(222, 120))
    assert set(found(plan, parts, body=body)) == {("front bands", "body")}


def test_deeper_front_bands_leave_the_neck_band_behind():
    plan, parts = drawn("cardigan, drop shoulder", Choice("neckline", "round"))
    off = found(plan, parts, front_bands=with_rows(parts["front bands"], 4))
    assert set(off) == {("neck band", "front bands")}


def test_a_plan_that_cannot_be_drawn_meets_nothing():
    plan, parts = drawn("scarf")
    assert parted(replace(plan, design=None), [*parts.values()]) == ()
    assert parted(replace(plan, gauge=None), [*parts.values()]) == ()
    assert parted(replace(plan, design=Design("toga")), [*parts.values()]) == ()


def test_a_part_that_was_taken_out_is_met_by_nothing():
    plan, parts = drawn("cardigan, raglan")
    body = with_rows(parts.pop("body"), 10)
    assert found(plan, parts) == {}
    assert ("hem", "body") not in found(plan, parts, body=body)


def test_every_name_that_meets_is_a_piece_somewhere():
    names = {
        piece.name
        for word, one in constructions().items()
        for choice in one.choices.get("front", ("",))
        for piece in drawing_of(
            Design(word, choices=(Choice("front", choice),) if choice else ()), GAUGE
        ).pieces
    }
    assert set(MEETS) <= names
    assert {one.piece for found in MEETS.values() for one in found} <= names


def test_where_the_underarm_lies():
    made = drawing_of(Design("pullover, drop shoulder"), GAUGE)
    assert underarm_row(made, "back") == made.piece("back").runs[0].rows
    assert underarm_row(made, "sleeves") == 0
    assert meets(made, made.piece("back"))[0].piece == "front"
