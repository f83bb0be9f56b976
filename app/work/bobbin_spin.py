"""Write down a bobbin of a yarn, and weigh what was spun on it."""

from dataclasses import dataclass
from datetime import date

from sqlmodel import Session

from app.book import woolbook
from app.book.event import Event
from app.book.event_note import noted
from app.book.holding import Holding
from app.book.ids import new_id
from app.book.reading import Reading
from app.book.woolbook import Portion
from app.book.words import Step
from app.book.yarn import Yarn
from app.store.records import post, put
from app.store.skein_find import balance_of, holder_of, wool_of_fleece
from app.work.fleece_doubt import MOST_FROM_AIR
from app.work.fleece_name import next_code
from app.work.fleece_step import STAGE
from app.work.refusal import Refusal
from app.work.skein_readings import Weight, mass_reading


@dataclass(frozen=True, slots=True)
class Spun:
    """What is on a bobbin now, all of it and without the bobbin; the wool it came from, and the
    `fibre_mg` that went into what was added, None where it was not weighed."""

    weight: Weight
    wool: Holding
    day: date
    fibre_mg: int | None = None


def start_bobbin(session: Session, yarn: Yarn, code: str, day: date) -> Holding:
    """A new bobbin of a yarn, with nothing on it yet; Refusal for a name in use."""
    if code and holder_of(session, code):
        raise Refusal("code", f"Something else is called {code} already. Add to the name.")
    bobbin = Holding(
        id=new_id(),
        kind="bobbin",
        code=code or next_code(session, f"{yarn.name}, bobbin"),
        fleece_id=yarn.fleece_id,
        yarn_id=yarn.id,
        state="part spun",
        day=day,
    )
    put(session, bobbin)
    return bobbin


def wool_for_bobbins(session: Session, yarn: Yarn) -> list[Holding]:
    """The wool a bobbin of a yarn can be spun from, what is furthest on its way first; none that
    lies wet."""
    found = wool_of_fleece(session, yarn.fleece_id) if yarn.fleece_id else []
    dry = [one for one in found if one.kind != "bobbin" and one.state != "drying"]
    held = [one for one in dry if balance_of(session, one.id).mg > 0]
    return sorted(held, key=lambda one: -STAGE[one.state or "raw"])


def weigh_bobbin(session: Session, bobbin: Holding, spun: Spun) -> Event:
    """Enter what was spun on a bobbin since it was weighed last.

    Where the fibre was weighed too, the step tells of the loss in spinning; else as much fibre is
    taken as was spun. Refusal where less is on it than before, or more than was taken, or where
    more is taken than there is.
    """
    held = {one.id: balance_of(session, one.id) for one in (bobbin, spun.wool)}
    added = spun.weight.mg - held[bobbin.id].mg
    taken = added if spun.fibre_mg is None else spun.fibre_mg
    if added <= 0:
        raise Refusal("mass", "That is no more than the book has on it already.")
    if added > taken * (1 + MOST_FROM_AIR):
        raise Refusal("fibre", "More came on the bobbin than that. Weigh both again.")
    if taken > held[spun.wool.id].mg:
        raise Refusal("fibre", f"{spun.wool.code} holds less than that. Weigh it again first.")
    entry = woolbook.spin(held, [Portion(spun.wool, taken)], [Portion(bobbin, added)])
    reading = mass_reading(bobbin.id, spun.weight, spun.day)
    put(session, reading)
    step: Step = "spin" if spun.fibre_mg is not None else ""
    return post(session, entry.kind, spun.day, entry.lines, noted("", [reading]), step=step)


def note_check(session: Session, check: Reading) -> None:
    """Keep a check of a bobbin's grist; it moves nothing."""
    put(session, check)


def check_reading(bobbin: Holding, tex: float, typed: str, unit: str, day: date) -> Reading:
    """The reading of a check, by wraps (unit "wraps per inch") or by a length that was weighed."""
    return Reading(
        id=new_id(),
        holding_id=bobbin.id,
        kind="grist",
        value=round(1000 * tex),
        typed=typed,
        unit=unit,
        instrument="gauge" if unit == "wraps per inch" else "scale",
        day=day,
        finished=False,
    )
