"""The forms of a fleece: what it is, and how much it weighs in which state."""

from dataclasses import dataclass, replace
from datetime import date, timedelta

from app.book.fleece import Fleece
from app.book.holding import Holding
from app.book.ids import new_id
from app.book.settings import Settings
from app.book.stamp import stamp
from app.book.words import WoolState
from app.planning.look_again import LOOK_AFTER_DAYS
from app.web.forms.blend import blend_values, read_blend
from app.web.forms.filled import Filled
from app.web.forms.reader import Reader
from app.web.shown import Shown
from app.work.fleece_add import NewFleece
from app.work.fleece_put_away import Going
from app.work.fleece_step import reading_state
from app.work.skein_readings import Weight

STATES: dict[WoolState, str] = {
    "raw": "raw, as shorn",
    "skirted": "skirted",
    "drying": "drying after the wash",
    "scoured": "scoured and dry",
    "carded": "carded: rolags, batts or roving",
    "combed": "combed top",
    "part spun": "part spun",
}
GOING: dict[Going, str] = {
    "used up": "used up",
    "given away": "given away or sold",
    "lost or thrown out": "lost, moth-eaten or thrown out",
}
FIBRES = ("wool", "alpaca", "mohair", "cashmere", "angora", "silk", "flax", "cotton")

LEAST_YIELD, MOST_YIELD = 5.0, 100.0
LEAST_MICRON, MOST_MICRON = 8.0, 60.0
LEAST_STAPLE, MOST_STAPLE = 10, 600
DAMP = "Wool that is damp does not move the book: choose “drying”, or weigh it when it is dry."


@dataclass(frozen=True, slots=True)
class WeighForm:
    """A weighing as typed: the amount, the state of the wool, the day."""

    weight: Weight
    state: WoolState
    day: date


def empty_fleece(today: date) -> Filled:
    """The form before anything is known."""
    look = today + timedelta(days=LOOK_AFTER_DAYS)
    return Filled(
        {
            "fibre": "wool",
            "state": "raw",
            "day": today.isoformat(),
            "apart": "1",
            "look_again": look.isoformat(),
        }
    )


def filled_fleece(fleece: Fleece, holding: Holding, settings: Settings) -> Filled:
    """The form as it shows a fleece; weight and state have a form of their own."""
    shown = Shown(settings)
    values = {
        "name": fleece.name,
        "breed": fleece.breed,
        "fibre": fleece.fibre,
        "yield_pct": shown.field_number(fleece.yield_pct),
        "micron": shown.field_number(fleece.micron),
        "staple_mm": shown.field_size(fleece.staple_mm),
        "colour": fleece.colour,
        "colour_known": "1" if fleece.colour else "",
        "colour_name": fleece.colour_name,
        "source": fleece.source,
        "place": holding.place,
        "apart": "1" if holding.apart else "",
        "look_again": holding.look_again.isoformat() if holding.look_again else "",
        **blend_values(fleece.blend, shown),
        "notes": fleece.notes,
    }
    return Filled(values, {}, fleece_stamp(fleece, holding))


def fleece_stamp(fleece: Fleece, holding: Holding) -> str:
    """Changes when anything of the fleece or its holding changes."""
    return stamp(fleece) + stamp(holding)


def read_fleece(reader: Reader, old: Fleece | None = None) -> Fleece:
    """The fleece as typed; good where the reader is ok."""
    return replace(
        old or Fleece(id=new_id(), name=""),
        name=reader.text("name", required=True, longest=80),
        breed=reader.text("breed", longest=80),
        fibre=reader.text("fibre", longest=60) or "wool",
        yield_pct=reader.number("yield_pct", unit="%", least=LEAST_YIELD, most=MOST_YIELD),
        micron=reader.number("micron", unit="µm", least=LEAST_MICRON, most=MOST_MICRON),
        staple_mm=reader.size("staple_mm", least=LEAST_STAPLE, most=MOST_STAPLE),
        colour=reader.colour("colour"),
        colour_name=reader.text("colour_name", longest=60),
        source=reader.text("source", longest=200),
        notes=reader.text("notes", longest=4000),
        blend=read_blend(reader),
    )


def read_keeping(reader: Reader, holding: Holding) -> Holding:
    """The holding with where it lies, whether apart, and when it is looked at again."""
    return replace(
        holding,
        place=reader.text("place", longest=80),
        apart=reader.flag("apart"),
        look_again=reader.day("look_again"),
    )


def read_new_fleece(reader: Reader, today: date) -> NewFleece:
    """A fleece that comes in, as typed; good where the reader is ok."""
    fleece, weighed = read_fleece(reader), read_weighing(reader, today)
    kept = read_keeping(reader, Holding("", "fleece", ""))
    return NewFleece(
        fleece=fleece,
        weight=weighed.weight,
        state=weighed.state,
        day=weighed.day,
        place=kept.place,
        apart=kept.apart,
        look_again=kept.look_again,
    )


def read_weighing(reader: Reader, today: date) -> WeighForm:
    """A weighing as typed; good where the reader is ok."""
    mg = reader.mass("weight", required=True)
    state = reader.choice("state", STATES) or "raw"
    if reader.flag("damp") and state != "drying":
        reader.refuse("damp", DAMP)
    weight = Weight(
        mg or 0, reader.typed("weight"), reader.settings.mass_unit, reading_state(state)
    )
    return WeighForm(weight, state, reader.day("day", required=True, until=today) or today)
