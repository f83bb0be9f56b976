"""A name is given once."""

import pytest

from app.work.name_taken import is_taken
from tests.books import a_person

NELL = a_person("nell", name="Nell")


@pytest.mark.parametrize(
    ("known", "taken"),
    [
        ((), False),
        ((NELL,), False),
        ((a_person("other", name="NELL"),), True),
        ((a_person("other", name="Nell of the hill"),), False),
    ],
)
def test_another_has_the_name(known, taken):
    assert is_taken(NELL, known) is taken
