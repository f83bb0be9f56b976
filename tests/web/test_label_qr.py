"""The code on a label leads where it says: read by a reader of the test's own."""

import pytest
import segno
from hypothesis import given
from hypothesis import strategies as st

from app.book.ids import new_id
from app.web.pages.label_qr import QUIET, qr_path
from tests.qr_reader import matrix_of, read

ADDRESS = st.text("abcdefghijklmnopqrstuvwxyz0123456789:/.-", min_size=1, max_size=60)


def read_from(text: str) -> str:
    found = qr_path(text)
    return read(matrix_of(found.d, found.size, QUIET))


def test_the_page_of_a_skein():
    address = f"http://127.0.0.1:8765/skeins/{new_id()}"
    found = qr_path(address)
    assert read_from(address) == address
    assert found.size == 33 + 2 * 4
    assert len(found.d) < 4_000


@pytest.mark.property
@given(ADDRESS)
def test_any_address_of_this_machine(text: str):
    assert read_from(f"http://127.0.0.1:8765/{text}") == f"http://127.0.0.1:8765/{text}"


@pytest.mark.parametrize("mask", range(8))
def test_the_reader_reads_every_mask(mask: int):
    """Else it might agree with a code that is wrong in the same way."""
    code = segno.make("a label, b label", micro=False, error="m", mask=mask, boost_error=False)
    assert read([[bool(x) for x in row] for row in code.matrix]) == "a label, b label"


def test_a_code_with_a_wrong_module_is_not_read():
    found = qr_path("http://127.0.0.1:8765/skeins/x")
    matrix = matrix_of(found.d, found.size, QUIET)
    matrix[-1][-1] = not matrix[-1][-1]
    with pytest.raises(AssertionError):
        read(matrix)


def test_more_than_a_code_holds_is_an_error():
    with pytest.raises(ValueError, match=r"."):
        qr_path("x" * 3000)
