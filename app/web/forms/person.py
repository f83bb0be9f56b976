"""The form of someone to knit for: a name and the measures that were taken."""

from dataclasses import replace

from app.book.person import Measure, Person
from app.book.settings import Settings
from app.book.stamp import stamp
from app.craft.body import MEASURES
from app.web.forms.reader import Filled, Reader
from app.web.shown import Shown

LEAST_MM, MOST_MM = 20, 3_000


def field_of(measure: str) -> str:
    """The name of a measure's field."""
    return "measure_" + measure.replace(" ", "_")


def filled_person(person: Person, settings: Settings) -> Filled:
    """The form as it shows someone."""
    shown = Shown(settings)
    values = {field_of(one.name): shown.field_size(one.mm) for one in person.measures}
    values |= {"name": person.name, "notes": person.notes}
    return Filled(values, {}, stamp(person))


def read_person(reader: Reader, old: Person) -> Person:
    """The person as typed; good where the reader is ok. Measures of other names are kept."""
    others = [one for one in old.measures if one.name not in MEASURES]
    return replace(
        old,
        name=reader.text("name", required=True, longest=80),
        measures=(*_measures(reader), *others),
        notes=reader.text("notes", longest=4000),
    )


def _measures(reader: Reader) -> list[Measure]:
    typed = {name: reader.size(field_of(name), least=LEAST_MM, most=MOST_MM) for name in MEASURES}
    return [Measure(name, mm) for name, mm in typed.items() if mm is not None]
