"""Codes stand as people count."""

import pytest

from app.work.code_order import in_order


@pytest.mark.parametrize(
    "codes",
    [
        ("G-1", "G-2", "G-10"),
        ("g-2", "G-3", "H-1"),
        ("2", "10", "10a", "A", "A-1"),
        ("A-01", "A-2", "A-2b", "A-10"),
    ],
)
def test_codes_stand_as_people_count(codes: tuple[str, ...]) -> None:
    assert tuple(sorted(set(codes), key=in_order)) == codes
