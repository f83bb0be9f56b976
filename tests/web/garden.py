"""What the tests of garments share: a shelf in the program, and small ways to ask it things."""

import re
from html import unescape

from starlette.testclient import TestClient

from app.book.book import Book
from app.book.stamp import stamp
from app.store.engine import Store
from app.store.records import load_book

BLANK_PLAN = {
    "name": "Waistcoat",
    "person_id": "",
    "wanted_by": "",
    "state": "intended",
    "gauge_swatch": "",
    "gauge_stitches": "",
    "gauge_rows": "",
    "gauge_measure": "10 cm",
    "gauge_washed": "yes",
    "gauge_needle": "",
    "yarn_id": "",
    "sureness_pct": "",
    "tail": "",
    "swatch": "",
    "unusable_pct": "",
    "mending": "",
    "notes": "",
}
BLANK_PART = {
    "name": "Collar",
    "copies": "1",
    "way": "counted",
    "counted_stitches": "",
    "counted_rows": "",
    "rectangle_width": "",
    "rectangle_length": "",
    "trapezoid_width": "",
    "trapezoid_width_to": "",
    "trapezoid_length": "",
    "stated_yarn": "",
    "metres_yarn": "",
    "edges": "none",
    "yarn_id": "",
    "gauge_stitches": "",
    "gauge_rows": "",
    "gauge_measure": "10 cm",
    "gauge_washed": "yes",
    "gauge_needle": "",
    "pattern": "stocking stitch",
    "ends": "1",
    "second_use": "",
    "second_yarn_id": "",
    "second_share": "",
    "extra_cables": "",
    "extra_floats": "",
    "extra_other": "",
    "worked_width": "",
    "worked_length": "",
    "place": "",
    "notes": "",
}
SWAP = {"hx-request": "true"}
"""What htmx adds to a request for a part of a page."""


def book_of(store: Store) -> Book:
    with store.reading() as session:
        return load_book(session)


def stamp_of(store: Store, table: str, id: str) -> str:
    """The stamp a form would carry that was opened now."""
    return stamp(getattr(book_of(store), table)[id])


def promise_stamp(store: Store, id: str) -> str:
    return stamp(next(one for one in book_of(store).promises if one.id == id))


def value_of(html: str, field: str) -> str:
    """What a text field of a page holds."""
    found = re.search(rf'<input[^>]* name="{field}"[^>]* value="([^"]*)"', html)
    assert found, f"no field {field}"
    return unescape(found[1])


def undo_of(html: str) -> str:
    """The address to which a page's button posts that undoes the last change."""
    found = re.search(r'action="(/undo/change/[^"]+)"', html)
    assert found, "nothing to undo"
    return found[1]


def words(html: str) -> str:
    """What a page says, without its markup, with single plain spaces."""
    body = html.split("</head>")[-1]
    return " ".join(unescape(re.sub(r"<[^>]*>", " ", body)).split())


def page(client: TestClient, url: str) -> str:
    answer = client.get(url)
    assert answer.status_code == 200, url
    return answer.text
