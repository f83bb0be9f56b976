"""The people to knit for, and the form of one of them."""

from dataclasses import dataclass

from app.book.person import Person
from app.craft.body import MEASURES
from app.web.forms.person import field_of, measure_names
from app.web.forms.reader import Filled
from app.web.shown import Shown


@dataclass(frozen=True, slots=True)
class PersonLine:
    """Someone in the list, with the measures that are known."""

    id: str
    name: str
    measures: str


@dataclass(frozen=True, slots=True)
class PeoplePage:
    lines: tuple[PersonLine, ...]


@dataclass(frozen=True, slots=True)
class MeasureField:
    """The field of a measure and how it is taken."""

    name: str
    label: str
    hint: str


@dataclass(frozen=True, slots=True)
class PersonFormPage:
    """`name` is empty for someone who is only being added."""

    id: str
    name: str
    form: Filled
    measures: tuple[MeasureField, ...]


def people_page(people: list[Person], shown: Shown) -> PeoplePage:
    """Everyone, with their measures in a line."""
    return PeoplePage(tuple(_line(one, shown) for one in people))


def person_form_page(form: Filled, old: Person | None = None) -> PersonFormPage:
    """The form of one person, empty, filled or with its faults."""
    who = old or Person(id="", name="")
    measures = (
        MeasureField(field_of(one), one.capitalize(), MEASURES.get(one, ""))
        for one in measure_names(who)
    )
    return PersonFormPage(who.id, who.name, form, tuple(measures))


def _line(one: Person, shown: Shown) -> PersonLine:
    known = ", ".join(f"{measure.name} {shown.size(measure.mm)}" for measure in one.measures)
    return PersonLine(one.id, one.name, known)
