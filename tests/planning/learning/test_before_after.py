import pytest

from app.book.settings import Settings, StepLosses
from app.book.shape import Stated
from app.planning.learning import learn
from app.planning.learning.before_after import before_after
from app.planning.learning.garments_seen import PATTERN, PLACE
from tests.books import a_book, a_part, a_pattern, a_reading, a_skein, a_stint, a_yarn
from tests.planning.learning.test_garments_seen import book_of, old, sleeved
from tests.planning.learning.test_learnt import washed


def rows(flock):
    return before_after(learn(flock.book()))


def width(span):
    return span[1] - span[0]


def test_nothing_measured_is_nothing_to_show():
    assert before_after(learn(a_book())) == ()


def test_a_yield_is_shown_of_the_breed_and_of_each_fleece():
    found = rows(washed(540, 500))
    assert [one.whose for one in found] == ["any other Cheviot", "ewe 0", "ewe 1"]
    for one in found:
        assert one.before == pytest.approx((0.474, 0.639), abs=0.001)
        assert (one.unit, one.seen) == ("share", 2)
        assert width(one.now) < width(one.before)
    assert width(found[1].now) < width(found[0].now)


def test_a_fleece_washed_in_two_portions_has_one_row():
    """What of it was carded since is told with what was not."""
    flock = washed(540)
    flock.fleece("F-again", 1000, "ewe 0", "carded")
    flock.step("F-again", "skirted", "scoured", 550)
    yields = [one for one in rows(flock) if one.factor == "scour"]
    assert [(one.whose, one.seen) for one in yields] == [("any other Cheviot", 2), ("ewe 0", 2)]


def test_a_fleece_of_no_breed_is_called_so():
    assert rows(washed(540, breed=""))[0].whose == "any other of no breed known"


def test_a_share_never_rises_above_all():
    found = rows(washed(930, before="scoured", after="carded"))
    assert found[0].whose == ""
    assert found[0].now[1] <= 1.0
    assert not found[0].set_herself


def test_a_setting_of_hers_is_said_to_stay_in_force():
    own = Settings(steps=StepLosses(carded=5.0))
    found = rows(washed(930, before="scoured", after="carded", settings=own))
    assert all(one.set_herself for one in found)


def test_grist_and_pace_are_shown_in_their_own_units():
    reeled = a_reading(value=200_000, kind="length", instrument="reel")
    card = a_stint(work="card", mg=100_000)
    book = a_book(a_yarn(target_tex=430.0), a_skein(), reeled, card, held={"G-1": (90, 200)})
    found = before_after(learn(book))
    assert [(one.factor, one.whose, one.unit) for one in found] == [
        ("grist", "", "of the grist meant"),
        ("grist", "grey two-ply", "of the grist meant"),
        ("pace of card", "", "g/h"),
    ]
    assert found[2].before[0] < 70 < found[2].before[1]
    spun = a_stint(mg=None, mm=300_000)
    assert before_after(learn(a_book(spun)))[0].unit == "m/h"


def of_garments(*records):
    return {(one.factor, one.whose): one for one in before_after(learn(book_of(*records)))}


def test_a_garments_yarn_is_told_of_what_was_planned_and_of_each_place():
    found = of_garments(sleeved(pattern="cable"))
    hand = found["took by gauge", ""]
    assert hand.unit == "of what was planned"
    assert hand.before == pytest.approx((0.842, 1.187), abs=0.002)
    assert hand.before[0] < hand.now[0] < hand.now[1] < hand.before[1]
    assert {whose for factor, whose in found if factor == PLACE} == {"body", "sleeve"}
    assert len([factor for factor, _ in found if factor == PATTERN]) == 1


def test_stated_amounts_are_told_of_all_and_of_each_source():
    pattern = a_pattern(source="a printed leaflet, 1998")
    shawl = a_part("shawl", "old", shape=Stated(600_000))
    found = of_garments(pattern, old(part=shawl, pattern_id=pattern.id))
    assert {whose for _, whose in found} == {"", "a printed leaflet, 1998"}
    one = found["took of stated", "a printed leaflet, 1998"]
    assert one.unit == "of what is stated"
    assert one.before == pytest.approx((0.678, 1.016), abs=0.002)
