"""Which labels are asked for, on which sheet, and where on it they begin: all in the address."""

from collections.abc import Mapping
from dataclasses import dataclass

from app.book.settings import Settings
from app.craft.label_sheets import SHEETS, LabelSheet, sheet_of, usual_sheet
from app.store.skein_list import SkeinFilter
from app.web.forms.reader import Reader
from app.web.forms.skein_filter import read_filter

MOST = 200
"""Labels at a time."""


@dataclass(frozen=True, slots=True)
class LabelsAsked:
    """`ids` are holdings that were chosen one by one; None: all the filter finds, or with `wool`
    all wool not yet yarn, that of one `fleece` where it is named. `start` is the first label to be
    used, 1 the top left."""

    ids: tuple[str, ...] | None
    wool: bool
    fleece: str
    wanted: SkeinFilter
    sheet: LabelSheet
    start: int


def read_labels(values: Mapping[str, object], settings: Settings) -> tuple[Reader, LabelsAsked]:
    """What is asked for; a field at fault is left out of it."""
    reader, wanted = read_filter(values, settings)
    usual = usual_sheet(settings.paper)
    keys = [one.key for one in SHEETS]
    sheet = sheet_of(reader.choice("sheet", keys, default=usual.key) or "") or usual
    start = reader.whole("start", least=1, most=sheet.count) or 1
    ids = tuple(dict.fromkeys(reader.all("holding")))
    one_by_one = ids or reader.flag("chosen")
    reader.values |= {"sheet": sheet.key, "start": reader.typed("start") or "1"}
    fleece = reader.typed("fleece")
    wool = reader.flag("wool") or bool(fleece)
    return reader, LabelsAsked(ids if one_by_one else None, wool, fleece, wanted, sheet, start)
