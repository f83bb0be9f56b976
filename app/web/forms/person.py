"""The form of someone to knit for: a name and the measures that were taken."""

from collections.abc import Iterable
from dataclasses import replace

from app.book.person import Measure, Person
from app.book.settings import Settings
from app.book.stamp import stamp
from app.craft.body import MEASURES
from app.web.forms.filled import Filled
from app.web.forms.reader import Reader
from app.web.shown import Shown

LEAST_MM, MOST_MM = 20, 3_000


def field_of(measure: str) -> str:
    """The name of a measure's field."""
    return "measure_" + measure.replace(" ", "_")


def measure_names(person: Person) -> list[str]:
    """The measures a form asks for: the usual ones, and those of other names it already has."""
    return list(dict.fromkeys([*MEASURES, *(one.name for one in person.measures)]))


def filled_person(person: Person, settings: Settings) -> Filled:
    """The form as it shows someone."""
    shown = Shown(settings)
    values = {field_of(one.name): shown.field_size(one.mm) for one in person.measures}
    values |= {"name": person.name, "notes": person.notes}
    return Filled(values, {}, stamp(person))


def read_person(reader: Reader, old: Person) -> Person:
    """The person as typed; good where the reader is ok."""
    return replace(
        old,
        name=reader.text("name", required=True, longest=80),
        measures=tuple(_measures(reader, measure_names(old))),
        notes=reader.text("notes", longest=4000),
    )


def _measures(reader: Reader, names: Iterable[str]) -> list[Measure]:
    typed = {name: reader.size(field_of(name), least=LEAST_MM, most=MOST_MM) for name in names}
    return [Measure(name, mm) for name, mm in typed.items() if mm is not None]
