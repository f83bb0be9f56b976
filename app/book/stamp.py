"""A stamp tells whether a record is still as it was when a form was opened."""

import json
from hashlib import sha256

from app.book.codec import to_plain


def stamp(record: object) -> str:
    """Twelve hexadecimal digits that change whenever any field of the record changes."""
    text = json.dumps(to_plain(record), ensure_ascii=False, separators=(",", ":"))
    return sha256(text.encode()).hexdigest()[:12]
