"""The calendar of drying and spinning as a file that other programs read (RFC 5545)."""

from datetime import UTC, date, datetime, time, timedelta

from app.planning.time_days import Days

DOMAIN = "tallyhank.invalid"
"""A part of each entry's name that no calendar of another program has (RFC 6761)."""


def calendar_of(entries: tuple[Days, ...], today: date) -> bytes:
    """The entries as whole days. Each keeps its UID from file to file, so that taking in a newer
    file moves an entry instead of doubling it."""
    from icalendar import Calendar, Event

    calendar = Calendar()
    calendar.add("prodid", "-//Tallyhank//Work list//EN")
    calendar.add("version", "2.0")
    for one in entries:
        event = Event()
        event.add("uid", f"{one.uid}@{DOMAIN}")
        event.add("dtstamp", datetime.combine(today, time(), UTC))
        event.add("dtstart", one.first)
        event.add("dtend", one.last + timedelta(1))
        event.add("summary", one.title)
        event.add("description", one.about)
        event.add("transp", "TRANSPARENT")
        calendar.add_component(event)
    return bytes(calendar.to_ical())
