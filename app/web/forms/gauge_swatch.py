"""The swatches a gauge can be taken from, in the form of a plan or part."""

from collections.abc import Mapping

from app.book.book import Book
from app.book.gauge import Gauge
from app.book.plan import Part, Plan
from app.book.swatch import Swatch, gauge_of
from app.web.forms.gauge import gauge_values, read_gauge
from app.web.forms.reader import Reader

FIELD = "gauge_swatch"
TYPED = ("gauge_stitches", "gauge_rows", "gauge_needle")
CONFLICT = "Choose no swatch to go by numbers of your own, or leave these as they were."


def swatches_offered(book: Book, record: Plan | Part | None) -> dict[str, Swatch]:
    """The swatches with a gauge, by id and in order of name: not those put away, save the one the
    record's gauge was taken from."""
    chosen = record.gauge.swatch_id if record and record.gauge else None
    counted = [one for one in book.swatches if gauge_of(one)]
    offered = [one for one in counted if one.put_away is None or one.id == chosen]
    return {one.id: one for one in sorted(offered, key=lambda one: one.name.casefold())}


def read_gauge_or_swatch(
    reader: Reader, swatches: Mapping[str, Swatch], old: Gauge | None = None
) -> Gauge | None:
    """The gauge of the swatch chosen, else the one typed.

    A swatch that was chosen before leaves the gauge as it was taken. Numbers changed by hand
    beside a swatch are a contradiction, and are said to be one.
    """
    chosen = reader.choice(FIELD, {"": "", **swatches}, default="")
    if not chosen:
        return read_gauge(reader, old)
    before = gauge_values(old, reader.settings)
    for field in TYPED:
        if reader.typed(field) not in ("", before[field]):
            reader.refuse(field, CONFLICT)
    return old if old and old.swatch_id == chosen else gauge_of(swatches[chosen])
