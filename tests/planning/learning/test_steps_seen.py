import pytest

from app.book.event import Line
from app.book.event_note import noted
from app.book.woolbook import Entry, Portion, arrive, prepare
from app.planning.learning.steps_seen import StepsSeen
from tests.books import a_fleece, a_holding, a_reading, a_skein, an_event
from tests.planning.learning.flock import Flock


def seen(flock):
    return list(StepsSeen(flock.book()).all())


@pytest.fixture
def flock():
    found = Flock(a_fleece("Bramble", breed="Cheviot"))
    found.fleece("F-1", 2000.0)
    return found


@pytest.mark.published
def test_the_printed_budget_of_a_fleece(flock):
    """3.0 lb raw, 1.7 lb washed, 673 g of top and 109 g of comb waste (a spinner's published
    measurement, 2017): 56.7 % of it clean; the comb kept 673 of 771 g."""
    flock = Flock(a_fleece("Bramble"))
    flock.fleece("F-1", 3.0 * 453.59237)
    flock.step("F-1", "raw", "scoured", 1.7 * 453.59237)
    flock.step("F-1", "scoured", "combed", 673.0)
    washed, combed = seen(flock)
    assert washed.factors == ("skirt", "scour")
    assert washed.measured == pytest.approx(1.7 / 3.0, abs=1e-5)
    assert (combed.factors, combed.measured) == (("comb",), pytest.approx(673 / 771.1, abs=1e-4))


def test_each_step_tells_of_itself(flock):
    flock.step("F-1", "raw", "skirted", 1700)
    flock.step("F-1", "skirted", "scoured", 935)
    flock.step("F-1", "scoured", "carded", 880)
    found = seen(flock)
    assert [one.factors for one in found] == [("skirt",), ("scour",), ("card",)]
    assert [one.measured for one in found] == pytest.approx([0.85, 0.55, 880 / 935])
    assert [one.usual for one in found] == pytest.approx([0.85, 0.55, 0.93])
    assert found[1].names.breed == "Cheviot"
    assert found[0].what == "Bramble, raw to skirted"


def test_wool_that_dried_tells_of_the_wash_before_it(flock):
    flock.step("F-1", "skirted", "drying", 2000)
    flock.step("F-1", "drying", "scoured", 1100)
    (found,) = seen(flock)
    assert (found.factors, found.measured) == (("scour",), pytest.approx(0.55))


def test_a_part_that_dried_apart_tells_of_its_wash(flock):
    flock.part("F-1", "F-1 a", "raw", "drying", 800, 800)
    flock.step("F-1 a", "drying", "scoured", 400)
    (found,) = seen(flock)
    assert (found.factors, found.measured) == (("skirt", "scour"), pytest.approx(0.5))


def test_wool_that_came_wet_tells_nothing(flock):
    flock.fleece("F-2", 900, state="drying")
    flock.step("F-2", "drying", "scoured", 600)
    assert seen(flock) == []


def test_a_part_carded_is_weighed_against_what_was_taken(flock):
    flock.part("F-1", "F-1 batts", "scoured", "carded", 500, 470)
    (found,) = seen(flock)
    assert found.measured == pytest.approx(0.94)
    assert found.holding_id == "F-1 batts"


def test_fibre_spun_to_a_bobbin_tells_of_spinning(flock):
    flock.part("F-1", "top", "scoured", "combed", 500, 400)
    flock.spun("top", "bobbin 1", 100, 97, step="spin")
    found = seen(flock)[-1]
    assert (found.factors, found.measured) == (("spin",), pytest.approx(0.97))
    assert found.names.preparation == "combed"
    assert found.what == "Bramble, spun to bobbin 1"
    assert found.error == pytest.approx(0.6 / 97)


def test_a_skein_whose_wool_was_only_reckoned_tells_nothing(flock):
    flock.spun("F-1", "G-1", 100, 95, kind="skein")
    flock.spun("F-1", "G-2", 100, 95, kind="skein", step="spin")
    assert seen(flock) == []


def test_what_was_undone_never_happened(flock):
    event = flock.step("F-1", "raw", "skirted", 500)
    flock.undone(event)
    flock.step("F-1", "raw", "skirted", 1700)
    (found,) = seen(flock)
    assert found.measured == pytest.approx(0.85)


def test_a_correction_tells_nothing_but_what_is_held(flock):
    flock.weighed("F-1", 1900)
    flock.step("F-1", "raw", "skirted", 1615)
    (found,) = seen(flock)
    assert found.measured == pytest.approx(0.85)


def test_a_step_back_or_one_that_left_nothing_tells_nothing(flock):
    flock.step("F-1", "scoured", "raw", 2000)
    flock.step("F-1", "raw", "skirted", 0)
    assert seen(flock) == []


def test_wool_of_no_fleece_is_known_by_its_own_name():
    flock = Flock()
    flock.fleece("bag", 500, fleece_id=None, state="scoured")
    flock.step("bag", "scoured", "carded", 465)
    (found,) = seen(flock)
    assert (found.names.fleece, found.names.breed, found.what) == (
        "bag",
        "",
        "bag, scoured to carded",
    )


def test_a_blend_of_two_tells_nothing_of_either(flock):
    flock.fleece("F-2", 1000, state="carded")
    new = a_holding("blend", "fibre", state="carded")
    flock.records.append(new)
    moved = {"F-1": -200_000, "F-2": -200_000, "blend": 390_000, "waste": 10_000}
    lines = tuple(Line(one, mg) for one, mg in moved.items())
    flock.events.append(an_event(3, Entry("prepare", lines), step="blend"))
    assert seen(flock) == []


def finished(flock, weighed, wool="dry"):
    """A skein of 100 g that was washed, and weighed again if it was."""
    skein = a_skein("G-1")
    reading = a_reading("G-1", 96_000, id="after", wool=wool)
    flock.records += [skein, *([reading] if weighed else [])]
    flock._add(arrive([Portion(skein, 100_000, 200_000)]))
    taken, made = Portion(skein, 100_000, 200_000), Portion(skein, 96_000, 184_000)
    note = noted("", [reading] if weighed else [])
    flock._add(prepare(flock.held(), taken, made), note=note, step="finish")
    return seen(flock)


def test_a_skein_weighed_again_once_it_was_finished(flock):
    (found,) = finished(flock, weighed=True)
    assert (found.factors, found.measured) == (("finish",), pytest.approx(0.96))
    assert found.what == "G-1, weight before and after finishing"


@pytest.mark.parametrize(("weighed", "wool"), [(False, "dry"), (True, "damp")])
def test_a_skein_not_weighed_or_damp_tells_nothing_of_its_weight(flock, weighed, wool):
    assert finished(flock, weighed, wool) == []
