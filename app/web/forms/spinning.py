"""The form of how a yarn is to be spun."""

from collections.abc import Mapping
from dataclasses import replace

from app.book.book import Book
from app.book.spinning import Spinning
from app.book.stamp import stamp
from app.book.yarn import Yarn
from app.craft.twist_uses import twist_uses
from app.web.forms.filled import Filled
from app.web.forms.options import names_by_id, with_none
from app.web.forms.reader import Reader
from app.web.shown import Shown

PREPARATIONS = {"": "not said: as carded", "carded": "carded", "combed": "combed"}
MOST_TURNS_PER_M = 5_000.0
MOST_WRAPS = 200.0
MOST_MM = 100_000_000


def use_options() -> dict[str, str]:
    """What a yarn may be for, softest first."""
    return with_none("not said: most knitting", {one.use: one.use for one in twist_uses()})


def wheel_options(book: Book) -> dict[str, str]:
    """The wheels in use, by id."""
    here = [one for one in book.wheels if one.put_away is None]
    return with_none("none, or another", names_by_id(here))


def filled_spinning(yarn: Yarn, shown: Shown) -> Filled:
    """The form as it shows the targets of a yarn."""
    said = yarn.spinning or Spinning()
    values = {
        "target": _grist(yarn, shown),
        "wraps": shown.field_number(said.wraps),
        "use": said.use,
        "preparation": said.preparation,
        "wheel": said.wheel_id or "",
        "ratio": shown.field_number(said.ratio),
        "draft": shown.field_size(said.draft_mm),
        "ply_twist": _turns(said.ply_twist_per_m, shown),
        "singles_twist": _turns(said.singles_twist_per_m, shown),
        "chained": "1" if said.chained else "",
        "wanted": shown.field_length(said.wanted_mm),
        "note": said.note,
    }
    return Filled(values, {}, stamp(yarn))


def read_spinning(reader: Reader, yarn: Yarn, wheels: Mapping[str, str]) -> Yarn:
    """The yarn with its targets as typed; good where the reader is ok."""
    shown, said = Shown(reader.settings), yarn.spinning or Spinning()
    before = filled_spinning(yarn, shown).values
    return replace(
        yarn,
        target_tex=_read_grist(reader, yarn, shown),
        spinning=replace(
            said,
            wraps=reader.number("wraps", least=1.0, most=MOST_WRAPS),
            use=reader.choice("use", use_options(), default="") or "",
            preparation=reader.choice("preparation", PREPARATIONS, default="") or "",
            wheel_id=reader.choice("wheel", {**wheels, said.wheel_id or "": ""}, default="")
            or None,
            ratio=reader.number("ratio", least=0.2, most=100.0),
            draft_mm=reader.size("draft", least=1, most=5_000),
            ply_twist_per_m=_read_turns(reader, "ply_twist", before, said.ply_twist_per_m),
            singles_twist_per_m=_read_turns(
                reader, "singles_twist", before, said.singles_twist_per_m
            ),
            chained=reader.flag("chained"),
            wanted_mm=reader.length("wanted", least=1000, most=MOST_MM),
            note=reader.text("note", longest=4000),
        ),
    )


def per_size(shown: Shown) -> float:
    """Metres in the unit twist is told over, an inch or a centimetre."""
    return 0.01 if shown.size_unit == "cm" else 0.0254


def _turns(per_m: float | None, shown: Shown) -> str:
    return "" if per_m is None else shown.field_number(round(per_m * per_size(shown), 4))


def _read_turns(
    reader: Reader, name: str, before: Mapping[str, str], old: float | None
) -> float | None:
    """Turns per metre from turns per inch or centimetre, unchanged where they were not touched."""
    if reader.as_shown(before, name):
        return old
    per = per_size(Shown(reader.settings))
    turns = reader.number(name, least=0.01, most=MOST_TURNS_PER_M * per)
    return None if turns is None else turns / per


def _grist(yarn: Yarn, shown: Shown) -> str:
    if not yarn.target_tex:
        return ""
    return shown.field_number(round(shown.grist_value(yarn.target_tex), 3))


def _read_grist(reader: Reader, yarn: Yarn, shown: Shown) -> float | None:
    if reader.as_shown({"target": _grist(yarn, shown)}, "target"):
        return yarn.target_tex
    most = shown.grist_value(0.01 if reader.settings.grist_unit != "tex" else 1_000_000.0)
    target = reader.number("target", unit=reader.settings.grist_unit, least=0.01, most=most)
    return None if target is None else shown.grist_value(target)


def _wheel(reader: Reader, wheels: Mapping[str, str], said: Spinning) -> str | None:
    """The wheel chosen; one that was put away since may stay."""
    return reader.choice("wheel", {**wheels, said.wheel_id or "": ""}, default="") or None
