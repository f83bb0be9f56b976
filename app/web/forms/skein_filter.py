"""The filters of the list of skeins, as they stand in its address."""

from collections.abc import Mapping
from typing import get_args

from app.book.settings import Settings
from app.craft.counts import to_tex
from app.craft.yarn_class import OPEN_END, yarn_classes
from app.store.skein_list import SkeinFilter, SkeinSort, SkeinState
from app.web.forms.reader import Reader
from app.web.shown import Shown

CLASSES: dict[str, str] = {
    "": "any",
    **{str(one.number): one.label for one in yarn_classes() if one.yards_per_pound},
}
STATES: dict[str, str] = {
    "": "all on the shelf",
    "free": "not promised",
    "partly promised": "partly promised",
    "promised": "promised",
    "not finished": "not finished",
    "put away": "put away or used up",
}
SORTS: dict[str, str] = {
    "grist": "by grist, thinnest first",
    "code": "by code",
    "metres": "by length, longest first",
    "grams": "by weight, heaviest first",
    "day": "by day, newest first",
    "colour": "by colour, dark to light",
}
STATE_OF: dict[str, SkeinState] = {one: one for one in get_args(SkeinState)}
SORT_OF: dict[str, SkeinSort] = {one: one for one in get_args(SkeinSort)}
FIELDS = ("q", "fibre", "colour", "yarn", "class", "from", "to", "state", "sort")


def read_filter(values: Mapping[str, object], settings: Settings) -> tuple[Reader, SkeinFilter]:
    """What is asked of the list; a field at fault is left out of it."""
    reader = Reader(values, settings)
    least_tex, most_tex = _grist(reader)
    wanted = SkeinFilter(
        text=reader.text("q", longest=80),
        fibre=reader.text("fibre", longest=60),
        colour=reader.text("colour", longest=60),
        yarn_id=reader.text("yarn", longest=40),
        least_tex=least_tex,
        most_tex=most_tex,
        state=STATE_OF[reader.choice("state", STATES, default="") or ""],
        sort=SORT_OF[reader.choice("sort", SORTS, default="grist") or "grist"],
        page=reader.whole("page", least=1, most=1_000_000) or 1,
    )
    return reader, wanted


def _grist(reader: Reader) -> tuple[float | None, float | None]:
    """Least and most tex: the tighter of the class chosen and the grist asked for in her unit."""
    ends = [_tex(reader, name) for name in ("from", "to")]
    least, most = ends if reader.settings.grist_unit == "tex" else reversed(ends)
    low, high = _class_tex(reader)
    leasts = [one for one in (least, low) if one is not None]
    mosts = [one for one in (most, high) if one is not None]
    return max(leasts, default=None), min(mosts, default=None)


def _class_tex(reader: Reader) -> tuple[float | None, float | None]:
    """The tex of a class, half way to its neighbours, whose printed ranges leave gaps of 1."""
    chosen = reader.choice("class", CLASSES, default="")
    spans = [one.yards_per_pound for one in yarn_classes() if str(one.number) == chosen]
    if not spans or spans[0] is None:
        return None, None
    low, high = spans[0]
    least = to_tex("yd/lb", high + 0.5) if high < OPEN_END else None
    return least, to_tex("yd/lb", low - 0.5) if low > 0 else None


def _tex(reader: Reader, name: str) -> float | None:
    grist = reader.number(name, unit=reader.settings.grist_unit)
    if grist is not None and grist <= 0:
        reader.refuse(name, "A grist is more than nothing.")
        return None
    return None if grist is None else Shown(reader.settings).grist_value(grist)
