"""A column that points to another record, which cannot go while it is pointed to."""

from typing import Any

from sqlmodel import Field


def link(target: str, **more: Any) -> Any:
    """A field that holds the key of a row of `target` ("fleece.id")."""
    return Field(foreign_key=target, ondelete="RESTRICT", **more)
