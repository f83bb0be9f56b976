"""Take a fleece off the shelf for good: given to somebody, or lost."""

from collections.abc import Sequence
from dataclasses import replace
from datetime import date
from typing import Literal

from sqlmodel import Session

from app.book import woolbook
from app.book.event import Event
from app.book.holding import Holding
from app.book.woolbook import Entry, Portion
from app.store.records import post, put
from app.store.skein_find import balance_of

Going = Literal["given away", "lost or thrown out", "used up"]


def put_away_fleece(session: Session, wool: Sequence[Holding], going: Going, day: date) -> Event:
    """Empty every holding of a fleece's wool and note the day it left."""
    lines = [line for one in wool for line in _emptied(session, one, going).lines]
    for one in wool:
        put(session, replace(one, put_away=day))
    return post(session, "put away", day, lines)


def _emptied(session: Session, holding: Holding, going: Going) -> Entry:
    held = balance_of(session, holding.id)
    if going == "given away":
        return woolbook.give_away({holding.id: held}, Portion(holding, held.mg))
    return woolbook.put_away({holding.id: held}, holding)
