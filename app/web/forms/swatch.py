"""The form of a swatch: what it is knit of and on, what was counted, weighed and unravelled."""

from collections.abc import Mapping
from dataclasses import replace

from app.book.ids import new_id
from app.book.settings import Settings
from app.book.swatch import STOCKING_STITCH, Count, Swatch, in_10cm
from app.web.forms.gauge import NEEDLE_MM, ROWS, STITCHES
from app.web.forms.reader import Reader
from app.web.forms.yarn import read_line
from app.web.shown import Shown

WHEN = ("worked", "finished")
LEAST_SIZE_MM, MOST_SIZE_MM = 10.0, 1_000.0
MOST_STITCHES = 50_000
MOST_GRAMS_MG, MOST_STEP_MG = 1_000_000, 10_000
MOST_THREAD_MM = 1_000_000
"""What a swatch is believed to be at most: a metre square, a kilogram, a kilometre unravelled."""

USUAL_OVER_MM = {"10 cm": 100.0, "4 in": 101.6}
USUAL_STEP_MG = {"g": 1_000, "oz": 2_835}
"""What a form proposes: a count over 10 cm or 4 inches, a scale that shows whole grams or tenths of
an ounce."""


def read_swatch(
    values: Mapping[str, object],
    settings: Settings,
    yarns: Mapping[str, str],
    old: Swatch | None = None,
) -> tuple[Reader, Swatch]:
    """What was typed and the swatch it describes; it counts only where the reader is ok.

    `yarns` are names by id.
    """
    reader = Reader(values, settings)
    if not reader.typed("name"):
        reader.refuse("name", "Give the swatch a name.")
    least, most = NEEDLE_MM
    swatch = replace(
        old or Swatch(id=new_id(), name=""),
        name=read_line(reader, "name"),
        yarn_id=reader.choice("yarn_id", {"": "", **yarns}) or None,
        needle_mm=reader.number("needle", unit="mm", least=least, most=most),
        pattern=read_line(reader, "pattern") or STOCKING_STITCH,
        worked=_count(reader, "worked", old.worked if old else None),
        finished=_count(reader, "finished", old.finished if old else None),
        weight_mg=reader.mass("weight", least=1, most=MOST_GRAMS_MG),
        scale_mg=_step(reader, settings),
        whole_stitches=reader.number("whole_stitches", least=1, most=MOST_STITCHES),
        unravelled=reader.number("unravelled", least=1, most=MOST_STITCHES),
        thread_mm=reader.size("thread", least=1, most=MOST_THREAD_MM),
        day=reader.day("day"),
        notes=reader.text("notes", longest=4000),
    )
    _want_both(reader, "weight", "whole_stitches", "Say how many stitches the whole swatch has.")
    _want_both(reader, "whole_stitches", "weight", "Say what the whole swatch weighs.")
    _want_both(reader, "unravelled", "thread", "Say how long their thread is.")
    _want_both(reader, "thread", "unravelled", "Say how many stitches the thread came from.")
    return reader, swatch


def swatch_values(swatch: Swatch | None, settings: Settings) -> dict[str, str]:
    """What the form holds when it is opened; a new swatch is blank but for what is usual."""
    shown, blank = Shown(settings), swatch is None
    swatch = swatch or Swatch(id="", name="")
    step_mg = USUAL_STEP_MG[settings.mass_unit] if blank else swatch.scale_mg
    return {
        "name": swatch.name,
        "yarn_id": swatch.yarn_id or "",
        "needle": shown.field_number(swatch.needle_mm),
        "pattern": swatch.pattern,
        **_count_values(swatch.worked, "worked", shown),
        **_count_values(swatch.finished, "finished", shown),
        "weight": shown.field_mass(swatch.weight_mg),
        "scale": shown.field_mass(step_mg),
        "whole_stitches": shown.field_number(swatch.whole_stitches),
        "unravelled": shown.field_number(swatch.unravelled),
        "thread": shown.field_size(swatch.thread_mm),
        "day": swatch.day.isoformat() if swatch.day else "",
        "notes": swatch.notes,
    }


def _count(reader: Reader, when: str, old: Count | None) -> Count | None:
    """What was counted; None where neither stitches nor rows were typed."""
    shown = _count_values(old, when, Shown(reader.settings))
    if old and reader.as_shown(shown, *shown):
        return old
    stitches, rows = reader.number(f"{when}_stitches"), reader.number(f"{when}_rows")
    width, height = (
        reader.span(f"{when}_{side}", LEAST_SIZE_MM, MOST_SIZE_MM) for side in ("width", "height")
    )
    if not reader.typed(f"{when}_stitches") and not reader.typed(f"{when}_rows"):
        return None
    for field in ("stitches", "width", "rows", "height"):
        if not reader.typed(f"{when}_{field}"):
            reader.refuse(f"{when}_{field}", "A count wants all four of these.")
    if stitches is None or rows is None or width is None or height is None:
        return None
    _believed(reader, f"{when}_stitches", in_10cm(stitches, width), STITCHES, "stitches")
    _believed(reader, f"{when}_rows", in_10cm(rows, height), ROWS, "rows")
    return Count(stitches, width, rows, height)


def _believed(
    reader: Reader, field: str, in_10cm: float, bounds: tuple[float, float], what: str
) -> None:
    least, most = bounds
    if not least <= in_10cm <= most:
        reader.refuse(field, f"That is no gauge: {least:g} to {most:g} {what} in 10 cm are.")


def _want_both(reader: Reader, field: str, other: str, message: str) -> None:
    if reader.typed(field) and not reader.typed(other):
        reader.refuse(other, message)


def _step(reader: Reader, settings: Settings) -> int:
    usual = USUAL_STEP_MG[settings.mass_unit]
    return reader.mass("scale", least=1, most=MOST_STEP_MG) or usual


def _count_values(count: Count | None, when: str, shown: Shown) -> dict[str, str]:
    usual = USUAL_OVER_MM[shown.settings.gauge_unit]
    return {
        f"{when}_stitches": shown.field_number(count.stitches if count else None),
        f"{when}_width": shown.field_span(count.width_mm if count else usual),
        f"{when}_rows": shown.field_number(count.rows if count else None),
        f"{when}_height": shown.field_span(count.height_mm if count else usual),
    }
