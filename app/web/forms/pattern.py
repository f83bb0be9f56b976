"""The form of a written pattern: what it is called, its gauge, and its table of sizes."""

from collections.abc import Mapping
from dataclasses import replace

from app.book.gauge import Gauge
from app.book.ids import new_id
from app.book.pattern import Pattern
from app.book.settings import Settings
from app.web.forms.gauge import gauge_values, read_gauge
from app.web.forms.pattern_sizes import read_sizes, size_values
from app.web.forms.reader import Reader
from app.web.forms.yarn import read_line

NO_GAUGE = Gauge(1.0, 1.0)
"""Stands in a pattern that is at fault for want of one."""


def read_pattern(
    values: Mapping[str, object], settings: Settings, old: Pattern | None = None
) -> tuple[Reader, Pattern]:
    """What was typed and the pattern it describes; it counts only where the reader is ok."""
    reader = Reader(values, settings)
    if not reader.typed("name"):
        reader.refuse("name", "Give the pattern a name.")
    gauge = read_gauge(reader)
    if gauge is None:
        reader.refuse("gauge_stitches", "Say what gauge the pattern is written for.")
    sizes, shares = read_sizes(reader)
    pattern = replace(
        old or Pattern(new_id(), "", NO_GAUGE),
        name=read_line(reader, "name"),
        gauge=gauge or NO_GAUGE,
        source=reader.text("source", longest=200),
        sizes=sizes,
        shares=shares,
        notes=reader.text("notes", longest=4000),
    )
    return reader, pattern


def pattern_values(pattern: Pattern | None, settings: Settings) -> dict[str, str]:
    """What the form holds when it is opened; a new one has five empty columns."""
    return {
        "name": pattern.name if pattern else "",
        "source": pattern.source if pattern else "",
        "notes": pattern.notes if pattern else "",
        **gauge_values(pattern.gauge if pattern else None, settings),
        **size_values(pattern, settings),
    }
