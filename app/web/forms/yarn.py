"""The form of a yarn: what its skeins are meant to have in common."""

import re
from collections.abc import Mapping
from dataclasses import replace

from app.book.ids import new_id
from app.book.settings import Settings
from app.book.words import Twist
from app.book.yarn import Yarn
from app.web.forms.reader import Reader
from app.web.shown import Shown

MAKINGS = {"spun": "spun by you", "bought": "bought"}
TWISTS: dict[str, str] = {"": "not noted", "S": "S", "Z": "Z"}
TWIST_OF: dict[str, Twist] = {"": "", "S": "S", "Z": "Z"}
MOST_PLIES = 24
COLOUR = re.compile("#[0-9a-f]{6}")


def read_yarn(
    values: Mapping[str, object],
    settings: Settings,
    fleeces: Mapping[str, str],
    old: Yarn | None = None,
) -> tuple[Reader, Yarn]:
    """What was typed and the yarn it describes; the yarn counts only where the reader is ok.

    `fleeces` are names by id. What belongs to a spun yarn is dropped from one that is now said to
    be bought, and the other way round.
    """
    reader = Reader(values, settings)
    if not reader.typed("name"):
        reader.refuse("name", "Give the yarn a name.")
    bought = reader.choice("making", MAKINGS) == "bought"
    as_before = old is not None and old.bought == bought
    yarn = replace(
        old if old and as_before else Yarn(id=old.id if old else new_id(), name=""),
        name=read_line(reader, "name"),
        fibre=reader.text("fibre", longest=60) or "wool",
        plies=read_plies(reader),
        twist=read_twist(reader),
        bought=bought,
        colour=read_colour(reader),
        colour_name=reader.text("colour_name", longest=60),
        notes=reader.text("notes", longest=4000),
    )
    if as_before or not bought:
        fleece = reader.choice("fleece", {"": "", **fleeces}, default="") or None
        yarn = replace(yarn, fleece_id=fleece, target_tex=_target_tex(reader, old))
    if as_before or bought:
        mg, mm = reader.mass("ball_mass", least=1), reader.length("ball_length", least=1)
        yarn = replace(yarn, ball_mg=mg, ball_mm=mm)
    return reader, yarn


def yarn_values(yarn: Yarn | None, settings: Settings) -> dict[str, str]:
    """What the form holds when it is opened; a new yarn is blank."""
    yarn, shown = yarn or Yarn(id="", name="", fibre=""), Shown(settings)
    return {
        "name": yarn.name,
        "fibre": yarn.fibre,
        "plies": shown.field_number(yarn.plies),
        "twist": yarn.twist,
        "making": "bought" if yarn.bought else "spun",
        "fleece": yarn.fleece_id or "",
        "target": _target_shown(yarn, settings),
        "ball_mass": shown.field_mass(yarn.ball_mg),
        "ball_length": shown.field_length(yarn.ball_mm),
        "colour": yarn.colour,
        "colour_known": "1" if yarn.colour else "",
        "colour_name": yarn.colour_name,
        "notes": yarn.notes,
    }


def read_line(reader: Reader, name: str, longest: int = 80) -> str:
    """A name or code: one line, with single blanks."""
    return " ".join(reader.text(name, longest=longest).split())


def read_plies(reader: Reader) -> int | None:
    """How many singles are plied together."""
    return reader.whole("plies", least=1, most=MOST_PLIES)


def read_twist(reader: Reader) -> Twist:
    """The direction of the final twist."""
    return TWIST_OF.get(reader.choice("twist", TWISTS, default="") or "", "")


def read_colour(reader: Reader, name: str = "colour") -> str:
    """A colour as "#rrggbb", or nothing where it is not to be shown."""
    if not reader.flag(f"{name}_known"):
        return ""
    colour = reader.typed(name).lower()
    if not COLOUR.fullmatch(colour):
        reader.refuse(name, "Choose a colour once more.")
    return colour


def colour_kept(reader: Reader) -> dict[str, str]:
    """Whether the colour was ticked, which a browser does not send for an empty box."""
    return {"colour_known": "1" if reader.flag("colour_known") else ""}


def _target_shown(yarn: Yarn, settings: Settings) -> str:
    if not yarn.target_tex:
        return ""
    shown = Shown(settings)
    return shown.field_number(round(shown.grist_value(yarn.target_tex), 3))


def _target_tex(reader: Reader, old: Yarn | None) -> float | None:
    """The grist aimed at, in tex."""
    if old and reader.as_shown({"target": _target_shown(old, reader.settings)}, "target"):
        return old.target_tex
    target = reader.number("target", unit=reader.settings.grist_unit)
    if target is None:
        return None
    if target <= 0:
        reader.refuse(
            "target", "A grist is more than nothing. Leave it empty if you have none yet."
        )
        return None
    return Shown(reader.settings).grist_value(target)
