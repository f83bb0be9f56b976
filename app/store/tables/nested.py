"""A column that carries a value of its own inside a record, as JSON text."""

import json
from typing import Any

from sqlalchemy import Text
from sqlalchemy.engine import Dialect
from sqlalchemy.types import TypeDecorator

from app.book.codec import from_plain, to_plain


class Nested(TypeDecorator[Any]):
    """Holds a dataclass, or a tuple of one dataclass, of the given kind."""

    impl = Text
    cache_ok = True

    def __init__(self, kind: Any) -> None:
        super().__init__()
        self.kind = kind

    def process_bind_param(self, value: Any, dialect: Dialect) -> str | None:  # noqa: ARG002
        if value is None:
            return None
        plain = [to_plain(one) for one in value] if isinstance(value, tuple) else to_plain(value)
        return json.dumps(plain, ensure_ascii=False, separators=(",", ":"))

    def process_result_value(self, value: str | None, dialect: Dialect) -> Any:  # noqa: ARG002
        if value is None or value == "[]":  # most lists are empty, and there are many
            return None if value is None else ()
        return from_plain(self.kind, json.loads(value))
