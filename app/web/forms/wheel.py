"""The form of a wheel or spindle: its name, its ratios and what its bobbin holds."""

import re
from dataclasses import replace
from datetime import date

from app.book.settings import Settings
from app.book.stamp import stamp
from app.book.wheel import Ratio, Wheel
from app.book.words import WheelKind
from app.craft.typed import Unclear, number
from app.web.forms.filled import Filled
from app.web.forms.reader import Reader
from app.web.shown import Shown

KINDS: dict[WheelKind, str] = {"wheel": "a wheel", "spindle": "a spindle"}
LEAST_RATIO, MOST_RATIO = 0.2, 100.0
MOST_RATIOS = 12
MOST_BOBBIN_MG = 5_000_000


def filled_wheel(wheel: Wheel | None, settings: Settings) -> Filled:
    """The form as it shows a wheel; a new one is blank."""
    wheel, shown = wheel or Wheel(id="", name=""), Shown(settings)
    values = {
        "name": wheel.name,
        "kind": wheel.kind,
        "ratios": "; ".join(shown.field_number(one.value) for one in wheel.ratios),
        "bobbin": shown.field_mass(wheel.bobbin_mg),
        "notes": wheel.notes,
        "put_away": "1" if wheel.put_away else "",
    }
    return Filled(values, {}, stamp(wheel) if wheel.id else "")


def read_wheel(reader: Reader, old: Wheel) -> Wheel:
    """The wheel as typed; good where the reader is ok."""
    away = reader.flag("put_away")
    return replace(
        old,
        name=" ".join(reader.text("name", required=True, longest=80).split()),
        kind=reader.choice("kind", KINDS) or old.kind,
        ratios=_ratios(reader),
        bobbin_mg=reader.mass("bobbin", least=1000, most=MOST_BOBBIN_MG),
        notes=reader.text("notes", longest=4000),
        put_away=(old.put_away or date.today()) if away else None,
    )


def _ratios(reader: Reader) -> tuple[Ratio, ...]:
    """Ratios as they are written on a wheel: "8; 10.5; 14", each perhaps with "to 1"."""
    parts = r"[;\s]+" if reader.settings.decimal == "," else r"[;,\s]+"
    text = re.sub(r"\s*(?:to|:)\s*1(?![\d.,])", "", reader.text("ratios", longest=200))
    try:
        found = [number(one, reader.settings.decimal) for one in re.split(parts, text) if one]
    except Unclear:
        reader.refuse("ratios", "Give numbers with a semicolon between them, as in 8; 10.5; 14.")
        return ()
    if any(not LEAST_RATIO <= one <= MOST_RATIO for one in found) or len(found) > MOST_RATIOS:
        reader.refuse("ratios", "A ratio lies between 0.2 and 100, and there are at most twelve.")
    return tuple(Ratio(one) for one in sorted(set(found)))
