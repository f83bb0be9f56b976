"""Records to plain values (what JSON can carry) and back: strict, and naming the place of a fault.

The shape is read from the dataclasses, so a new field is carried without a change here. Nothing is
guessed: every field must be there, no other may be, `true` is no number and 1.0 no whole one.
"""

from collections.abc import Callable
from dataclasses import fields, is_dataclass
from datetime import date
from functools import cache
from math import isfinite
from types import NoneType, UnionType
from typing import Any, Literal, TypeVar, Union, get_args, get_origin, get_type_hints

from app.book.errors import Malformed

T = TypeVar("T")
Read = Callable[[object, str, list[str]], Any]
"""Turns a plain value at a place into a value, or notes a problem and gives None."""

LARGEST = 2**63 - 1
"""The largest whole number a database column keeps."""


def to_plain(record: Any) -> dict[str, Any]:
    """The fields of a dataclass as dict, list, str, int, float, bool and None, in their order."""
    hints = _hints(record.__class__)
    return {name: _plain(hint, getattr(record, name)) for name, hint in hints.items()}


def from_plain(cls: type[T], value: object, place: str = "") -> T:
    """The record that `value` describes; Malformed names every place that does not fit."""
    problems: list[str] = []
    kind: Any = cls
    record: T = _reader(kind)(value, place, problems)
    if problems:
        raise Malformed(problems)
    return record


@cache
def _hints(cls: Any) -> dict[str, Any]:
    hints = get_type_hints(cls)
    return {one.name: hints[one.name] for one in fields(cls)}


def _plain(hint: Any, value: Any) -> Any:
    if is_dataclass(value):
        return to_plain(value)
    if isinstance(value, tuple):
        return [_plain(get_args(hint)[0], one) for one in value]
    if isinstance(value, date):
        return value.isoformat()
    if type(value) is int and float in (hint, *get_args(hint)):
        return float(value)
    return value


@cache
def _reader(hint: Any) -> Read:
    if is_dataclass(hint):
        return _record_reader(hint)
    if get_origin(hint) is Literal:
        return _word_reader(get_args(hint))
    if get_origin(hint) is tuple:
        return _list_reader(_reader(get_args(hint)[0]))
    if get_origin(hint) in (Union, UnionType):
        return _union_reader(get_args(hint))
    return _SIMPLE[hint]


def _record_reader(cls: Any) -> Read:
    readers = {name: _reader(hint) for name, hint in _hints(cls).items()}

    def read(value: object, place: str, problems: list[str]) -> Any:
        if not isinstance(value, dict):
            return _wrong(place, "expected an object with named fields", problems)
        before = len(problems)
        for name in value:
            if name not in readers:
                _wrong(_inside(place, name), "no such field", problems)
        found = {}
        for name, reader in readers.items():
            if name in value:
                found[name] = reader(value[name], _inside(place, name), problems)
            else:
                _wrong(_inside(place, name), "missing", problems)
        return cls(**found) if len(problems) == before else None

    return read


def _union_reader(kinds: tuple[Any, ...]) -> Read:
    optional = NoneType in kinds
    kinds = tuple(kind for kind in kinds if kind is not NoneType)
    inner = _reader(kinds[0]) if len(kinds) == 1 else _ways_reader(kinds)

    def read(value: object, place: str, problems: list[str]) -> Any:
        return None if optional and value is None else inner(value, place, problems)

    return read


def _ways_reader(kinds: tuple[Any, ...]) -> Read:
    """Dataclasses told apart by the word in their field `way`."""
    readers = {get_args(_hints(kind)["way"])[0]: _reader(kind) for kind in kinds}
    read_way = _word_reader(tuple(readers))

    def read(value: object, place: str, problems: list[str]) -> Any:
        if not isinstance(value, dict):
            return _wrong(place, "expected an object with named fields", problems)
        way = read_way(value.get("way"), _inside(place, "way"), problems)
        return readers[way](value, place, problems) if way else None

    return read


def _list_reader(inner: Read) -> Read:
    def read(value: object, place: str, problems: list[str]) -> Any:
        if not isinstance(value, list):
            return _wrong(place, "expected a list", problems)
        return tuple(inner(one, f"{place}[{n}]", problems) for n, one in enumerate(value))

    return read


def _word_reader(words: tuple[str, ...]) -> Read:
    expected = ", ".join(f'"{word}"' for word in words)

    def read(value: object, place: str, problems: list[str]) -> Any:
        if isinstance(value, str) and value in words:
            return value
        return _wrong(place, f"expected one of {expected}", problems)

    return read


def _read_text(value: object, place: str, problems: list[str]) -> Any:
    if not isinstance(value, str):
        return _wrong(place, "expected text", problems)
    try:
        value.encode()
    except UnicodeEncodeError:
        return _wrong(place, "expected text without broken characters", problems)
    return value


def _read_flag(value: object, place: str, problems: list[str]) -> Any:
    return value if isinstance(value, bool) else _wrong(place, "expected true or false", problems)


def _read_whole(value: object, place: str, problems: list[str]) -> Any:
    if type(value) is not int:
        return _wrong(place, "expected a whole number", problems)
    if abs(value) > LARGEST:
        return _wrong(place, "the number is too large", problems)
    return value


def _read_number(value: object, place: str, problems: list[str]) -> Any:
    if type(value) is int and abs(value) <= LARGEST:
        return float(value)
    if isinstance(value, float) and isfinite(value):
        return value
    return _wrong(place, "expected a finite number", problems)


def _read_day(value: object, place: str, problems: list[str]) -> Any:
    try:
        day = date.fromisoformat(value)  # type: ignore[arg-type]
    except (TypeError, ValueError):
        day = None
    # fromisoformat also takes 20260102 and 2026-W01-5, which would not come out as they went in.
    if day is None or day.isoformat() != value:
        return _wrong(place, "expected a day like 2026-04-30", problems)
    return day


def _wrong(place: str, what: str, problems: list[str]) -> Any:
    problems.append(f"{place}: {what}" if place else what)
    return None


def _inside(place: str, name: str) -> str:
    return f"{place}.{name}" if place else name


_SIMPLE: dict[Any, Read] = {
    str: _read_text,
    bool: _read_flag,
    int: _read_whole,
    float: _read_number,
    date: _read_day,
}
