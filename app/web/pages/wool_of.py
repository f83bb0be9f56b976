"""What a skein, a garment or a fleece is made of and where its wool came from, in a few words."""

from dataclasses import dataclass

from app.book.book import Book
from app.planning.blend import MadeOf
from app.web.pages.wool_way import shares_said, water_said
from app.web.shown import Shown
from app.work.wool_traced import (
    came_from,
    made_of_holding,
    made_of_plan,
    plan_came_from,
    plan_mg,
)


@dataclass(frozen=True, slots=True)
class WoolOf:
    """`label` as a label says it; `water` the agreed share of it, in percent; `came` from where;
    `url` of the page that tells the whole way, empty where there is none."""

    label: str
    water: str
    care: str
    came: str
    url: str


def wool_of_holding(book: Book, holding_id: str, shown: Shown) -> WoolOf | None:
    """None for a holding that never held wool."""
    came = shares_said(book, came_from(book, holding_id), shown)
    return _wool_of(made_of_holding(book, holding_id), came, f"/wool-book/{holding_id}", shown)


def wool_of_plan(book: Book, plan_id: str, shown: Shown) -> WoolOf | None:
    """Of a garment, or of the skeins promised to it; None where there is neither."""
    knit = [id for id in plan_mg(book, plan_id) if book.holding[id].kind == "garment"]
    came = shares_said(book, plan_came_from(book, plan_id), shown)
    url = f"/wool-book/{knit[0]}" if knit else ""
    return _wool_of(made_of_plan(book, plan_id), came, url, shown)


def _wool_of(made: MadeOf | None, came: str, url: str, shown: Shown) -> WoolOf | None:
    if made is None:
        return None
    return WoolOf(made.label, water_said(made, shown), " ".join(made.care), came, url)
