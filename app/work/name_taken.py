"""A name is given once: one home for the rule, whatever has a name."""

from collections.abc import Iterable
from typing import Protocol


class Named(Protocol):
    """A record with an id and a name."""

    @property
    def id(self) -> str: ...

    @property
    def name(self) -> str: ...


def is_taken(wanted: Named, known: Iterable[Named]) -> bool:
    """Whether another record has that name, whatever its capitals."""
    name = wanted.name.casefold()
    return any(one.id != wanted.id and one.name.casefold() == name for one in known)
