"""Add bought balls, several alike at once."""

from dataclasses import dataclass
from datetime import date

from sqlmodel import Session

from app.book import woolbook
from app.book.holding import Holding
from app.book.ids import new_id
from app.book.woolbook import Portion
from app.book.yarn import Yarn
from app.store.records import post, put
from app.work.skein_add import Saved, free_codes, yarn_kept
from app.work.skein_code import following
from app.work.skein_readings import Length, Weight, length_reading, mass_reading


@dataclass(frozen=True, slots=True)
class Purchase:
    """`count` balls alike; `weight` and `length` are of one ball, as its label states them."""

    yarn: Yarn
    count: int
    weight: Weight
    length: Length
    day: date
    code: str = ""
    dye_lot: str = ""
    price: str = ""
    colour: str = ""
    colour_name: str = ""
    place: str = ""
    notes: str = ""


def buy_balls(session: Session, bought: Purchase) -> Saved:
    """Put the balls on the shelf in one event; Refusal for a code in use."""
    yarn = yarn_kept(session, bought.yarn)
    typed = following(bought.code, bought.count) if bought.code else ()
    codes = free_codes(session, yarn, typed, bought.count)
    balls = tuple(_ball(bought, yarn, code) for code in codes)
    for ball in balls:
        put(session, ball)
        put(session, mass_reading(ball.id, bought.weight, bought.day))
        put(session, length_reading(ball.id, bought.length, bought.day))
    made = [Portion(ball, bought.weight.mg, bought.length.mm) for ball in balls]
    entry = woolbook.arrive(made)
    return Saved(balls, post(session, entry.kind, bought.day, entry.lines))


def _ball(bought: Purchase, yarn: Yarn, code: str) -> Holding:
    return Holding(
        id=new_id(),
        kind="ball",
        code=code,
        yarn_id=yarn.id,
        day=bought.day,
        colour=bought.colour,
        colour_name=bought.colour_name,
        dye_lot=bought.dye_lot,
        price=bought.price,
        place=bought.place,
        notes=bought.notes,
    )
