"""The changes a maker makes to a part: stitch pattern, second yarn, extras, worked size."""

from collections.abc import Mapping
from dataclasses import dataclass

from app.book.plan import Extra, Part, RoleYarn, Worked
from app.book.settings import Settings
from app.book.shape import Metres, Runs, Shape, Stated
from app.book.swatch import STOCKING_STITCH
from app.book.words import PLACES
from app.craft.patterns import pattern_of, patterns
from app.planning.knit_with import SECOND, USES, KnitWith, knit_shape, told_by
from app.web.forms.filled import Filled
from app.web.forms.reader import Reader
from app.web.shown import Shown

AS_IT_IS = "as its rows say"
USE_WORDS: dict[str, str] = {
    "": "no second yarn",
    "stripes": "in stripes or blocks of colour",
    "stranded": "stranded: carried behind the stitches",
    "held along": "held along with it all the way",
}
EXTRAS = {"cable panel": "extra_cables", "floats": "extra_floats", "other": "extra_other"}
"""The names of the extras that have a field, and their fields."""

USUAL_U = {"cable panel": "cables", "floats": "stranded"}
"""The stitch pattern whose row of the table says how unsure an extra is."""

OTHER_U = 0.5
"""How unsure another extra is, as a share of it (assumed)."""

MOST_ENDS = 6
MOST_EXTRA = 100.0
LEAST_WORKED, MOST_WORKED = 40.0, 200.0
"""Percent of the size off the needles between which a finished size is believed."""


NO_ROWS = "An amount of yarn has no rows. Say how large the part is, or leave this blank."
NO_SIZE = "An amount of yarn has no size. Say how large the part is, or leave this blank."
ALL_OF_IT = "Say the whole amount above: so many metres are all there is to it."


@dataclass(frozen=True, slots=True)
class Changes:
    """What was typed: how the yarns are worked and which is the second, and the part's fields."""

    knit: KnitWith
    second_id: str
    extras: tuple[Extra, ...]
    worked: Worked | None


def read_changes(reader: Reader, yarns: Mapping[str, str], old: Part | None) -> Changes:
    """The changes as they were typed; they count only where the reader is ok."""
    knit = _read_knit(reader)
    second = reader.choice("second_yarn_id", {"": "", **yarns}, default="") or ""
    if knit.use and not second:
        reader.refuse("second_yarn_id", "Choose the second yarn.")
    return Changes(knit, second, _read_extras(reader, old), _read_worked(reader))


def knit_so(shape: Shape, changes: Changes, old: Part | None) -> Shape:
    """The shape typed, with its yarns; as it was where nothing changed."""
    if old is not None and shape == old.shape and told_by(shape) in (None, changes.knit):
        return shape
    return knit_shape(shape, changes.knit)


def refuse_for_amount(reader: Reader, shape: Shape, changes: Changes) -> None:
    """What an amount of yarn cannot take: it has no rows and no size. A panel that a pattern's
    stated amount does not know of is added to it; metres for something else are what they are."""
    if not isinstance(shape, Stated | Metres):
        return
    if changes.knit.use:
        reader.refuse("second_use", NO_ROWS)
    if changes.knit.ends > 1:
        reader.refuse("ends", NO_ROWS)
    if changes.worked:
        reader.refuse("worked_width", NO_SIZE)
    if changes.extras and isinstance(shape, Metres):
        reader.refuse(EXTRAS.get(changes.extras[0].name, "extra_other"), ALL_OF_IT)


def with_second(chosen: tuple[RoleYarn, ...], changes: Changes) -> tuple[RoleYarn, ...]:
    """The yarns of a part, with the second one where it is knit with one."""
    if not changes.knit.use:
        return chosen
    others = tuple(one for one in chosen if one.role != SECOND)
    return (*others, RoleYarn(SECOND, changes.second_id))


def change_values(part: Part | None, settings: Settings) -> dict[str, str]:
    """What the fields hold when the form is opened."""
    shown, knit = Shown(settings), (told_by(part.shape) if part else None) or KnitWith()
    worked = part.worked if part else None
    second = [one.yarn_id for one in part.yarns if one.role == SECOND] if part else []
    return {
        "pattern": knit.pattern or ("" if _own_rows(part) else STOCKING_STITCH),
        "ends": str(knit.ends),
        "second_use": knit.use,
        "second_yarn_id": second[0] if knit.use and second else "",
        "second_share": shown.field_number(knit.share_pct) if knit.share_pct else "",
        "place": part.place if part else "",
        "in_round": "1" if part and part.in_round else "",
        "worked_width": shown.field_number(worked.width_pct) if worked else "",
        "worked_length": shown.field_number(worked.length_pct) if worked else "",
        **_extra_values(part, shown),
    }


def pattern_words(part: Part | None) -> dict[str, str]:
    """The stitch patterns offered: those of the table and the part's own."""
    own = told_by(part.shape) if part else None
    names = dict.fromkeys(one.name for one in patterns())
    names |= {own.pattern: None} if own and own.pattern else {}
    offered = {name: name for name in names}
    return {"": AS_IT_IS, **offered} if _own_rows(part) else offered


def place_words() -> dict[str, str]:
    """Where a part can lie; as its name tells where nothing is chosen."""
    return {place: place or "as its name tells" for place in PLACES}


def is_open(form: Filled, settings: Settings) -> bool:
    """Whether a change is filled in or at fault, so that all are shown at once."""
    blank = change_values(None, settings)
    changes = blank.keys() - {"place", "in_round"}
    filled = (form.values.get(name, "") not in ("", blank[name]) for name in changes)
    return any(filled) or not form.errors.keys().isdisjoint(blank)


def _own_rows(part: Part | None) -> bool:
    return part is not None and isinstance(part.shape, Runs)


def _read_knit(reader: Reader) -> KnitWith:
    pattern = reader.text("pattern", longest=80)
    ends = reader.whole("ends", least=1, most=MOST_ENDS) or 1
    use = reader.choice("second_use", USES, default="") or ""
    if use not in ("stripes", "stranded"):
        return KnitWith(pattern, ends, use)
    share = reader.number("second_share", required=True, unit="%", least=1.0, most=99.0)
    return KnitWith(pattern, ends, use, share or 0.0)


def _read_extras(reader: Reader, old: Part | None) -> tuple[Extra, ...]:
    before = {one.name: one for one in old.extras} if old else {}
    kept = [one for one in before.values() if one.name not in EXTRAS]
    for name, field in EXTRAS.items():
        pct = reader.number(field, unit="%", least=0.0, most=MOST_EXTRA)
        if pct:
            same = name in before and before[name].pct == pct
            kept.append(before[name] if same else Extra(name, pct, pct * _unsure(name)))
    return tuple(kept)


def _unsure(name: str) -> float:
    if name not in USUAL_U:
        return OTHER_U
    usual = pattern_of(USUAL_U[name])
    return usual.extra_u / usual.extra


def _read_worked(reader: Reader) -> Worked | None:
    read = {
        name: reader.number(name, unit="%", least=LEAST_WORKED, most=MOST_WORKED)
        for name in ("worked_width", "worked_length")
    }
    width, length = (one or 100.0 for one in read.values())
    return None if width == length == 100.0 else Worked(width, length)


def _extra_values(part: Part | None, shown: Shown) -> dict[str, str]:
    typed = {one.name: shown.field_number(one.pct) for one in part.extras} if part else {}
    return {field: typed.get(name, "") for name, field in EXTRAS.items()}
