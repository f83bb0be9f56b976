"""The list of skeins, in order of grist, with a strip of their colours."""

from dataclasses import dataclass
from urllib.parse import urlencode

from app.store.skein_list import PAGE, SkeinFilter, SkeinLine, SkeinTotal
from app.web.forms.filled import Filled
from app.web.forms.reader import Reader
from app.web.forms.skein_filter import CLASSES, FIELDS, SORTS, STATES
from app.web.pages.answer import Sentence
from app.web.shown import Shown
from app.work.skein_browse import Browsed


@dataclass(frozen=True, slots=True)
class SkeinsPage:
    """`empty` where there is no skein at all; `narrowed` where a filter is in use, `detailed`
    where it is more than words."""

    answer: Sentence
    empty: bool
    narrowed: bool
    detailed: bool
    form: Filled
    lines: list[SkeinLine]
    caption: str
    classes: dict[str, str]
    fibres: dict[str, str]
    yarns: dict[str, str]
    states: dict[str, str]
    sorts: dict[str, str]
    earlier_url: str
    later_url: str
    labels_url: str


def skeins_page(reader: Reader, wanted: SkeinFilter, found: Browsed, shown: Shown) -> SkeinsPage:
    narrowed = any(reader.typed(name) for name in FIELDS if name != "sort")
    return SkeinsPage(
        answer=shelf_said(found.total, found.reserved_mm, narrowed, shown),
        empty=not (found.total.skeins or narrowed),
        narrowed=narrowed,
        detailed=any(reader.typed(name) for name in FIELDS if name not in ("q", "sort")),
        form=reader.filled(),
        lines=found.lines,
        caption=_caption(wanted, found.total, shown),
        classes=CLASSES,
        fibres={"": "any", **{one: one for one in found.fibres}},
        yarns={"": "any", **found.yarns},
        states=STATES,
        sorts=SORTS,
        earlier_url=_page_url(reader, wanted.page - 1) if wanted.page > 1 else "",
        later_url=_page_url(reader, wanted.page + 1) if found.more else "",
        labels_url="/labels" + _page_url(reader, 1).removeprefix("/skeins").rstrip("?"),
    )


def shelf_said(total: SkeinTotal, reserved_mm: int, narrowed: bool, shown: Shown) -> Sentence:
    """ "38 skeins hold 6 120 m, 2 760 g; 410 m of it not promised, 24 m of those in reserve." """
    if not total.skeins:
        return Sentence("idle", "No skein is like this." if narrowed else "No skein yet.")
    holds = "skein holds" if total.skeins == 1 else "skeins hold"
    lead = f"{shown.number(total.skeins)} {holds} {shown.length(total.mm / 1000)}"
    free = shown.at_least_length(max(0, total.free_mm) / 1000)
    reserve = f", {shown.length(reserved_mm / 1000)} of those in reserve" if reserved_mm else ""
    mass = shown.mass(total.mg / 1000)
    return Sentence("idle", lead, f", {mass}; {free} of it not promised{reserve}.")


def _caption(wanted: SkeinFilter, total: SkeinTotal, shown: Shown) -> str:
    """ "61 to 120 of 412, by grist, thinnest first" """
    first = (wanted.page - 1) * PAGE + 1
    last = min(total.skeins, first + PAGE - 1)
    span = f"{shown.number(first)} to {shown.number(last)} of {shown.number(total.skeins)}"
    return f"{span}, {SORTS[wanted.sort]}"


def _page_url(reader: Reader, page: int) -> str:
    asked = {name: reader.typed(name) for name in FIELDS if reader.typed(name)}
    return "/skeins?" + urlencode(asked | ({"page": str(page)} if page > 1 else {}))
