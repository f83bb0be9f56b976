"""Codes as a maker writes them on the tags of her skeins."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.work.skein_code import following, letters_of, proposed, stem_for, stem_of


def test_the_first_skein_of_a_yarn_takes_its_first_letter() -> None:
    stem = stem_for("Grey two-ply", own=(), others=())
    assert proposed(stem, ()) == ("G-001",)


def test_the_next_skein_continues_the_numbers() -> None:
    assert proposed("G", ("G-012", "G-013", "GR-40")) == ("G-014",)


def test_a_code_typed_without_a_dash_counts_as_well() -> None:
    assert proposed("G", ("G7",)) == ("G-8",)


def test_numbers_go_on_in_the_digits_they_have() -> None:
    assert proposed("Z", ("Z-1", "Z-2"), 2) == ("Z-3", "Z-4")
    assert proposed("Z", ("Z-9",)) == ("Z-10",)
    assert proposed("Z", ("Z-002", "Z-1")) == ("Z-003",)


def test_a_second_yarn_with_the_same_letter_takes_two() -> None:
    assert stem_for("Green singles", own=(), others=("G-001",)) == "GR"


def test_a_yarn_keeps_the_letters_its_skeins_already_have() -> None:
    assert stem_for("Green singles", own=("MOSS-1", "MOSS-2", "X-1"), others=("G-1",)) == "MOSS"


def test_plain_numbers_give_no_letters_to_go_on_with() -> None:
    assert stem_for("Green singles", own=("12",), others=()) == "G"


def test_when_every_beginning_is_taken_the_first_letter_is_shared() -> None:
    assert stem_for("Ox", own=(), others=("O-1", "OX-1")) == "O"


@pytest.mark.parametrize(
    ("name", "letters"),
    [("Öland grey", "OLANDGREY"), ("2-ply", "PLY"), ("羊毛", "S"), ("", "S")],
)
def test_letters_come_from_the_name_in_plain_capitals(name: str, letters: str) -> None:
    assert letters_of(name) == letters


def test_a_code_without_a_number_is_its_own_stem() -> None:
    assert stem_of("best of all") == "best of all"


@pytest.mark.parametrize(
    ("first", "count", "codes"),
    [
        ("A-7", 3, ("A-7", "A-8", "A-9")),
        ("A-098", 4, ("A-098", "A-099", "A-100", "A-101")),
        ("moss", 2, ("moss-1", "moss-2")),
        ("moss", 1, ("moss",)),
        ("12", 2, ("12", "13")),
    ],
)
def test_balls_alike_are_numbered_on_from_the_code_typed(
    first: str, count: int, codes: tuple[str, ...]
) -> None:
    assert following(first, count) == codes


@pytest.mark.property
@given(st.lists(st.from_regex(r"[A-Z]{1,2}-?\d{1,4}", fullmatch=True)), st.integers(1, 30))
def test_a_proposal_is_never_taken(codes: list[str], count: int) -> None:
    new = proposed("G", codes, count)
    assert len(set(new)) == count
    assert not set(new) & set(codes)
