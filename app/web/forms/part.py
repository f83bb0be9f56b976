"""The form of a part: its name, how many, and one of several ways to say how large it is."""

from collections.abc import Callable, Mapping
from dataclasses import replace

from app.book.ids import new_id
from app.book.plan import Part, Plan
from app.book.settings import Settings
from app.book.shape import Counted, Metres, Rectangle, Runs, Shape, Stated, Trapezoid
from app.book.swatch import Swatch
from app.book.words import EDGES, PLACES
from app.planning.knit_with import as_described
from app.web.forms.gauge import gauge_values
from app.web.forms.gauge_swatch import read_gauge_or_swatch
from app.web.forms.part_changes import (
    change_values,
    knit_so,
    read_changes,
    refuse_for_amount,
    with_second,
)
from app.web.forms.plan import main_yarn, read_yarns
from app.web.forms.reader import Reader
from app.web.shown import Shown

WAYS = {
    "counted": "Stitches and rows, counted",
    "rectangle": "A straight piece, measured",
    "trapezoid": "A piece that widens or narrows, measured",
    "stated": "What a pattern states for the whole garment",
    "metres": "So much yarn for something else",
    "runs": "Row by row, as it is",
}
"""How a part can be described; "runs" is offered only where the part already has its rows."""

EDGE_WORDS: dict[str, str] = {
    "none": "none, or counted in",
    "cast on": "cast on; another piece is knit on from its end",
    "cast on and seams": "cast on and seams; another piece is knit on from its end",
    "cast on and off": "cast on and cast off",
    "cast on, off and seams": "cast on, cast off and seams",
    "cast on, stretchy cast-off": "cast on and stretchy cast-off",
    "cast on, stretchy cast-off and seams": "cast on, stretchy cast-off and seams",
    "cast off": "knit on from another piece and cast off",
    "cast off and seams": "knit on from another piece, cast off and seams",
    "stretchy cast-off": "knit on from another piece, stretchy cast-off",
    "picked up and cast off": "picked up and cast off",
    "picked up, stretchy cast-off": "picked up and stretchy cast-off",
}
MOST_COPIES = 50
MOST_STITCHES = 5_000
MOST_ROWS = 20_000
MOST_SIZE_MM = 20_000
MOST_YARN_MM = 100_000_000
"""What a part is believed to be at most: a blanket, and 100 km of yarn."""


def read_part(
    values: Mapping[str, object],
    settings: Settings,
    plan: Plan,
    yarns: Mapping[str, str],
    swatches: Mapping[str, Swatch],
    old: Part | None = None,
) -> tuple[Reader, Part]:
    """What was typed and the part of `plan` it describes; it counts only where the reader is ok."""
    reader = Reader(values, settings)
    shape = _read_shape(reader, old)
    gauge = read_gauge_or_swatch(reader, swatches, old.gauge if old else None)
    changes = read_changes(reader, yarns, old)
    refuse_for_amount(reader, shape, changes)
    if reader.ok:
        shape = knit_so(shape, changes, old)
    part = replace(
        old or Part(id=new_id(), plan_id=plan.id, name="", shape=shape),
        name=reader.text("name", required=True, longest=80),
        shape=shape,
        copies=_within(reader, "copies", reader.whole("copies"), MOST_COPIES, blank=1),
        gauge=gauge,
        yarns=with_second(read_yarns(reader, yarns, old.yarns if old else ()), changes),
        edges=reader.choice("edges", EDGES) or "none",
        place=reader.choice("place", PLACES, default="") or "",
        in_round=reader.flag("in_round"),
        extras=changes.extras,
        worked=changes.worked,
        notes=reader.text("notes", longest=4000),
    )
    return reader, part


def part_values(part: Part | None, settings: Settings) -> dict[str, str]:
    """What the form holds when it is opened; a new part is counted, one piece."""
    blank = dict.fromkeys(SHAPE_FIELDS, "")
    if part is None:
        first = {"name": "", "copies": "1", "way": "counted", "yarn_id": "", "edges": "none"}
        more = {**gauge_values(None, settings), **change_values(None, settings)}
        return {**blank, **first, "notes": "", **more}
    shape = as_described(part.shape)
    return {
        **blank,
        "name": part.name,
        "copies": str(part.copies),
        "way": shape.way,
        "yarn_id": main_yarn(part.yarns),
        "edges": part.edges,
        "notes": part.notes,
        **gauge_values(part.gauge, settings),
        **change_values(part, settings),
        **_shape_values(shape, Shown(settings)),
    }


def _read_shape(reader: Reader, old: Part | None) -> Shape:
    way = reader.choice("way", WAYS)
    if way == "runs" and old is not None and isinstance(old.shape, Runs):
        return old.shape
    if way not in SHAPES:
        reader.errors.setdefault("way", "Choose how to say how large it is.")
        return Metres(0)
    return SHAPES[way](reader)


def _counted(reader: Reader) -> Shape:
    return Counted(
        _within(reader, "counted_stitches", reader.whole("counted_stitches"), MOST_STITCHES),
        _within(reader, "counted_rows", reader.whole("counted_rows"), MOST_ROWS),
    )


def _rectangle(reader: Reader) -> Shape:
    return Rectangle(_size(reader, "rectangle_width"), _size(reader, "rectangle_length"))


def _trapezoid(reader: Reader) -> Shape:
    return Trapezoid(
        _size(reader, "trapezoid_width"),
        _size(reader, "trapezoid_width_to", least=0),
        _size(reader, "trapezoid_length"),
    )


def _stated(reader: Reader) -> Shape:
    return Stated(_yarn(reader, "stated_yarn"))


def _metres(reader: Reader) -> Shape:
    return Metres(_yarn(reader, "metres_yarn"))


SHAPES: dict[str, Callable[[Reader], Shape]] = {
    "counted": _counted,
    "rectangle": _rectangle,
    "trapezoid": _trapezoid,
    "stated": _stated,
    "metres": _metres,
}
SHAPE_FIELDS = (
    "counted_stitches",
    "counted_rows",
    "rectangle_width",
    "rectangle_length",
    "trapezoid_width",
    "trapezoid_width_to",
    "trapezoid_length",
    "stated_yarn",
    "metres_yarn",
)


def _size(reader: Reader, field: str, least: int = 1) -> int:
    return _within(reader, field, reader.size(field), MOST_SIZE_MM, least=least)


def _yarn(reader: Reader, field: str) -> int:
    return _within(reader, field, reader.length(field), MOST_YARN_MM)


def _within(
    reader: Reader,
    field: str,
    value: int | None,
    most: int,
    least: int = 1,
    blank: int | None = None,
) -> int:
    """`value`, or a complaint beside the field; a blank counts as `blank` where that is given."""
    if value is None:
        if blank is None:
            reader.errors.setdefault(field, "Fill this in for the way you chose.")
        return blank or 0
    if value < least:
        reader.errors.setdefault(field, "This must be more than zero.")
    elif value > most:
        reader.errors.setdefault(field, "This is more than any garment. Look at it once more.")
    return value


def _shape_values(shape: Shape, shown: Shown) -> dict[str, str]:
    match shape:
        case Counted(stitches=stitches, rows=rows):
            return {"counted_stitches": str(stitches), "counted_rows": str(rows)}
        case Rectangle(width_mm=width, length_mm=length):
            sizes = {"rectangle_width": width, "rectangle_length": length}
        case Trapezoid(width_mm=width, width_to_mm=width_to, length_mm=length):
            sizes = {"trapezoid_width": width, "trapezoid_width_to": width_to}
            sizes["trapezoid_length"] = length
        case Stated(mm=mm) | Metres(mm=mm):
            return {f"{shape.way}_yarn": shown.field_length(mm)}
        case _:
            return {}
    return {field: shown.field_size(mm) for field, mm in sizes.items()}
