"""What is asked of the shelf: an order, what is valued, for whom. Anything else is as usual."""

from collections.abc import Mapping

from app.book.book import Book
from app.planning.shelf_covers import intended
from app.planning.shelf_covers_best import VALUES
from app.work.shelf_covers import AskedOfShelf

PLACE = "place_"


def read_shelf(sent: Mapping[str, object], book: Book) -> AskedOfShelf:
    """The question; a place that is none leaves its garment where it is."""
    person_id = str(sent.get("person", ""))
    ids = [one.id for one in intended(book)]
    places = {one: _place(sent.get(PLACE + one), at) for at, one in enumerate(ids, 1)}
    asked = any(PLACE + one in sent for one in ids)
    order = sorted(ids, key=lambda one: (places[one], ids.index(one)))
    return AskedOfShelf(
        next((one for one in VALUES if one == sent.get("value")), VALUES[0]),
        person_id if person_id in book.person else "",
        tuple(order) if asked else (),
        sent.get("anew") == "yes",
    )


def _place(typed: object, usual: int) -> float:
    """A place that was moved to goes before the garment that stands there."""
    text = str(typed or "")
    place = int(text) if text.isascii() and text.isdigit() and len(text) < 6 else usual
    return place if place == usual else place - 0.5 if place < usual else place + 0.5
