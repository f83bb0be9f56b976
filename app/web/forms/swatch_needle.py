"""How many stitches are wanted of a needle: a question in an address, not a record."""

from collections.abc import Mapping

from app.book.settings import Settings
from app.craft.gauge import per_10cm
from app.web.forms.gauge import STITCHES
from app.web.forms.reader import Reader


def read_stitches(asked: Mapping[str, str], settings: Settings) -> tuple[Reader, float | None]:
    """The stitches asked for, in 10 cm whatever the measure of the settings; None without any."""
    reader = Reader(asked, settings)
    least, most = STITCHES
    typed = reader.number("stitches", least=least, most=most)
    return reader, per_10cm(typed, settings.gauge_unit) if typed else None
