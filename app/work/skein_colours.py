"""Keep how the colour of a skein runs along it, and from which end each promise of it is knit."""

from collections.abc import Collection
from dataclasses import replace

from sqlmodel import Session

from app.book.holding import ColourAt, Holding
from app.store.records import load_book, put


def keep_colours(
    session: Session, skein: Holding, colours: tuple[ColourAt, ...], inside: Collection[str]
) -> None:
    """Note the colours, in their order along the yarn; `inside` are the promises of the skein that
    are knit from its inner end first."""
    put(session, replace(skein, colours=tuple(sorted(colours, key=lambda one: one.mm))))
    for promise in load_book(session).promises:
        if promise.holding_id == skein.id and promise.from_inside != (promise.id in inside):
            put(session, replace(promise, from_inside=promise.id in inside))
