import pytest

from app.book.design import Design
from app.book.gauge import Gauge
from app.book.person import Measure
from app.book.shape import Counted, Run, Runs, Stated, Trapezoid
from app.planning.design import drawing_of, parts_from
from app.planning.plan_sheet import plan_sheet, small_child
from tests.books import a_book, a_part, a_person, a_plan, a_yarn


def test_the_work_of_a_part_in_words():
    plan = a_plan()
    parts = (
        a_part(name="Back", shape=Counted(100, 60)),
        a_part("sleeves", name="Sleeves", shape=Trapezoid(220, 360, 450), position=2),
        a_part("rest", shape=Stated(10_000), position=3),
    )
    work = plan_sheet(a_book(a_yarn(), plan, *parts), plan).work
    assert work["body"][0] == "Begin with 100 stitches."
    assert work["body"][1].startswith("Work 60 rows on 100 stitches.")
    assert work["sleeves"][1].startswith("Increase one stitch on each side of the marker")
    assert work["rest"] == ()


def test_what_is_done_between_two_runs_of_her_own_is_told():
    """118 to the armhole, 10 cast off there; a yoke of rounds; what is left is cast off."""
    back = Runs((Run(60, 118, 118), Run(10, 108, 98), Run(40, 98, 98)))
    yoke = Runs((Run(20, 200, 200), Run(10, 134, 134), Run(10, 140, 140)))
    plan = a_plan()
    parts = (
        a_part(name="Back", shape=back, edges="cast on, off and seams"),
        a_part("yoke", name="Yoke", shape=yoke, edges="stretchy cast-off", position=2),
    )
    work = plan_sheet(a_book(a_yarn(), plan, *parts), plan).work
    assert work["body"][2] == "Cast off 10 stitches: 108 stitches."
    assert work["body"][-1] == "Cast off the 98 stitches that are left."
    assert len(work["body"]) == 6
    assert work["yoke"][2] == "Decrease 66 stitches evenly: 134 stitches."
    assert work["yoke"][4] == "Increase 6 stitches evenly: 140 stitches."
    assert work["yoke"][-1] == "Cast off the 140 stitches that are left, loosely."


def test_a_designed_part_is_told_as_it_was_drawn():
    plan = a_plan(design=Design("scarf"))
    parts = parts_from(plan, Gauge(22.0, 30.0))
    work = plan_sheet(a_book(a_yarn(), plan, *parts), plan).work
    told = work[parts[0].id]
    assert told == drawing_of(plan.design, Gauge(22.0, 30.0)).pieces[0].words
    assert not any(" cm (" in one for one in told)


@pytest.mark.parametrize(
    ("edges", "words"),
    [
        ("picked up, stretchy cast-off", "Pick up 100 stitches."),
        ("cast off and seams", "Knit on from 100 stitches."),
        ("cast on and off", "Cast on 100 stitches."),
        ("none", "Begin with 100 stitches."),
    ],
)
def test_a_piece_begins_as_its_edges_say(edges, words):
    plan = a_plan()
    part = a_part(shape=Counted(100, 60), edges=edges)
    assert plan_sheet(a_book(a_yarn(), plan, part), plan).work["body"][0] == words


def test_each_part_names_its_needles():
    """A hem on 3.5 mm, a body that changes from 3.5 to the needle of the gauge, and an amount."""
    plan = a_plan(gauge=Gauge(22.0, 30.0, needle_mm=4.0))
    runs = Runs((Run(15, 100, 100, "2×2 rib", 3.5), Run(60, 110, 110)))
    parts = (
        a_part(shape=runs),
        a_part("hem", shape=Counted(9, 9), gauge=Gauge(24.0, 32.0, needle_mm=3.5), position=2),
        a_part("rest", shape=Stated(10_000), position=3),
    )
    needles = plan_sheet(a_book(a_yarn(), plan, *parts), plan).needles
    assert needles == {"body": (3.5, 4.0), "hem": (3.5,), "rest": ()}


def test_how_the_pieces_are_joined_is_told():
    plan = a_plan(design=Design("pullover, round yoke"))
    parts = parts_from(plan, Gauge(22.0, 30.0))
    (note, *_) = plan_sheet(a_book(a_yarn(), plan, *parts), plan).notes
    assert "graft them together" in note
    assert plan_sheet(a_book(a_yarn(), a_plan(), a_part()), a_plan()).notes == ()
    impossible = a_plan(design=Design("no such garment"))
    assert plan_sheet(a_book(a_yarn(), impossible, a_part()), impossible).notes == ()


def test_fibres_are_named_once_with_their_care():
    yarns = (a_yarn(fibre="wool"), a_yarn("other", fibre="wool"))
    plan = a_plan()
    sheet = plan_sheet(a_book(*yarns, plan, a_part()), plan)
    assert sheet.fibres == ("wool",)
    assert len(sheet.care) == 1
    bare = a_plan(yarns=(), gauge=Gauge(20.0, 28.0))
    assert plan_sheet(a_book(bare, a_part()), bare).care == ()


@pytest.mark.parametrize(
    ("measures", "expected"),
    [
        ((Measure("chest", 620),), True),
        ((Measure("chest", 960), Measure("head", 480)), False),
        ((Measure("head", 500),), True),
        ((Measure("head", 560),), False),
        ((), False),
    ],
)
def test_a_small_child_is_known_by_its_measures(measures: tuple[Measure, ...], expected: bool):
    person = a_person("Tilde", measures=measures)
    plan = a_plan(person_id="Tilde")
    assert small_child(a_book(person, plan), plan) is expected
    designed = a_plan(design=Design("hat", measures))
    assert small_child(a_book(designed), designed) is expected
