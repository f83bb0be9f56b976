"""The forms of a bobbin: a new one, what is on it, a check of its grist, its end."""

from collections.abc import Mapping
from datetime import date

from app.book.holding import Holding
from app.book.reading import Reading
from app.craft.spinning import checked_tex, wrapped_tex
from app.planning.bobbins import WAYS
from app.web.forms.reader import Reader
from app.web.forms.skein import WRAPS
from app.web.shown import as_typed
from app.work.bobbin_end import End
from app.work.bobbin_spin import Spun, check_reading
from app.work.skein_readings import Weight

WAY_WORDS = {
    "kept": "kept as singles",
    "plied on itself": "plied on itself, from both ends",
    "chain-plied": "chain-plied, three strands from one",
}
MOST_MG = 10_000_000
SHORTEST_MM, LONGEST_MM = 50, 100_000
FINEST, HEAVIEST = 1.0, 20_000.0
"""Singles in tex between which a check is believed."""


def read_spun(reader: Reader, wool: Mapping[str, Holding]) -> Spun | None:
    """What is on a bobbin as typed; None where a field is at fault."""
    mg = reader.mass("mass", required=True, least=1, most=MOST_MG)
    chosen = reader.choice("wool", wool)
    fibre = reader.mass("fibre", least=1, most=MOST_MG)
    day = reader.day("day", until=date.today()) or date.today()
    if not reader.ok or mg is None or chosen is None:
        return None
    weight = Weight(mg, reader.typed("mass"), reader.settings.mass_unit)
    return Spun(weight, wool[chosen], day, fibre)


def read_check(reader: Reader, bobbin: Holding, today: date) -> Reading | None:
    """A check as typed, by wraps or by a length and its weight; None where a field is at fault."""
    wraps = reader.number("wraps", least=WRAPS[0], most=WRAPS[1])
    mm = reader.length("length", least=SHORTEST_MM, most=LONGEST_MM)
    mg = reader.mass("weight", least=1, most=MOST_MG)
    if wraps is None and (mm is None or mg is None):
        reader.refuse("wraps", "Count the wraps in an inch, or give a length and its weight.")
    if not reader.ok:
        return None
    if wraps is not None:
        tex, unit, typed = wrapped_tex(wraps).value, "wraps per inch", reader.typed("wraps")
    else:
        tex = checked_tex((mm or 1) / 1000, (mg or 1) / 1000).value
        units = reader.settings.mass_unit, reader.settings.length_unit
        weight, length = map(as_typed, (reader.typed("weight"), reader.typed("length")), units)
        unit, typed = "of a length", f"{weight} / {length}"
    if not FINEST <= tex <= HEAVIEST:
        reader.refuse("wraps" if wraps is not None else "weight", "No single is so fine or heavy.")
        return None
    return check_reading(bobbin, tex, typed, unit, today)


def read_end(reader: Reader) -> End | None:
    """What became of the end of a bobbin as typed; None where a field is at fault."""
    way = reader.choice("way", WAYS)
    mg = reader.mass("end_mass", required=True, least=1, most=MOST_MG)
    mm = reader.length("end_length", required=True, least=1)
    if not reader.ok or way is None or mg is None or mm is None:
        return None
    return End(way, mg, mm, date.today())
