"""The end of a bobbin: plied on itself, chain-plied or kept, it becomes a left-over."""

from dataclasses import dataclass
from datetime import date

from sqlmodel import Session

from app.book import woolbook
from app.book.event import Event
from app.book.holding import Holding
from app.book.ids import new_id
from app.book.woolbook import Portion
from app.book.words import Step
from app.book.yarn import Yarn
from app.planning.bobbins import WAYS
from app.store.records import get, post, put
from app.store.skein_find import balance_of
from app.work.fleece_name import next_code
from app.work.refusal import Refusal


@dataclass(frozen=True, slots=True)
class End:
    """What was done with the end of a bobbin, one of WAYS, and what came of it in mg and mm."""

    way: str
    mg: int
    mm: int
    day: date


def use_end(session: Session, bobbin: Holding, end: End) -> tuple[Holding, Event]:
    """All that is left on a bobbin becomes a left-over; what it weighs less goes to waste.

    It is of the bobbin's yarn where it has as many plies. Refusal for an empty bobbin.
    """
    held = balance_of(session, bobbin.id)
    if held.mg <= 0:
        raise Refusal("way", "The book has nothing on this bobbin. Weigh it first.")
    yarn = get(session, Yarn, bobbin.yarn_id or "")
    alike = yarn is not None and yarn.plies == WAYS[end.way]
    rest = Holding(
        id=new_id(),
        kind="left-over",
        code=next_code(session, f"{bobbin.code}, {end.way}"),
        fleece_id=bobbin.fleece_id,
        yarn_id=bobbin.yarn_id if alike else None,
        day=end.day,
        colour=yarn.colour if yarn else "",
        colour_name=yarn.colour_name if yarn else "",
        notes=f"The end of {bobbin.code}, {end.way}.",
    )
    put(session, rest)
    taken, made = Portion(bobbin, held.mg), Portion(rest, end.mg, end.mm)
    entry = woolbook.spin({bobbin.id: held}, [taken], [made])
    step: Step = "wind" if end.way == "kept" else "ply"
    return rest, post(session, entry.kind, end.day, entry.lines, step=step)
