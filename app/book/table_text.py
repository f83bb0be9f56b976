"""The text of a table's file, whatever program wrote it."""

from dataclasses import dataclass

from app.book.table_cells import MARK

UTF_8, UTF_16, WINDOWS = "UTF-8", "UTF-16", "Windows-1252"
MARKS = (
    (b"\xef\xbb\xbf", "utf-8", UTF_8),
    (b"\xff\xfe", "utf-16-le", UTF_16),
    (b"\xfe\xff", "utf-16-be", UTF_16),
)
"""Byte order marks, how a file that begins with them is read, and what that is called."""


class NotText(ValueError):
    """Met where a file is no text in any encoding known here: a workbook, a picture."""


@dataclass(frozen=True, slots=True)
class TableText:
    """The text of a file and the name of the encoding it was understood in."""

    text: str
    encoding: str


def table_text(data: bytes) -> TableText:
    """The text of a file in UTF-8 or UTF-16, with a byte order mark or without, or in
    Windows-1252. NotText for anything else."""
    codec, name = _encoding(data)
    try:
        text = data.decode(codec)
    except UnicodeDecodeError:
        raise NotText("no text in any known encoding") from None
    if "\0" in text:
        raise NotText("zero bytes among the text")
    return TableText(plain_lines(text), name)


def plain_lines(text: str) -> str:
    """The text without a byte order mark, its lines ended alike."""
    return text.removeprefix(MARK).replace("\r\n", "\n").replace("\r", "\n")


def _encoding(data: bytes) -> tuple[str, str]:
    for mark, codec, name in MARKS:
        if data.startswith(mark):
            return codec, name
    # The name of a column is plain letters: in UTF-16 every other byte of it is zero.
    first, second = data[:1], data[1:2]
    if b"\0" in (first, second):
        return ("utf-16-be" if first == b"\0" else "utf-16-le"), UTF_16
    try:
        data.decode("utf-8")
    except UnicodeDecodeError:
        return "cp1252", WINDOWS
    return "utf-8", UTF_8
