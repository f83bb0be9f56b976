"""The text of a file comes out whatever program wrote it; what is no text is told apart."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.book.table_text import NotText, plain_lines, table_text

TEXT = "code,notes\nG-1,naturgrau – „weich“ é"


@pytest.mark.parametrize(
    ("codec", "name"),
    [
        ("utf-8", "UTF-8"),
        ("utf-8-sig", "UTF-8"),
        ("utf-16", "UTF-16"),
        ("utf-16-le", "UTF-16"),
        ("utf-16-be", "UTF-16"),
        ("cp1252", "Windows-1252"),
    ],
)
def test_an_encoding_is_understood_and_named(codec: str, name: str) -> None:
    found = table_text(TEXT.encode(codec))
    assert (found.text, found.encoding) == (TEXT, name)


def test_a_big_endian_mark_is_understood() -> None:
    assert table_text(b"\xfe\xff" + TEXT.encode("utf-16-be")).text == TEXT


@pytest.mark.parametrize(
    "data",
    [
        b"PK\x03\x04\x14\x00\x06\x00\x08\x00",
        b"\x89PNG\r\n\x1a\n\x00\x00\x00\rIHDR",
        b"caf\xe9 \x81",
        b"\xff\xfea",
        b"\xef\xbb\xbf\xe9",
        b"\xff\xfe\x00\x00c\x00\x00\x00",
    ],
    ids=["a workbook", "a picture", "no letter", "half a sign", "a false mark", "UTF-32"],
)
def test_what_is_no_text_is_refused(data: bytes) -> None:
    with pytest.raises(NotText):
        table_text(data)


def test_lines_end_alike() -> None:
    assert plain_lines("\ufeffa\r\nb\rc\n") == "a\nb\nc\n"


@pytest.mark.property
@given(st.binary(max_size=200))
def test_any_bytes_are_text_or_refused(data: bytes) -> None:
    try:
        found = table_text(data)
    except NotText:
        return
    assert "\0" not in found.text
    assert "\r" not in found.text
