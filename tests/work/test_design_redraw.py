"""A plan is drawn anew: parts of the same name stay the parts they are, others go."""

from dataclasses import replace

import pytest
from sqlmodel import Session

from app.book.design import Choice, Design
from app.book.gauge import Gauge
from app.book.person import Measure
from app.book.plan import Extra, RoleYarn, Worked
from app.book.shape import Counted, Runs, Strand
from app.craft.constructions.drawing import Impossible
from app.planning import reckon
from app.planning.knit_with import KnitWith, knit_shape
from app.planning.redraw import redraw
from app.store.records import load_book, put
from app.work.design_look import look
from app.work.design_save import save_design
from app.work.reckoning import Known
from tests.books import a_book, a_part, a_plan, a_promise, a_skein, a_yarn

HAT = Design("hat", (Measure("head", 560),))
SCARF = Design("scarf")


def drawn(design=HAT, id="hat", **other):
    return a_plan(id, design=design, gauge=Gauge(22.0, 30.0), **other)


def book_with(plan, *more):
    """A book with the plan and its parts as they are drawn."""
    bare = a_book(a_yarn(), a_yarn("white"), a_skein("G-1"), plan, held={"G-1": (96, 213)})
    parts = redraw(bare, plan).parts
    return replace(bare, parts=(*parts, *more))


def test_a_part_keeps_its_yarn_and_all_that_was_said_of_it():
    book = book_with(drawn())
    first = book.parts_of["hat"][0]
    said = replace(
        first,
        yarns=(RoleYarn("main", "white"),),
        extras=(Extra("cable panel", 5.0, 2.0),),
        worked=Worked(95.0, 95.0),
        notes="in the lighter skein",
    )
    book = replace(book, parts=(said, *book.parts[1:]))
    wider = drawn(Design("hat", (Measure("head", 600),)))
    again = redraw(book, wider).parts[0]
    assert again.shape != said.shape
    assert replace(again, shape=said.shape) == said


def test_a_second_yarn_stays_in_the_rows():
    book = book_with(drawn())
    first = book.parts_of["hat"][0]
    striped = replace(first, shape=knit_shape(first.shape, KnitWith(use="stripes", share_pct=25.0)))
    book = replace(book, parts=(striped, *book.parts[1:]))
    again = redraw(book, drawn(Design("hat", (Measure("head", 600),)))).parts[0]
    assert isinstance(again.shape, Runs)
    assert again.shape.runs[0].strands == (Strand("main", 0.75), Strand("contrast", 0.25))
    assert again.shape.runs[0].pattern == "2×2 rib"


def test_what_she_said_of_a_drawn_part_stays_when_the_body_changes():
    """Sleeves on another needle, a cast-off of her own: only the rows are drawn anew."""
    pullover = drawn(Design("pullover, drop shoulder", (Measure("chest", 1000),)))
    book = book_with(pullover)
    own = Gauge(23.0, 31.0, needle_mm=3.5)
    changed = {"sleeves": {"gauge": own}, "neck band": {"edges": "picked up and cast off"}}
    parts = [replace(one, **changed.get(one.name, {})) for one in book.parts]
    wider = replace(pullover, design=Design("pullover, drop shoulder", (Measure("chest", 1100),)))
    again = redraw(replace(book, parts=tuple(parts)), wider)
    by_name = {one.name: one for one in again.parts}
    assert by_name["sleeves"].gauge == own
    assert by_name["neck band"].edges == "picked up and cast off"
    assert by_name["back"].gauge is None
    assert again.remade == ()


def test_a_gauge_of_the_bands_follows_the_design():
    bands = (Choice("brim gauge", "24 × 32"),)
    book = book_with(drawn(Design("hat", (Measure("head", 560),), choices=bands)))
    again = redraw(book, drawn())
    assert all(one.gauge is None for one in again.parts)


def test_rows_she_changed_are_drawn_over_and_named():
    book = book_with(drawn())
    first = book.parts_of["hat"][0]
    longer = replace(first, shape=Counted(90, 30))
    again = redraw(replace(book, parts=(longer, *book.parts[1:])), drawn())
    assert again.remade == (longer,)
    assert again.parts[0].shape == first.shape


def test_a_garment_that_could_not_be_drawn_any_more_is_drawn_anew():
    book = book_with(drawn())
    broken = drawn(Design("hat", (Measure("head", 60),)))
    again = redraw(replace(book, plans=(broken,)), drawn())
    assert [one.name for one in again.parts] == [one.name for one in book.parts]
    assert again.remade == ()


def test_parts_of_a_drawn_garment_that_she_added_stay_and_stand_last():
    book = book_with(drawn(), a_part("pompom", plan_id="hat", position=1))
    again = redraw(book, drawn(SCARF))
    assert [one.name for one in again.parts] == ["scarf", "pompom"]
    assert [one.position for one in again.parts] == [1, 2]
    assert {one.name for one in again.gone} == {one.name for one in book.parts} - {"pompom"}


def test_typed_parts_give_way_to_the_first_drawing():
    plan = drawn()
    book = a_book(a_yarn(), replace(plan, design=None), a_part("pompom", plan_id="hat"))
    assert [one.name for one in redraw(book, plan).gone] == ["pompom"]


def test_promises_follow_a_part_of_the_same_name():
    plan = drawn()
    name = redraw(a_book(a_yarn(), plan), plan).parts[0].name
    typed = a_part("typed", plan_id="hat", name=name.upper())
    kept = a_promise(plan_id="hat", part_id="typed")
    book = a_book(a_yarn(), a_skein(), replace(plan, design=None), typed, kept)
    again = redraw(book, plan)
    assert [one.part_id for one in again.kept] == [f"hat-{name}"]
    assert (again.gone, again.freed) == ((), ())


def test_a_body_that_fits_no_garment_is_refused():
    tiny = drawn(Design("hat", (Measure("head", 60),)))
    with pytest.raises(Impossible, match="between brim and crown"):
        redraw(a_book(a_yarn(), tiny), tiny)


def test_a_look_answers_without_saving_anything():
    plan = drawn()
    book = a_book(a_yarn(), a_plan())
    seen = look(Known(book, reckon(book)), redraw(book, plan))
    assert seen.effect is None
    assert seen.answer.need.value > 0
    assert [one.part_id for one in seen.answer.parts] == [one.id for one in seen.redrawn.parts]
    assert "hat" not in book.plan


def test_a_look_tells_what_a_change_does():
    book = book_with(drawn())
    wider = drawn(Design("hat", (Measure("head", 600),)))
    seen = look(Known(book, reckon(book)), redraw(book, wider))
    assert seen.effect is not None
    assert seen.effect.m > 0


def test_a_new_plan_comes_last_with_its_parts(writing: Session) -> None:
    save_design(writing, drawn(id="new", name="new"))
    book = load_book(writing)
    assert book.plan["new"].priority == 3
    assert [one.position for one in book.parts_of["new"]] == [1, 2, 3][: len(book.parts_of["new"])]


def test_a_saved_change_moves_promises_and_frees_those_of_parts_that_go(writing: Session) -> None:
    """The pullover's typed body hands its skein on to the drawn one; its sleeves stay too."""
    put(writing, a_promise("G-2", 40_000, id="p", part_id="sleeves"))
    plan = replace(load_book(writing).plan["pullover"], design=Design("pullover, drop shoulder"))
    done = save_design(writing, plan)
    book = load_book(writing)
    assert [one.name for one in done.gone] == ["body"]
    assert [one.holding_id for one in done.freed] == ["G-1"]
    (kept,) = book.promises_of["pullover"]
    assert (kept.holding_id, kept.part_id) == ("G-2", "pullover-sleeves")
    assert {"body", "sleeves"}.isdisjoint(book.part)


def test_choices_are_drawn(writing: Session) -> None:
    short = Design("pullover, drop shoulder", choices=(Choice("sleeve", "short"),))
    plan = load_book(writing).plan["pullover"]
    long = save_design(writing, replace(plan, design=replace(short, choices=())))
    shorter = save_design(writing, replace(plan, design=short))
    rows = [
        sum(run.rows for one in done.parts if one.name == "sleeves" for run in one.shape.runs)
        for done in (long, shorter)
    ]
    assert rows[0] > rows[1] > 0
