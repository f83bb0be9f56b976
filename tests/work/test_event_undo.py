from datetime import date, timedelta

import pytest
from sqlmodel import Session

from app.book import woolbook
from app.book.errors import CannotUndo, HoldsTooLittle
from app.book.event import Balance
from app.book.holding import Holding
from app.book.woolbook import Portion
from app.book.words import WoolState
from app.planning import reckon
from app.store.balance import wrong_balances
from app.store.records import get, load_book, post, put, remove
from app.work.event_undo import undo_event
from app.work.fleece_put_away import put_away_fleece
from app.work.fleece_weigh import Weighed, weigh_fleece
from app.work.fleece_weigh import Weighing as FleeceWeighing
from app.work.skein_measure import Weighing, measure_again
from app.work.skein_readings import Length, Weight, Wraps
from tests.work.flock import DAY, a_raw_fleece, grams, now, weight

LATER = DAY + timedelta(7)


def weighed(session: Session, amount: float, state: WoolState, day: date) -> Weighed:
    return weigh_fleece(session, now(session), FleeceWeighing(weight(amount), state, day))


def test_an_event_that_is_not_there(writing: Session):
    assert undo_event(writing, 999, DAY) is None


def test_undoing_a_step_brings_back_the_grams_and_the_state(writing: Session):
    a_raw_fleece(writing)
    step = weighed(writing, 900, "scoured", DAY)
    assert step.event is not None
    undone = undo_event(writing, step.event.seq, LATER)
    assert undone is not None
    assert (undone.kind, undone.undoes, undone.day) == ("undo", step.event.seq, LATER)
    assert (grams(writing), grams(writing, "waste"), now(writing).state) == (2000, 0, "raw")
    assert wrong_balances(writing) == []


def test_a_state_that_has_moved_on_stays(writing: Session):
    """Undoing an earlier step, where the grams allow it, does not undo the later one's state."""
    a_raw_fleece(writing)
    first = weighed(writing, 1700, "skirted", DAY).event
    weighed(writing, 1000, "scoured", LATER)
    assert first is not None
    undo_event(writing, first.seq, LATER)
    assert (now(writing).state, grams(writing)) == ("scoured", 1300)


def test_undoing_a_leaving_brings_the_fleece_back_to_the_shelf(writing: Session):
    a_raw_fleece(writing)
    event = put_away_fleece(writing, [now(writing)], "given away", DAY)
    undo_event(writing, event.seq, LATER)
    assert (grams(writing), now(writing).put_away) == (2000, None)


def test_undoing_an_arrival_puts_the_fleece_away(writing: Session):
    seq = a_raw_fleece(writing)
    undo_event(writing, seq, LATER)
    assert (grams(writing), now(writing).put_away) == (0, LATER)


def test_undoing_a_spinning_puts_the_skein_away_and_gives_the_fleece_its_wool(writing: Session):
    a_raw_fleece(writing, 500, "carded")
    skein = Holding("S-9", "skein", "S-9", fleece_id="bramble", yarn_id="grey two-ply")
    put(writing, skein)
    held = {now(writing).id: Balance(500_000)}
    entry = woolbook.spin(
        held, [Portion(now(writing), 105_000)], [Portion(skein, 100_000, 220_000)]
    )
    event = post(writing, entry.kind, DAY, entry.lines)
    undo_event(writing, event.seq, LATER)
    found = get(writing, Holding, "S-9")
    assert found is not None
    assert found.put_away == LATER
    assert (grams(writing), now(writing).put_away) == (500, None)


def test_undoing_a_correction_puts_nothing_away(writing: Session):
    a_raw_fleece(writing, 0.001)
    event = weighed(writing, 50, "raw", LATER).event
    assert event is not None
    undo_event(writing, event.seq, LATER)
    assert now(writing).put_away is None


@pytest.mark.parametrize("day", [DAY, LATER])
def test_nothing_is_undone_twice_and_no_undo_is_undone(writing: Session, day: date):
    a_raw_fleece(writing)
    event = weighed(writing, 1990, "raw", day).event
    assert event is not None
    undone = undo_event(writing, event.seq, LATER)
    assert undone is not None
    for seq in (event.seq, undone.seq):
        with pytest.raises(CannotUndo):
            undo_event(writing, seq, LATER)


def test_wool_that_has_moved_on_cannot_be_taken_back(writing: Session):
    seq = a_raw_fleece(writing)
    weighed(writing, 900, "scoured", DAY)
    before = load_book(writing).events
    with pytest.raises(HoldsTooLittle):
        undo_event(writing, seq, LATER)
    assert load_book(writing).events == before


def test_undoing_a_measurement_takes_its_readings_out(writing: Session):
    """All that is reckoned is as it was before, to the digit, and so are the records."""
    skein = get(writing, Holding, "G-1")
    assert skein is not None
    length = Length(213_000, "213", "m", finished=True)
    first = measure_again(writing, skein, Weighing(DAY, lengths=(length,)))
    assert first is None
    before = load_book(writing)
    lengths = (Length(350_000, "350", "m", finished=False), Length(300_000, "300", "m"))
    taken = Weighing(DAY, Weight(120_000, "120", "g"), lengths, Wraps(14_000, "14"))
    event = measure_again(writing, skein, taken)
    assert event is not None
    assert reckon(load_book(writing)).shelf["G-1"] != reckon(before).shelf["G-1"]
    undo_event(writing, event.seq, DAY)
    after = load_book(writing)
    assert after.readings == before.readings
    assert after.balances["G-1"] == before.balances["G-1"]
    assert reckon(after) == reckon(before)


def test_undoing_a_weighing_of_a_fleece_takes_its_reading_out(writing: Session):
    a_raw_fleece(writing)
    before = load_book(writing)
    event = weighed(writing, 1700, "skirted", DAY).event
    assert event is not None
    undo_event(writing, event.seq, LATER)
    after = load_book(writing)
    assert (after.readings, after.holdings) == (before.readings, before.holdings)


def test_a_reading_that_has_gone_since_is_not_missed(writing: Session):
    a_raw_fleece(writing)
    event = weighed(writing, 1700, "skirted", DAY).event
    assert event is not None
    remove(writing, load_book(writing).readings_of[now(writing).id][-1])
    assert undo_event(writing, event.seq, LATER) is not None
