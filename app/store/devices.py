"""Devices that may use the book over the home network: who they are, and whether they still may."""

from dataclasses import dataclass
from datetime import date

from sqlalchemy import insert, select, update
from sqlmodel import Session

from app.store.errors import plain_words
from app.store.tables.device import DeviceRow
from app.store.version import mark_changed

_devices = DeviceRow.__table__  # type: ignore[attr-defined]


@dataclass(frozen=True, slots=True)
class Device:
    """A device by the name it was paired under; `revoked` is the day it was shut out."""

    id: str
    name: str
    paired: date
    seen: date
    revoked: date | None


@plain_words()
def add_device(session: Session, id: str, name: str, token_sha256: str, day: date) -> None:
    """Keep a new device; of its token only the digest."""
    values = {"id": id, "name": name, "token_sha256": token_sha256}
    new = insert(_devices).values(**values, paired=day, seen=day, revoked=None)
    session.connection().execute(new)
    mark_changed(session)


def devices(session: Session) -> tuple[Device, ...]:
    """Every device, the last paired first."""
    columns = (getattr(_devices.c, name) for name in Device.__slots__)
    order = (_devices.c.paired.desc(), _devices.c.id.desc())
    rows = session.connection().execute(select(*columns).order_by(*order))
    return tuple(Device(*row) for row in rows)


def token_of(session: Session, id: str) -> str | None:
    """The digest of the token of a device that may come in; None for any other."""
    may = select(_devices.c.token_sha256).where(_devices.c.id == id, _devices.c.revoked.is_(None))
    return session.connection().scalar(may)


@plain_words()
def note_seen(session: Session, id: str, day: date) -> None:
    """The device was here on that day."""
    session.connection().execute(update(_devices).where(_devices.c.id == id).values(seen=day))


@plain_words()
def revoke(session: Session, id: str, day: date) -> bool:
    """Shut a device out; answers whether there was one to shut out."""
    mine = update(_devices).where(_devices.c.id == id, _devices.c.revoked.is_(None))
    found = session.connection().execute(mine.values(revoked=day)).rowcount == 1
    if found:
        mark_changed(session)
    return found
