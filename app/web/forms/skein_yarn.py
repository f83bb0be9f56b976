"""The fields that say which yarn a skein belongs to: one that is known, or a new one."""

from dataclasses import replace

from app.book.book import Book
from app.book.ids import new_id
from app.book.yarn import Yarn
from app.web.forms.reader import Reader
from app.web.forms.yarn import read_colour, read_line, read_plies, read_twist

NEW = "new"


def read_skein_yarn(
    reader: Reader, book: Book, fleece_id: str | None = None, bought: bool = False
) -> Yarn:
    """The yarn chosen, or the new one named; it counts only where the reader is ok."""
    chosen = reader.choice("yarn", {NEW, *book.yarn}, default=NEW)
    if chosen in book.yarn:
        return book.yarn[chosen]
    fleece = book.fleece.get(fleece_id or "")
    yarn = Yarn(
        id=new_id(),
        name=read_line(reader, "yarn_name"),
        fibre=reader.text("fibre", longest=60) or (fleece.fibre if fleece else "wool"),
        plies=read_plies(reader),
        twist=read_twist(reader),
        fleece_id=fleece_id,
        bought=bought,
        colour=read_colour(reader),
        colour_name=reader.text("colour_name", longest=60),
    )
    if chosen == NEW and not yarn.name:
        reader.refuse("yarn_name", "Name the new yarn, or choose one you have.")
    return replace(yarn, colour=yarn.colour or (fleece.colour if fleece else ""))


def yarn_options(book: Book) -> dict[str, str]:
    """The yarns to choose from, a new one first."""
    named = sorted(book.yarns, key=lambda one: (one.name.lower(), one.id))
    return {NEW: "a new yarn, named below", **{one.id: one.name for one in named}}
