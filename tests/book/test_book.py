"""What a book derives from its records."""

from datetime import date

from app.book.event import Balance
from tests.books import (
    a_book,
    a_fleece,
    a_part,
    a_person,
    a_plan,
    a_promise,
    a_reading,
    a_skein,
    a_yarn,
)


def test_balances_follow_from_the_events():
    book = a_book(a_yarn(), a_skein(), held={"G-1": (96, 213)})
    assert book.balances == {"G-1": Balance(96_000, 213_000), "come in": Balance(-96_000)}


def test_records_by_id():
    book = a_book(a_person(), a_fleece(), a_yarn(), a_skein(), a_plan(), a_part())
    assert book.person["Ines"] == a_person()
    assert book.fleece["Bramble"] == a_fleece()
    assert book.yarn["grey two-ply"] == a_yarn()
    assert book.holding["G-1"] == a_skein()
    assert book.plan["pullover"] == a_plan()
    assert book.part["body"] == a_part()


def test_readings_of_a_holding_oldest_first():
    late, early = a_reading(id="a", day=date(2026, 5, 2)), a_reading(id="b", day=date(2026, 5, 1))
    other = a_reading("G-2")
    assert a_book(late, early, other).readings_of == {"G-1": [early, late], "G-2": [other]}


def test_parts_of_a_plan_in_their_order():
    sleeve, body = a_part("sleeve", position=2), a_part("body", position=1)
    assert a_book(sleeve, body).parts_of == {"pullover": [body, sleeve]}


def test_promises_of_a_plan():
    second, first = a_promise(id="2"), a_promise(id="1")
    assert a_book(second, first).promises_of == {"pullover": [first, second]}
