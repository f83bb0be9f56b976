from datetime import date

from app.planning.time_days import Days
from app.work.stint_calendar import calendar_of

TODAY = date(2026, 5, 1)
LONG = "Wool for the long grey cardigan of thick wool, with a collar; and bands, and more ööö"
ENTRIES = (
    Days("dry-F-2", "Weigh F-2: is it dry?", date(2026, 5, 3), date(2026, 5, 3), "Weigh it."),
    Days("wool-cardigan", LONG, TODAY, date(2026, 5, 9), "spin grey: 12.0 h\nply grey: 3.0 h"),
)


def lines(entries=ENTRIES):
    """The lines of the file, unfolded (RFC 5545, 3.1)."""
    return calendar_of(entries, TODAY).decode().replace("\r\n ", "").split("\r\n")


def test_days_are_days_and_the_end_is_the_day_after():
    """RFC 5545, 3.6.1: DTEND is not part of the event."""
    found = lines()
    assert "DTSTART;VALUE=DATE:20260503" in found
    assert "DTEND;VALUE=DATE:20260504" in found
    assert "DTSTART;VALUE=DATE:20260501" in found
    assert "DTEND;VALUE=DATE:20260510" in found


def test_it_begins_and_ends_as_the_standard_asks():
    found = lines()
    assert (found[0], found[-2], found[-1]) == ("BEGIN:VCALENDAR", "END:VCALENDAR", "")
    assert "VERSION:2.0" in found
    assert any(one.startswith("PRODID:") for one in found)
    assert found.count("BEGIN:VEVENT") == found.count("END:VEVENT") == 2
    assert found.count("DTSTAMP:20260501T000000Z") == 2


def test_an_entry_keeps_its_name_from_file_to_file():
    later = calendar_of(ENTRIES, date(2026, 6, 1)).decode()
    uids = [one for one in lines() if one.startswith("UID:")]
    assert uids == ["UID:dry-F-2@tallyhank.invalid", "UID:wool-cardigan@tallyhank.invalid"]
    assert all(one in later for one in uids)


def test_no_line_is_longer_than_75_octets_and_signs_are_escaped():
    raw = calendar_of(ENTRIES, TODAY)
    assert max(len(one) for one in raw.split(b"\r\n")) <= 75
    told = next(one for one in lines() if one.startswith("SUMMARY:Wool"))
    assert told == f"SUMMARY:{LONG}".replace(";", "\\;").replace(",", "\\,")
    assert "DESCRIPTION:spin grey: 12.0 h\\nply grey: 3.0 h" in lines()


def test_the_library_reads_it_back():
    from icalendar import Calendar

    read = Calendar.from_ical(calendar_of(ENTRIES, TODAY))
    events = list(read.walk("VEVENT"))
    assert [event.decoded("dtstart") for event in events] == [date(2026, 5, 3), TODAY]
    assert str(events[1]["summary"]) == LONG


def test_nothing_to_do_is_an_empty_calendar():
    assert "BEGIN:VEVENT" not in lines(())
