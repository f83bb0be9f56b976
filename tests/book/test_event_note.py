"""What the note of an event tells: states, a reason, and the readings it came of."""

import pytest

from app.book.event import Event
from app.book.event_note import (
    noted,
    readings_noted,
    reason_noted,
    states_of,
    step_note,
    with_reason,
)
from tests.books import DAY, a_reading

READING = a_reading(id="r1")


def an_event(note: str) -> Event:
    return Event(1, "correct", DAY, (), note)


@pytest.mark.parametrize("states", [None, ("raw", "scoured")])
@pytest.mark.parametrize("reason", ["", "the scale was off; and damp"])
@pytest.mark.parametrize("readings", [(), (READING,)])
def test_each_part_of_a_note_is_read_again(states, reason, readings):
    note = with_reason(step_note(*states) if states else "", reason)
    event = an_event(noted(note, readings))
    assert states_of(event) == states
    assert reason_noted(event) == reason
    assert readings_noted(event) == tuple(one.id for one in readings)
