import pytest
from sqlmodel import Session

from app.book.person import Measure, Person
from app.work.person_save import people, person, save_person
from app.work.refusal import Refusal


def test_people_are_listed_by_name_whatever_their_capitals(writing: Session):
    for name in ("oskar", "Ines", "Tilde"):
        save_person(writing, Person(name, name))
    assert [one.name for one in people(writing)] == ["Ines", "oskar", "Tilde"]


def test_a_person_is_put_in_the_place_of_their_older_self(writing: Session):
    save_person(writing, Person("p", "Ines"))
    save_person(writing, Person("p", "Ines", (Measure("chest", 960),)))
    assert person(writing, "p") == Person("p", "Ines", (Measure("chest", 960),))
    assert person(writing, "nobody") is None


def test_a_name_is_given_once(writing: Session):
    save_person(writing, Person("p", "Ines"))
    with pytest.raises(Refusal, match="already someone called ines"):
        save_person(writing, Person("q", "ines"))
