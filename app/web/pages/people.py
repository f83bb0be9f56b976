"""The people to knit for, and the form of one of them."""

from dataclasses import dataclass

from app.book.person import Person
from app.craft.body import MEASURES
from app.craft.sizes import Measured
from app.web.forms.filled import Filled
from app.web.forms.person import field_of, measure_names
from app.web.pages.measure_said import assumed_said, body_known, by_name
from app.web.pages.plan_line import PlanLine, plan_lines
from app.web.shown import Shown
from app.work.reckoning import Known


@dataclass(frozen=True, slots=True)
class PersonLine:
    """Someone in the list, with the measures that are known, those that are assumed, and the
    garments planned for them."""

    id: str
    name: str
    measures: str
    assumed: tuple[str, ...]
    plans: tuple[PlanLine, ...]


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


def people_page(people: list[Person], known: Known, shown: Shown) -> PeoplePage:
    """Everyone, with their measures in a line and their garments."""
    return PeoplePage(tuple(_line(one, known, shown) for one in people))


def person_form_page(form: Filled, shown: Shown, old: Person | None = None) -> PersonFormPage:
    """The form of one person, empty, filled or with its faults."""
    who = old or Person(id="", name="")
    assumed = assumed_of(who)
    measures = (
        MeasureField(field_of(one), one.capitalize(), _hint(one, assumed.get(one), shown))
        for one in measure_names(who)
    )
    return PersonFormPage(who.id, who.name, form, tuple(measures))


def assumed_of(person: Person) -> dict[str, Measured]:
    """The measures of someone that were not taken, by name, from their chest."""
    known = body_known(by_name(person.measures))
    return {name: one for name, one in known.items() if one.standing != "measured"}


def _hint(name: str, assumed: Measured | None, shown: Shown) -> str:
    how = MEASURES.get(name, "")
    return f"{how}; not measured: {assumed_said(assumed, shown)}" if assumed else how


def _line(one: Person, known: Known, shown: Shown) -> PersonLine:
    measures = ", ".join(f"{measure.name} {shown.size(measure.mm)}" for measure in one.measures)
    plans = plan_lines(known.book, known.reckoning, shown, person_id=one.id)
    assumed = (f"{name} {assumed_said(each, shown)}" for name, each in assumed_of(one).items())
    return PersonLine(one.id, one.name, measures, tuple(assumed), plans)
