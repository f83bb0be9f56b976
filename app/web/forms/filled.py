"""What the fields of a form show; apart from their reading, which the first page can do without."""

from collections.abc import Mapping
from dataclasses import dataclass, field


@dataclass(frozen=True, slots=True)
class Filled:
    """What the fields of a form show: values as typed, faults by field, the stamp of the record.
    `notice` is said of all of it."""

    values: Mapping[str, str] = field(default_factory=dict)
    errors: Mapping[str, str] = field(default_factory=dict)
    stamp: str = ""
    notice: str = ""
