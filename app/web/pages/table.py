"""What a table of the trade is made of: a question, an answer, and the printed rows below.

A table is one file in `tables/` with a `TABLE`; nothing else needs to know of it.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import Literal

from app.craft.working import Standing, Step
from app.web.forms.table_fields import Asked, Field
from app.web.shown import Shown

Group = Literal["Yarn", "Fabric", "Twist", "Fleece", "Bodies", "Small sums"]
GROUPS: tuple[Group, ...] = ("Yarn", "Fabric", "Twist", "Fleece", "Bodies", "Small sums")


@dataclass(frozen=True, slots=True)
class Line:
    """One line of an answer: what it is, its value as it may be copied, and how it was found."""

    what: str
    value: str
    how: str = ""


@dataclass(frozen=True, slots=True)
class Answer:
    """A sentence with the numbers in it, then the lines, then the working; a note says what to
    mind, `swatches` are colours to be seen."""

    sentence: str
    lines: tuple[Line, ...] = ()
    note: str = ""
    steps: tuple[Step, ...] = ()
    swatches: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Row:
    """A printed row: the word it is found by, its cells, how far it is to be trusted and why."""

    word: str
    cells: tuple[str, ...]
    standing: Standing
    source: str


@dataclass(frozen=True, slots=True)
class Sheet:
    """Printed rows under one heading; `columns` are the words over the cells, without the first.

    `first` is the word over the words. Cells are numbers and stand to the right, unless `prose`.
    """

    caption: str
    first: str
    columns: tuple[str, ...]
    rows: tuple[Row, ...]
    prose: bool = False


@dataclass(frozen=True, slots=True)
class Example:
    """A question typed into the blanks, said in words, and the sentence that answers it."""

    values: Mapping[str, str]
    given: str
    gives: str


@dataclass(frozen=True, slots=True, eq=False)
class Table:
    """`word` is its address; `title` its name; `answers` the question it is for, in a line.

    `ask` answers what was asked and raises `Fault` where there is no answer; `sheets` are the
    printed rows. `place` orders the tables of a group; `more` are words it is also looked for by.
    """

    word: str
    title: str
    group: Group
    place: int
    answers: str
    fields: tuple[Field, ...]
    ask: Callable[[Asked, Shown], Answer]
    example: Example
    sheets: Callable[[Shown], tuple[Sheet, ...]]
    notes: tuple[str, ...] = ()
    caution: str = ""
    more: str = ""
    press: str = field(default="Work it out")
