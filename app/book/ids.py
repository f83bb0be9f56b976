"""Identities: made once by the program, sortable by the moment they were made."""

import secrets
import time

ALPHABET = "0123456789abcdefghjkmnpqrstvwxyz"
"""Base 32 without i, l, o and u, so that an id can be read aloud."""


def _base32(number: int, digits: int) -> str:
    return "".join(ALPHABET[(number >> 5 * place) & 31] for place in range(digits - 1, -1, -1))


def new_id() -> str:
    """A new identity: 10 characters of time (ms) and 10 of chance; later ids sort later."""
    return _base32(time.time_ns() // 1_000_000, 10) + _base32(secrets.randbits(50), 10)
