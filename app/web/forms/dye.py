"""The form on which a skein is dyed: its new colour, and its weight where that was taken."""

from datetime import date

from app.book.holding import Holding
from app.web.forms.reader import Reader
from app.work.batch_dye import Dyeing
from app.work.skein_readings import Weight


def dye_values(skein: Holding, today: date) -> dict[str, str]:
    """The form as it is opened."""
    return {"day": today.isoformat(), "colour": skein.colour, "dye_lot": skein.dye_lot}


def read_dyeing(reader: Reader, today: date) -> Dyeing:
    """The dyeing as typed; good where the reader is ok. Its colour is said one way or the other."""
    mg = reader.mass("mass", least=1)
    unit = reader.settings.mass_unit
    colour, named = reader.colour("colour"), reader.text("colour_name", longest=60)
    if not (colour or named):
        reader.refuse("colour_name", "Say what colour it is now, in words or as it looks.")
    return Dyeing(
        colour=colour,
        colour_name=named,
        day=reader.day("day", required=True, until=today) or today,
        weight=Weight(mg, reader.typed("mass"), unit) if mg is not None else None,
        dye_lot=reader.text("dye_lot", longest=60),
    )
