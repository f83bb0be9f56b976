"""The picture against the schedule and against pegging by hand."""

from dataclasses import replace
from math import sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app import paths
from app.book import woolbook
from app.book.book import Book
from app.book.design import Choice, Design
from app.book.exchange import loads
from app.book.gauge import Gauge
from app.book.person import Measure
from app.book.plan import RoleYarn, Worked
from app.book.shape import Counted, Metres, Run, Runs, Stated, Strand, Trapezoid
from app.book.woolbook import Portion
from app.planning import reckon
from app.planning.design import parts_from
from app.planning.picture import Picture, picture
from app.planning.picture_outline import area
from app.planning.picture_piece import Piece
from app.planning.schedule import schedule, stitches_in
from tests.books import a_book, a_holding, a_part, a_plan, a_promise, a_skein, a_yarn, an_event

LOOP_CM = sqrt(21.6 / (22.0 * 30.0 / 100))
"""Munden's yarn in a stitch at 22 × 30 washed: 1.809 cm."""


def drawn(book: Book, plan_id: str = "pullover") -> Picture:
    return picture(book, reckon(book), plan_id)


def rows_of(piece: Piece) -> list[tuple[int, int, tuple[str | None, ...]]]:
    return [
        (band.first, band.last, tuple(one.holding_id for one in band.knit.threads))
        for band in piece.bands
    ]


def a_body(*records, held=None, **part):
    """100 stitches × 100 rows: 1.809 m a row, 180.9 m in all, in two skeins of 100 m."""
    held = {"G-1": (45, 100), "G-2": (45, 100), **(held or {})}
    return a_book(
        a_yarn(),
        a_skein("G-1", colour="#111111"),
        a_skein("G-2"),
        a_part(shape=Counted(100, 100), **part),
        *records,
        held=held,
    )


def test_a_row_is_knit_in_the_skein_that_reaches_it():
    """100 m ÷ 1.809 m a row = 55.3 rows: most of row 56 is the second skein's; its 50 m end after
    82.9 rows, in row 83, which it knits most of."""
    book = a_body(a_plan(), a_promise("G-1", 100_000), a_promise("G-2", 50_000))
    assert pytest.approx(1.809, abs=0.001) == LOOP_CM
    (piece,) = drawn(book).pieces
    assert rows_of(piece) == [(1, 55, ("G-1",)), (56, 83, ("G-2",)), (84, 100, (None,))]
    assert not any(band.knit.done for band in piece.bands)


def test_the_skeins_carry_their_own_colour_or_that_of_their_yarn():
    book = a_body(a_plan(), a_promise("G-1", 100_000), a_promise("G-2", 50_000))
    book = replace(book, yarns=(a_yarn(colour="#222222", colour_name="grey"),))
    skeins = drawn(book).skeins
    assert [(one.code, one.colour) for one in skeins.values()] == [
        ("G-1", "#111111"),
        ("G-2", "#222222"),
    ]
    assert skeins["G-2"].yarn == "grey two-ply"


def test_what_is_knitted_in_comes_first_and_is_done():
    """40 m knitted in are 22.1 rows; the 60 m left of that skein go on to row 55."""
    book = a_body(a_plan(state="being knit"), a_promise("G-1", 60_000))
    garment = a_holding("garment", "garment", plan_id="pullover")
    held = book.balances
    taken = Portion(book.holding["G-1"], 18_000, 40_000)
    entry = woolbook.use(held, [taken], garment)
    event = an_event(len(book.events) + 1, entry)
    book = replace(book, holdings=(*book.holdings, garment), events=(*book.events, event))
    (piece,) = drawn(book).pieces
    assert [(one.first, one.last, one.knit.done) for one in piece.bands] == [
        (1, 22, True),
        (23, 55, False),
        (56, 100, False),
    ]
    undone = replace(book, events=(*book.events, an_event(9, entry, undoes=event.seq, kind="undo")))
    assert not drawn(undone).pieces[0].bands[0].knit.done


def test_a_finished_garment_is_done_whatever_it_took():
    """It was to take 180.9 m and took 80 m: the rows share that out, and none is without yarn."""
    book = a_body(a_plan(state="finished"))
    garment = a_holding("garment", "garment", plan_id="pullover")
    skeins = [Portion(book.holding[one], 18_000, 40_000) for one in ("G-1", "G-2")]
    event = an_event(9, woolbook.use(book.balances, skeins, garment))
    book = replace(book, holdings=(*book.holdings, garment), events=(*book.events, event))
    (piece,) = drawn(book).pieces
    assert rows_of(piece) == [(1, 50, ("G-1",)), (51, 100, ("G-2",))]
    assert all(band.knit.done for band in piece.bands)


def test_copies_are_knit_one_after_the_other():
    book = a_body(a_plan(), a_promise("G-1", 100_000), copies=2)
    first, second = drawn(book).pieces
    assert rows_of(first) == [(1, 55, ("G-1",)), (56, 100, (None,))]
    assert rows_of(second) == [(1, 100, (None,))]
    assert (first.copy, second.copy, second.copies) == (1, 2, 2)


def test_a_role_takes_its_own_skeins_and_its_share_of_the_row():
    patterned = (Strand("main", 0.75), Strand("contrast", 0.25))
    runs = Runs((Run(10, 100, 100), Run(10, 100, 80, "stranded", None, patterned)))
    yarns = (RoleYarn("main", "grey two-ply"), RoleYarn("contrast", "blue"))
    book = a_book(
        a_yarn(),
        a_yarn("blue"),
        a_skein("G-1"),
        a_skein("B-1", "blue"),
        a_plan(yarns=yarns),
        a_part(shape=runs),
        a_promise("G-1", 100_000),
        a_promise("B-1", 20_000, role="contrast"),
        held={"G-1": (45, 100), "B-1": (45, 100)},
    )
    (piece,) = drawn(book).pieces
    assert rows_of(piece) == [(1, 10, ("G-1",)), (11, 20, ("G-1", "B-1"))]
    assert [one.share for one in piece.bands[1].knit.threads] == [0.75, 0.25]


def test_parts_that_have_no_rows_are_named():
    book = a_book(
        a_yarn(),
        a_plan(gauge=None, yarns=()),
        a_part("a", shape=Stated(1_000_000)),
        a_part("b", shape=Metres(1_000), position=2),
        a_part("c", position=3),
    )
    found = drawn(book)
    assert (found.pieces, found.amounts, found.without_gauge) == ((), ("a", "b"), ("c",))


def test_a_plan_without_parts_is_an_empty_picture():
    found = drawn(a_book(a_yarn(), a_plan()))
    assert (found.pieces, found.skeins) == ((), {})


def test_a_piece_is_drawn_as_large_as_it_is_finished():
    worked = Worked(width_pct=120.0, length_pct=110.0)
    plain, blocked = (
        drawn(a_body(a_plan(), name="piece", worked=one)).pieces[0] for one in (None, worked)
    )
    assert (plain.width, plain.height) == (pytest.approx(100 / 2.2), pytest.approx(100 / 3.0))
    assert blocked.width == pytest.approx(1.2 * plain.width)
    assert blocked.height == pytest.approx(1.1 * plain.height)


def test_what_is_worked_from_the_neck_down_is_drawn_as_it_is_worn():
    runs = Runs((Run(20, 80, 160),))
    book = a_book(
        a_yarn(),
        a_skein("G-1"),
        a_plan(),
        a_part("yoke", name="Yoke", shape=runs),
        a_part("body", name="Body", position=2),
        a_promise("G-1", 20_000, part_id="yoke"),
        held={"G-1": (45, 100)},
    )
    yoke, body = (one for one in drawn(book).pieces if one.view == "front")
    assert yoke.base == pytest.approx(160 / 2.2 / 2, rel=1e-3)
    assert yoke.bands[0].begun == pytest.approx(yoke.height)
    assert body.bands[0].begun == pytest.approx(body.height)
    assert yoke.at[1] < body.at[1] - body.height


RUN = st.builds(Run, st.integers(1, 60), st.integers(1, 200), st.integers(1, 200))


@pytest.mark.property
@given(st.lists(RUN, min_size=1, max_size=6), st.booleans(), st.integers(0, 400_000))
def test_the_rows_drawn_cover_the_schedule(runs: list[Run], tube: bool, mm: int):
    """Every stitch of the schedule is drawn, half of them where a tube lies flat."""
    book = a_body(a_plan(), a_promise("G-1", mm), held={"G-1": (180, 400)})
    part = a_part(shape=Runs(tuple(runs)), in_round=tube, place="piece")
    book = replace(book, parts=(part,))
    (piece,) = drawn(book).pieces
    covered = sum(area(band.corners) for band in piece.bands) * (2 if tube else 1)
    assert covered == pytest.approx(sum(map(stitches_in, runs)) / 2.2 / 3.0)
    assert [band.first for band in piece.bands[1:]] == [band.last + 1 for band in piece.bands[:-1]]
    assert piece.rows == sum(run.rows for run in runs)


DESIGNED = (
    "pullover, set-in sleeve",
    "pullover, raglan",
    "pullover, round yoke",
    "cardigan, drop shoulder",
    "cardigan, raglan",
    "cardigan, round yoke",
)


@pytest.mark.parametrize("construction", DESIGNED)
def test_a_designed_garment_is_drawn_with_its_openings(construction: str):
    """Its outlines are those of the construction, and still hold every stitch."""
    plan = a_designed(construction)
    parts = parts_from(plan, Gauge(22.0, 30.0))
    book = a_book(a_yarn(), plan, *parts)
    pieces = drawn(book).pieces
    for piece in pieces:
        part = book.part[piece.part_id]
        gauge = part.gauge or plan.gauge
        stitches = sum(map(stitches_in, schedule(part.shape, gauge)))
        views = [one for one in pieces if (one.part_id, one.copy) == (piece.part_id, piece.copy)]
        covered = sum(area(band.corners) for one in views for band in one.bands)
        covered *= 2 if piece.in_round and not piece.view else 1
        assert covered == pytest.approx(stitches / gauge.stitches / gauge.rows * 100)
    assert len({one.part_id for one in pieces}) == len(parts)


def test_two_fronts_face_each_other():
    plan = a_designed("cardigan, set-in sleeve")
    book = a_book(a_yarn(), plan, *parts_from(plan, Gauge(22.0, 30.0)))
    left, right = (one for one in drawn(book).pieces if one.place == "front")
    assert left.at[0] < right.at[0]
    assert left.outline[0][0] == pytest.approx(-right.outline[0][0])


def test_a_part_that_was_changed_since_is_drawn_from_its_rows():
    plan = a_designed("pullover, set-in sleeve")
    parts = parts_from(plan, Gauge(22.0, 30.0))
    front = next(one for one in parts if one.place == "front")
    changed = replace(front, shape=Runs((*front.shape.runs, Run(10, 30, 30))))
    book = a_book(a_yarn(), plan, *(changed if one is front else one for one in parts))
    piece = next(one for one in drawn(book).pieces if one.part_id == front.id)
    assert piece.rows == sum(run.rows for run in changed.shape.runs)
    counted = replace(front, shape=Counted(100, 150))
    book = replace(book, parts=tuple(counted if one is changed else one for one in book.parts))
    piece = next(one for one in drawn(book).pieces if one.part_id == front.id)
    assert len(piece.outline) == 4
    impossible = replace(plan, design=Design("no such garment"))
    book = replace(book, plans=(impossible,))
    assert len(drawn(book).pieces) == sum(one.copies for one in parts)


def a_designed(construction: str):
    measures = (Measure("chest", 960), Measure("neck", 360))
    design = Design(construction, measures, (), (Choice("neckline", "round"),))
    if construction.endswith("round yoke"):
        design = Design(construction, measures)
    return a_plan(design=design)


def test_sleeves_hang_beside_the_body_and_the_yoke_above_it():
    parts = [
        a_part("body", name="Body"),
        a_part("sleeves", name="Sleeves", shape=Trapezoid(220, 360, 450), copies=2, position=2),
        a_part("yoke", name="Yoke", shape=Trapezoid(1320, 480, 220), position=3),
    ]
    pieces = [one for one in drawn(a_book(a_yarn(), a_plan(), *parts)).pieces if one.foremost]
    body, left, right, yoke = pieces
    assert (left.turn, right.turn) == (14.0, -14.0)
    assert min(x for x, _ in right.lies(right.outline)) > max(x for x, _ in body.lies(body.outline))
    assert body.at[0] - left.at[0] == pytest.approx(right.at[0] - body.at[0])
    assert max(y for _, y in yoke.lies(yoke.outline)) < -body.height


def test_every_plan_of_the_demo_is_drawn():
    book = loads(paths.DEMO.read_text(encoding="utf-8"))
    reckoning = reckon(book)
    for plan in book.plans:
        found = picture(book, reckoning, plan.id)
        parts = book.parts_of.get(plan.id, [])
        named = {one.name for one in found.pieces} | {*found.amounts, *found.without_gauge}
        assert named == {one.name for one in parts}
