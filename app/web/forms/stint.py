"""The short form of time spent: what at, how long, and how much of it was done."""

from collections.abc import Mapping
from datetime import date

from app.book.ids import new_id
from app.book.settings import Settings
from app.book.stint import Stint
from app.book.words import Work
from app.web.forms.reader import Reader

WORKS: dict[Work, str] = {
    "spin": "spinning",
    "ply": "plying",
    "knit": "knitting",
    "skirt": "skirting",
    "scour": "scouring",
    "pick": "picking",
    "card": "carding",
    "comb": "combing",
    "blend": "blending",
    "dye": "dyeing",
    "finish": "finishing",
    "wind": "winding",
}
MOST_MINUTES = 24 * 60
MOST = 1_000_000_000


def read_stint(
    values: Mapping[str, object], settings: Settings, yarns: Mapping[str, str]
) -> tuple[Reader, Stint]:
    """What was typed and the stint it makes; it counts only where the reader is ok."""
    reader = Reader(values, settings)
    mg, mm = reader.mass("mass", least=1, most=MOST), reader.length("length", least=1, most=MOST)
    today = date.today()
    stint = Stint(
        id=new_id(),
        day=reader.day("day", until=today) or today,
        work=reader.choice("work", WORKS) or "spin",
        minutes=reader.whole("minutes", required=True, least=1, most=MOST_MINUTES) or 1,
        mg=mg,
        mm=mm,
        yarn_id=reader.choice("yarn", {"": "", **yarns}, default="") or None,
        note=reader.text("note", longest=200),
    )
    return reader, stint


def blank_stint() -> dict[str, str]:
    """What the form holds when it is opened."""
    return {"work": "spin", "day": date.today().isoformat()}
