"""The form that changes what is written of a skein; its amounts are weighed, never typed over."""

from collections.abc import Mapping
from dataclasses import replace

from app.book.book import Book
from app.book.holding import Holding
from app.book.settings import Settings
from app.web.forms.reader import Reader
from app.web.forms.yarn import read_colour, read_line


def read_change(
    values: Mapping[str, object], settings: Settings, book: Book, old: Holding
) -> tuple[Reader, Holding]:
    """What was typed and the skein it describes; the skein counts only where the reader is ok."""
    reader = Reader(values, settings)
    if not reader.typed("code"):
        reader.refuse("code", "A skein needs a code to be found by.")
    yarns = {"", *book.yarn} if old.yarn_id is None else set(book.yarn)
    skein = replace(
        old,
        code=read_line(reader, "code", longest=30),
        yarn_id=reader.choice("yarn", yarns) or None,
        colour=read_colour(reader),
        colour_name=reader.text("colour_name", longest=60),
        dye_lot=reader.text("dye_lot", longest=40),
        price=reader.text("price", longest=40),
        place=reader.text("place", longest=80),
        look_again=reader.day("look_again"),
        notes=reader.text("notes", longest=4000),
    )
    return reader, skein


def change_values(skein: Holding) -> dict[str, str]:
    """What the form holds when it is opened."""
    return {
        "code": skein.code,
        "yarn": skein.yarn_id or "",
        "colour": skein.colour,
        "colour_known": "1" if skein.colour else "",
        "colour_name": skein.colour_name,
        "dye_lot": skein.dye_lot,
        "price": skein.price,
        "place": skein.place,
        "look_again": skein.look_again.isoformat() if skein.look_again else "",
        "notes": skein.notes,
    }
