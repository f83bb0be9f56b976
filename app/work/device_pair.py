"""Pair a device that knows the code of the day, tell it again later, and shut it out.

A device proves itself by a token of 256 random bits in a cookie. The book keeps the token's digest
only, so that neither a backup nor somebody who reads the database can come in as the device.
"""

from datetime import date
from hashlib import sha256
from hmac import compare_digest
from secrets import token_urlsafe

from sqlmodel import Session

from app.book.ids import new_id
from app.store.devices import Device, add_device, devices, note_seen, revoke, token_of

__all__ = ["Device", "devices", "known_device", "note_seen", "pair_device", "revoke"]

BETWEEN = "."


def pair_device(session: Session, name: str, day: date) -> str:
    """Keep a device under a name; answers what its cookie is to hold."""
    id, token = new_id(), token_urlsafe(32)
    add_device(session, id, name, _digest(token), day)
    return f"{id}{BETWEEN}{token}"


def known_device(session: Session, cookie: str) -> str | None:
    """The id of the device a cookie belongs to; None where it was never paired or is shut out."""
    id, _, token = cookie.partition(BETWEEN)
    kept = token_of(session, id)
    return id if kept and compare_digest(kept, _digest(token)) else None


def _digest(token: str) -> str:
    return sha256(token.encode()).hexdigest()
