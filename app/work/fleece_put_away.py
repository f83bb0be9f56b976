"""Take a fleece off the shelf for good: given to somebody, or lost."""

from dataclasses import replace
from datetime import date
from typing import Literal

from sqlmodel import Session

from app.book import woolbook
from app.book.event import Event
from app.book.holding import Holding
from app.book.woolbook import Portion
from app.store.records import post, put
from app.store.skein_find import balance_of

Going = Literal["given away", "lost or thrown out", "used up"]


def put_away_fleece(session: Session, holding: Holding, going: Going, day: date) -> Event:
    """Empty a fleece's holding and note the day it left."""
    held = balance_of(session, holding.id)
    if going == "given away":
        entry = woolbook.give_away({holding.id: held}, Portion(holding, held.mg))
    else:
        entry = woolbook.put_away({holding.id: held}, holding)
    put(session, replace(holding, put_away=day))
    return post(session, entry.kind, day, entry.lines)
