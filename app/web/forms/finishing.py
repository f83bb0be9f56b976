"""The form of a garment off the needles: what is left of each ball, the garment, hours, size."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import date

from app.book.book import Book
from app.book.holding import Holding
from app.book.person import Measure
from app.book.plan import Plan
from app.book.settings import Settings
from app.book.stamp import stamp
from app.web.forms.filled import Filled
from app.web.forms.reader import Reader
from app.web.shown import Shown
from app.work.knit_finish import Finished, Left

MEASURED = ("chest", "hips", "body length", "arm length to underarm", "upper arm", "head", "foot")
"""Sizes a garment is measured at once it is washed, by the names of body measures."""

REST = {
    "free": "is left over and goes back to the shelf",
    "used": "went into it as well",
}
MOST_HOURS = 5_000.0
MOST_MM = 5_000


@dataclass(frozen=True, slots=True)
class Ball:
    """A ball of the garment, and what the wool book has left of it, in mg."""

    holding: Holding
    mg: int

    @property
    def field(self) -> str:
        return f"left_{self.holding.id}"


def balls_of(book: Book, plan_id: str) -> tuple[Ball, ...]:
    """What is promised to a garment, or was weighed for it, by code."""
    promised = [one.holding_id for one in book.promises_of.get(plan_id, [])]
    weighed = [one.holding_id for one in book.weighings if one.plan_id == plan_id]
    holdings = [book.holding[one] for one in dict.fromkeys((*promised, *weighed))]
    held = book.balances
    balls = (Ball(one, held[one.id].mg) for one in holdings if one.id in held)
    return tuple(sorted((one for one in balls if one.mg > 0), key=lambda one: one.holding.code))


def blank_finish(plan: Plan, settings: Settings, today: date) -> Filled:
    """The form as it is opened."""
    losses = plan.losses or settings.losses
    values = {
        "day": today.isoformat(),
        "rest": "free",
        "mending": Shown(settings).field_length(losses.mending_mm),
    }
    return Filled(values, {}, stamp(plan))


def read_finish(
    values: Mapping[str, object], settings: Settings, balls: Iterable[Ball], today: date
) -> tuple[Reader, Finished]:
    """What is known of the garment; good where the reader is ok."""
    reader, balls = Reader(values, settings), tuple(balls)
    codes = {"": "", **{one.holding.id: one.holding.code for one in balls}}
    hours = reader.number("hours", unit="h", least=0.0, most=MOST_HOURS)
    told = Finished(
        day=reader.day("day", until=today) or today,
        all_used=reader.choice("rest", REST, default="free") == "used",
        left=tuple(_left(reader, balls)),
        garment_mg=reader.mass("garment", least=1),
        mending_mm=reader.length("mending") or 0,
        mending_of=reader.choice("mending_of", codes, default="") or None,
        minutes=round(60 * hours) if hours else None,
        measured=tuple(_measured(reader)),
        notes=reader.text("notes", longest=4000),
    )
    return reader, told


def measure_field(name: str) -> str:
    """The name of the field of a size."""
    return "size_" + name.replace(" ", "_")


def _left(reader: Reader, balls: tuple[Ball, ...]) -> Iterable[Left]:
    for one in balls:
        mg = reader.mass(one.field)
        if mg is not None:
            yield Left(one.holding.id, mg)


def _measured(reader: Reader) -> Iterable[Measure]:
    for name in MEASURED:
        mm = reader.size(measure_field(name), least=1, most=MOST_MM)
        if mm is not None:
            yield Measure(name, mm)
