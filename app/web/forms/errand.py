"""The form of a line of her own on the work list."""

from collections.abc import Mapping

from app.book.errand import Errand
from app.book.ids import new_id
from app.book.settings import Settings
from app.web.forms.reader import Reader


def read_errand(
    values: Mapping[str, object], settings: Settings, plans: Mapping[str, str]
) -> tuple[Reader, Errand]:
    """What was typed and the line it makes; `plans` are names by id."""
    reader = Reader(values, settings)
    errand = Errand(
        id=new_id(),
        text=reader.text("text", required=True, longest=200),
        plan_id=reader.choice("plan_id", {"": "", **plans}) or None,
    )
    return reader, errand
