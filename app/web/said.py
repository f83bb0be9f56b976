"""What was just saved, carried over the redirect to the next page in a cookie of one use."""

import json
from base64 import urlsafe_b64decode, urlsafe_b64encode
from dataclasses import asdict, dataclass

from fastapi import Request, Response

COOKIE = "said"
SECONDS = 60


@dataclass(frozen=True, slots=True)
class Said:
    """`message` is a sentence; `undo` is what a button takes back, if there is something: the
    number of an event, or the key of a change of records."""

    message: str
    undo: int | str | None = None


def say(response: Response, said: Said) -> None:
    """Let the next page say it."""
    packed = urlsafe_b64encode(json.dumps(asdict(said)).encode()).decode()
    response.set_cookie(COOKIE, packed, max_age=SECONDS, httponly=True, samesite="strict")


def heard(request: Request) -> Said | None:
    """What the last answer asked to be said, or None; anything malformed counts as nothing."""
    packed = request.cookies.get(COOKIE)
    if packed is None:
        return None
    try:
        plain = json.loads(urlsafe_b64decode(packed.encode()))
        said = Said(**plain)
    except (ValueError, TypeError):
        return None
    return (
        said if isinstance(said.message, str) and isinstance(said.undo, int | str | None) else None
    )


def forget(response: Response) -> None:
    """Say it once only."""
    response.delete_cookie(COOKIE, httponly=True, samesite="strict")
