"""What the choices of a form offer: names by id, in the order of the alphabet."""

from collections.abc import Iterable, Mapping
from typing import Protocol


class Named(Protocol):
    """A record with an id and a name."""

    @property
    def id(self) -> str: ...

    @property
    def name(self) -> str: ...


def names_by_id(records: Iterable[Named]) -> dict[str, str]:
    """The names of records by their ids, sorted by name."""
    return {one.id: one.name for one in sorted(records, key=lambda one: one.name.casefold())}


def with_none(words: str, options: Mapping[str, str]) -> dict[str, str]:
    """The options after a first one that means none of them, in `words`."""
    return {"": words, **options}
