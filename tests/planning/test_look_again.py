from datetime import timedelta

from app.planning.look_again import to_look_at
from tests.books import DAY, a_book, a_holding, a_skein

DAYS = timedelta


def test_what_is_due_comes_first_and_what_is_apart_after_it():
    book = a_book(
        a_holding("later", look_again=DAY + DAYS(1)),
        a_holding("today", look_again=DAY),
        a_holding("long ago", look_again=DAY - DAYS(9), apart=True),
        a_holding("apart", "fibre", apart=True, look_again=DAY + DAYS(5)),
        a_holding("shut away", apart=True),
        a_holding("gone", apart=True, look_again=DAY, put_away=DAY),
        a_holding("nothing to see"),
        a_skein("S-1", look_again=DAY),
    )
    found = to_look_at(book, DAY)
    assert [(one.holding.code, one.due, one.days) for one in found] == [
        ("long ago", True, 9),
        ("S-1", True, 0),
        ("today", True, 0),
        ("shut away", False, 0),
        ("apart", False, -5),
    ]


def test_the_parts_of_a_fleece_are_looked_at_together():
    book = a_book(
        a_holding("scoured", "fibre", fleece_id="Bramble", look_again=DAY),
        a_holding("raw", fleece_id="Bramble", look_again=DAY - DAYS(2), apart=True),
        a_skein("S-1", fleece_id="Bramble", look_again=DAY),
    )
    assert [one.holding.code for one in to_look_at(book, DAY)] == ["raw", "S-1"]
