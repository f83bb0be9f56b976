"""The whole of what is known, in one value: what the exchange document carries."""

from dataclasses import dataclass, field
from functools import cached_property

from app.book.errand import Errand
from app.book.event import Balance, Event, balances
from app.book.fleece import Fleece
from app.book.holding import Holding, sinks
from app.book.knitting import Progress, Weighing
from app.book.mark import Mark
from app.book.pattern import Pattern
from app.book.person import Person
from app.book.photo import Photo
from app.book.plan import Part, Plan, Promise
from app.book.reading import Reading
from app.book.settings import Settings
from app.book.stint import Stint
from app.book.swatch import Swatch
from app.book.wheel import Wheel
from app.book.yarn import Yarn


@dataclass(frozen=True)
class Book:
    """Every record, in no promised order; the balances and indexes are derived on first use."""

    settings: Settings = field(default_factory=Settings)
    people: tuple[Person, ...] = ()
    fleeces: tuple[Fleece, ...] = ()
    yarns: tuple[Yarn, ...] = ()
    swatches: tuple[Swatch, ...] = ()
    patterns: tuple[Pattern, ...] = ()
    holdings: tuple[Holding, ...] = field(default_factory=sinks)
    readings: tuple[Reading, ...] = ()
    events: tuple[Event, ...] = ()
    plans: tuple[Plan, ...] = ()
    parts: tuple[Part, ...] = ()
    promises: tuple[Promise, ...] = ()
    errands: tuple[Errand, ...] = ()
    wheels: tuple[Wheel, ...] = ()
    stints: tuple[Stint, ...] = ()
    marks: tuple[Mark, ...] = ()
    photos: tuple[Photo, ...] = ()
    progress: tuple[Progress, ...] = ()
    weighings: tuple[Weighing, ...] = ()

    @cached_property
    def balances(self) -> dict[str, Balance]:
        """What each holding holds, in mg and mm."""
        return balances(self.events)

    @cached_property
    def fleece(self) -> dict[str, Fleece]:
        return {record.id: record for record in self.fleeces}

    @cached_property
    def yarn(self) -> dict[str, Yarn]:
        return {record.id: record for record in self.yarns}

    @cached_property
    def swatch(self) -> dict[str, Swatch]:
        return {record.id: record for record in self.swatches}

    @cached_property
    def pattern(self) -> dict[str, Pattern]:
        return {record.id: record for record in self.patterns}

    @cached_property
    def holding(self) -> dict[str, Holding]:
        return {record.id: record for record in self.holdings}

    @cached_property
    def plan(self) -> dict[str, Plan]:
        return {record.id: record for record in self.plans}

    @cached_property
    def part(self) -> dict[str, Part]:
        return {record.id: record for record in self.parts}

    @cached_property
    def wheel(self) -> dict[str, Wheel]:
        return {record.id: record for record in self.wheels}

    @cached_property
    def person(self) -> dict[str, Person]:
        return {record.id: record for record in self.people}

    @cached_property
    def readings_of(self) -> dict[str, list[Reading]]:
        """The readings of each holding, oldest first."""
        found: dict[str, list[Reading]] = {}
        for reading in sorted(self.readings, key=lambda one: (one.day, one.id)):
            found.setdefault(reading.holding_id, []).append(reading)
        return found

    @cached_property
    def parts_of(self) -> dict[str, list[Part]]:
        """The parts of each plan in their order."""
        found: dict[str, list[Part]] = {}
        for part in sorted(self.parts, key=lambda one: (one.position, one.id)):
            found.setdefault(part.plan_id, []).append(part)
        return found

    @cached_property
    def promises_of(self) -> dict[str, list[Promise]]:
        """The promises to each plan."""
        found: dict[str, list[Promise]] = {}
        for promise in sorted(self.promises, key=lambda one: one.id):
            found.setdefault(promise.plan_id, []).append(promise)
        return found
