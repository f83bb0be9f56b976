"""A photo of a fleece, a holding or a garment; the picture itself is a file beside the database."""

from dataclasses import dataclass
from datetime import date


@dataclass(frozen=True, slots=True)
class Photo:
    """`sha256` is the digest of the file's `bytes`, and its name; it is never changed."""

    id: str
    sha256: str
    media: str
    bytes: int
    width: int
    height: int
    fleece_id: str | None = None
    holding_id: str | None = None
    plan_id: str | None = None
    day: date | None = None
    caption: str = ""
