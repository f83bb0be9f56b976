"""Exchange documents of earlier versions, brought to the form of the present one.

1   before swatches were kept; a gauge did not say which swatch it was taken from
2   before patterns were kept; a plan had no design, and a part neither place nor extras
3   before wheels, stints, marks, photos and weighings were kept, yarns took turns, colours ran
"""

from collections.abc import Callable
from typing import Any

from app.book.codec import to_plain
from app.book.settings import Prices

Document = dict[str, Any]


def brought_up(document: Document, version: int) -> Document:
    """The same document as the present version would hold it, what it lacks filled in."""
    for step in STEPS[version - 1 :]:
        document = step(document)
    return document


def _with_swatches(document: Document) -> Document:
    whole = {"swatches": [], **document}
    for table in whole.keys() & {"plans", "parts"}:
        whole[table] = _gauges_named(whole[table])
    return whole


def _gauges_named(records: Any) -> Any:
    """Plans or parts whose gauges name no swatch; what is no such list is left to the reader."""
    if not isinstance(records, list):
        return records
    return [_gauge_named(one) if isinstance(one, dict) else one for one in records]


def _gauge_named(record: Document) -> Document:
    gauge = record.get("gauge")
    if not isinstance(gauge, dict):
        return record
    return {**record, "gauge": {"swatch_id": None, **gauge}}


NO_DESIGN: Document = {"design": None, "pattern_id": None, "size": "", "follows": ""}
NO_PLACE: Document = {"place": "", "in_round": False, "extras": [], "worked": None}


def _with_patterns(document: Document) -> Document:
    whole = {"patterns": [], **document}
    for table, lacking in (("plans", NO_DESIGN), ("parts", NO_PLACE)):
        if table in whole:
            whole[table] = _filled_in(whole[table], lacking)
    return whole


OTHER_LISTS: Document = {"wheels": [], "stints": [], "marks": [], "photos": []}
OTHER_LISTS |= {"progress": [], "weighings": []}
LACKING: dict[str, Document] = {
    "fleeces": {"blend": []},
    "yarns": {"blend": [], "spinning": None},
    "holdings": {"colours": [], "look_again": None, "apart": False},
    "readings": {"minute": None},
    "events": {"step": "", "passes": 0},
    "plans": {"cast_on": None, "finished_on": None, "took": [], "measured": []},
    "parts": {"sequence": None},
    "promises": {"position": 0, "from_inside": False},
}


def _with_steps(document: Document) -> Document:
    whole = {**OTHER_LISTS, **document}
    for table in whole.keys() & LACKING.keys():
        whole[table] = _filled_in(whole[table], LACKING[table])
    settings = whole.get("settings")
    if isinstance(settings, dict):
        whole["settings"] = {"prices": to_plain(Prices()), "evening_minutes": 120, **settings}
    return whole


def _filled_in(records: Any, lacking: Document) -> Any:
    """Records with the fields they lack; what is no such list is left to the reader."""
    if not isinstance(records, list):
        return records
    return [{**lacking, **one} if isinstance(one, dict) else one for one in records]


STEPS: tuple[Callable[[Document], Document], ...] = (
    _with_swatches,
    _with_patterns,
    _with_steps,
)
"""What brings a document of version 1, 2 … to the next."""
