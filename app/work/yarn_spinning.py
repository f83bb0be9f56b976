"""How a yarn is to be spun: its targets, and a new yarn that takes all of them from another."""

from dataclasses import replace
from itertools import chain, count

from sqlmodel import Session

from app.book.book import Book
from app.book.ids import new_id
from app.book.spinning import Spinning
from app.book.yarn import Yarn
from app.planning.yarns import Lots
from app.store.records import put
from app.store.skein_find import yarn_called


def save_targets(session: Session, yarn: Yarn) -> None:
    """Keep the targets of a yarn."""
    put(session, yarn)


def more_like(session: Session, book: Book, yarn: Yarn, wanted_mm: int) -> Yarn:
    """A new yarn that is meant to be like an existing one: its grist and wraps as they were
    measured, its plies, twist, use and wheel as they were meant."""
    said, tex = yarn.spinning or Spinning(), Lots(book).tex(yarn.id)
    made = replace(
        yarn,
        id=new_id(),
        name=_free_name(session, f"More like {yarn.name}"),
        target_tex=tex.value if tex else None,
        bought=False,
        ball_mg=None,
        ball_mm=None,
        spinning=replace(
            said,
            wraps=_wraps(book, yarn) or said.wraps,
            like_yarn_id=yarn.id,
            wanted_mm=wanted_mm,
        ),
    )
    put(session, made)
    return made


def _wraps(book: Book, yarn: Yarn) -> float | None:
    """Wraps per inch as measured, the mean over its skeins."""
    skeins = [one.id for one in book.holdings if one.yarn_id == yarn.id and one.kind != "bobbin"]
    wraps = [
        one.value / 1000
        for skein in skeins
        for one in book.readings_of.get(skein, [])
        if one.kind == "wraps"
    ]
    return sum(wraps) / len(wraps) if wraps else None


def _free_name(session: Session, stem: str) -> str:
    stem = stem[:76]
    names = chain([stem], (f"{stem} {number}" for number in count(2)))
    return next(one for one in names if yarn_called(session, one) is None)
