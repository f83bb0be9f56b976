"""An event that is to be taken back: what it moved, and why."""

from dataclasses import dataclass, replace

from app.web.forms.filled import Filled
from app.web.pages.wool_book import EventRow, wool_book_page
from app.web.shown import Shown
from app.work.wool_book import Events

REASONS = ("entered by mistake", "the wrong wool", "the wrong amount", "entered twice")


@dataclass(frozen=True, slots=True)
class WoolUndoPage:
    """`row` is the event; where its `undo_url` is empty it stands for good."""

    row: EventRow
    form: Filled
    reasons: tuple[str, ...]


def wool_undo_page(found: Events, form: Filled, shown: Shown) -> WoolUndoPage:
    """The first of some events."""
    first = replace(found, events=found.events[:1], more=False)
    (row,) = wool_book_page(first, False, shown).rows
    return WoolUndoPage(row, form, REASONS)
