"""One table: what was asked and its answer, the worked example, then the printed rows."""

from collections.abc import Mapping
from dataclasses import dataclass
from urllib.parse import urlencode

from app.web.forms.filled import Filled
from app.web.forms.reader import Reader
from app.web.forms.table_fields import Fault, Field, filled_first, read_asked
from app.web.pages.table import Answer, Table
from app.web.pages.table_rows import Printed, printed
from app.web.shown import Shown


@dataclass(frozen=True, slots=True)
class TablePage:
    """`answer` is None where a blank is at fault; `is_example` while nothing was asked.

    `units` are those a bare number takes, by the name of its blank.
    """

    table: Table
    form: Filled
    units: Mapping[str, str]
    answer: Answer | None
    is_example: bool
    example_url: str
    printed: Printed


def table_page(table: Table, reader: Reader, shown: Shown) -> TablePage:
    """The page for what the reader holds; with nothing asked, the worked example."""
    values, settings = table.example.values, shown.settings
    asked = any(one.name in reader.values for one in table.fields)
    if not asked:
        reader = Reader(values, settings)
    answer = answer_to(table, reader, shown)
    return TablePage(
        table,
        reader.filled() if asked else filled_first(table.fields, values, settings),
        _units(table.fields, shown),
        answer,
        not asked,
        f"/tables/{table.word}?{urlencode(values)}",
        printed(table, settings),
    )


def answer_to(table: Table, reader: Reader, shown: Shown) -> Answer | None:
    """The answer; None where a blank is at fault, with the reader knowing why."""
    asked = read_asked(reader, table.fields)
    if asked is None:
        return None
    try:
        return table.ask(asked, shown)
    except Fault as fault:
        reader.refuse(fault.field, str(fault))
        return None


def _units(fields: tuple[Field, ...], shown: Shown) -> dict[str, str]:
    return {one.name: one.unit_in(shown.settings) for one in fields}
