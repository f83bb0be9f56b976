"""Find skeins and yarns by what is written on their tags, and what one skein holds."""

from collections.abc import Sequence
from typing import NamedTuple

from sqlalchemy import select
from sqlmodel import Session, col

from app.book.event import Balance
from app.book.holding import Holding
from app.book.reading import Reading
from app.book.words import FIBRE_KINDS
from app.store.kept import columns_of
from app.store.tables.holding import BalanceRow, HoldingRow
from app.store.tables.reading import ReadingRow
from app.store.tables.yarn import YarnRow


class Tag(NamedTuple):
    """A code and the yarn it is on, if any."""

    code: str
    yarn_id: str | None


def codes_near(session: Session, yarn_id: str, beginning: str) -> list[Tag]:
    """The codes a new code of a yarn must keep clear of: its own, and all that begin alike."""
    code = col(HoldingRow.code)
    alike = code.between(beginning, beginning + "\U0010ffff") | (col(HoldingRow.yarn_id) == yarn_id)
    rows = session.execute(select(code, col(HoldingRow.yarn_id)).where(alike).order_by(code))
    return [Tag._make(row) for row in rows]


def codes_in_use(session: Session, codes: Sequence[str]) -> list[str]:
    """Those of `codes` that some holding has."""
    code = col(HoldingRow.code)
    return list(session.execute(select(code).where(code.in_(codes)).order_by(code)).scalars())


def holder_of(session: Session, code: str) -> str | None:
    """The id of the holding with that code."""
    return session.execute(
        select(col(HoldingRow.id)).where(col(HoldingRow.code) == code)
    ).scalar_one_or_none()


def yarn_called(session: Session, name: str) -> str | None:
    """The id of a yarn of that name, whatever its capitals."""
    wanted = name.casefold()
    names = session.execute(select(col(YarnRow.id), col(YarnRow.name)).order_by(col(YarnRow.id)))
    return next((id for id, known in names if known.casefold() == wanted), None)


def balance_of(session: Session, holding_id: str) -> Balance:
    """What a holding holds now; nothing for one that is not in the book."""
    columns = (col(BalanceRow.mg), col(BalanceRow.mm))
    row = session.execute(select(*columns).where(col(BalanceRow.holding_id) == holding_id)).first()
    return Balance(*row) if row else Balance()


def readings_of(session: Session, holding_id: str) -> list[Reading]:
    """The readings of a holding, oldest first."""
    statement = (
        select(*columns_of(Reading))
        .where(col(ReadingRow.holding_id) == holding_id)
        .order_by(col(ReadingRow.day), col(ReadingRow.id))
    )
    return [Reading(*row) for row in session.execute(statement)]


def wool_of_fleece(session: Session, fleece_id: str) -> list[Holding]:
    """The holdings that a fleece's wool lies in, unless they were put away, by code."""
    statement = (
        select(*columns_of(Holding))
        .where(
            col(HoldingRow.fleece_id) == fleece_id,
            col(HoldingRow.kind).in_(sorted(FIBRE_KINDS)),
            col(HoldingRow.put_away).is_(None),
        )
        .order_by(col(HoldingRow.code))
    )
    return [Holding(*row) for row in session.execute(statement)]
