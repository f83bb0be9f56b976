"""The form that brings in a table of skeins: a file or what was pasted, looked at, then kept."""

from collections.abc import AsyncIterator, Mapping
from hashlib import sha256
from typing import Annotated

from fastapi import Depends, Request
from starlette.datastructures import FormData

from app.book.settings import Settings
from app.book.skein_csv import NoTable, SkeinTable, read_skein_table
from app.book.table_text import NotText, TableText, plain_lines, table_text
from app.web.forms.reader import Reader

LARGEST = 8 << 20
"""Bytes of a field; what a table may hold is less and is said in words."""

NOTHING = "Choose a file, or paste a table."
NO_TEXT = (
    "This file is not a table as text. In the program it comes from, save it as CSV and choose "
    "that file."
)


async def posted_table(request: Request) -> AsyncIterator[FormData]:
    """The fields of the form, of which the table may be large."""
    async with request.form(max_part_size=LARGEST, max_files=1, max_fields=20) as form:
        yield form


PostedTable = Annotated[FormData, Depends(posted_table)]


def read_table(
    values: Mapping[str, object], settings: Settings
) -> tuple[Reader, TableText, SkeinTable | None]:
    """The form, its text as it was understood, and the table in it; None where it is at fault.

    A file is taken instead of what was pasted, and stands in the form from then on.
    """
    reader = Reader(values, settings)
    field = "file" if _has_file(reader) else "table"
    text = TableText("", "")
    try:
        text = _text(reader)
        reader.values["table"] = text.text
        if not text.text.strip():
            raise NoTable(NOTHING)
        return reader, text, read_skein_table(text.text)
    except NotText:
        reader.refuse(field, NO_TEXT)
    except NoTable as wrong:
        reader.refuse(field, str(wrong))
    return reader, text, None


def seal(text: str) -> str:
    """Tells whether a table is still the one that was looked at."""
    return sha256(text.encode()).hexdigest()[:16]


def _has_file(reader: Reader) -> bool:
    return "file" in reader.files and bool(reader.files["file"].size)


def _text(reader: Reader) -> TableText:
    if _has_file(reader):
        return table_text(reader.files["file"].file.read())
    return TableText(plain_lines(reader.values.get("table", "")), "")
