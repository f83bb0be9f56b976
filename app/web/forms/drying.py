"""The short form on which drying wool is weighed: the number, and when."""

import re
from datetime import datetime

from app.book.fleece import Fleece
from app.book.holding import Holding
from app.web.forms.filled import Filled
from app.web.forms.fleece import fleece_stamp
from app.web.forms.reader import Reader
from app.work.fleece_weigh import Weighing
from app.work.skein_readings import Weight

CLOCK = re.compile(r"([01]?\d|2[0-3])[:.]([0-5]\d)")


def drying_values(fleece: Fleece, wool: Holding, now: datetime) -> Filled:
    """The form as it is opened: now, and no number yet."""
    values = {
        "wool": wool.id,
        "weight": "",
        "day": now.date().isoformat(),
        "time": now.strftime("%H:%M"),
    }
    return Filled(values, {}, fleece_stamp(fleece, wool))


def read_drying(reader: Reader, now: datetime) -> Weighing:
    """The weighing as typed; good where the reader is ok."""
    mg = reader.mass("weight", required=True, least=1)
    today = now.date()
    day = reader.day("day", required=True, until=today) or today
    weight = Weight(
        mg or 0,
        reader.typed("weight"),
        reader.settings.mass_unit,
        wool="damp",
        minute=read_minute(reader, "time"),
    )
    return Weighing(weight, "drying", day)


def read_minute(reader: Reader, name: str) -> int | None:
    """A time of the day, in minutes; None where none was given."""
    typed = reader.typed(name)
    if not typed:
        return None
    found = CLOCK.fullmatch(typed)
    if found is None:
        reader.refuse(name, "Give the time as hours and minutes, as in 14:30.")
        return None
    return 60 * int(found[1]) + int(found[2])
