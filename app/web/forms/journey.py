"""The hours of a journey, to learn how much knitting fits in it."""

from collections.abc import Mapping

from app.book.settings import Settings
from app.web.forms.reader import Reader

MOST_HOURS = 500.0


def read_journey(values: Mapping[str, object], settings: Settings) -> tuple[Reader, float | None]:
    """The hours typed, None where the field is empty or at fault."""
    reader = Reader(values, settings)
    return reader, reader.number("hours", unit="h", least=0.1, most=MOST_HOURS)
