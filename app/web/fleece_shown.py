"""What the routes of a fleece have in common: finding it, and telling whether it has changed."""

from app.book.holding import Holding
from app.web.errors import Missing, Stale
from app.web.forms.fleece import fleece_stamp
from app.work.fleece_find import KnownFleece, known_fleece
from app.work.reckoning import Known


def fleece_or_missing(known: Known, fleece_id: str) -> KnownFleece:
    """The fleece at an address; Missing where there is none."""
    found = known_fleece(known, fleece_id)
    if found is None:
        raise Missing("This fleece")
    return found


def as_opened(found: KnownFleece, typed_stamp: str, wool: Holding | None = None) -> None:
    """Stale where the fleece, or the wool of it that is weighed, was changed since the form was
    opened."""
    if typed_stamp != fleece_stamp(found.fleece, wool or found.holding):
        raise Stale(f"The fleece {found.fleece.name}", f"/fleeces/{found.fleece.id}")
