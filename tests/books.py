"""Small books to test with: builders that fill in what a test does not care about.

    book = a_book(a_yarn(), a_skein("G-1"), a_plan(), a_part(), held={"G-1": (96, 213)})

Ids are the names given. `held` tells in grams and metres what each holding got on its arrival.
"""

from collections.abc import Mapping
from datetime import date
from typing import Any

from app.book import woolbook
from app.book.book import Book
from app.book.errand import Errand
from app.book.event import Event
from app.book.fleece import Fleece
from app.book.gauge import Gauge
from app.book.holding import Holding, sinks
from app.book.knitting import Progress, Weighing
from app.book.mark import Mark
from app.book.pattern import Pattern, PatternSize, SizePart
from app.book.person import Measure, Person
from app.book.photo import Photo
from app.book.plan import Part, Plan, Promise, RoleYarn
from app.book.reading import Reading
from app.book.settings import Settings
from app.book.shape import Counted
from app.book.stint import Stint
from app.book.swatch import Count, Swatch
from app.book.wheel import Ratio, Wheel
from app.book.woolbook import Entry, Portion
from app.book.words import HoldingKind
from app.book.yarn import Yarn

DAY = date(2026, 4, 30)
TABLES: dict[type, str] = {
    Person: "people",
    Fleece: "fleeces",
    Yarn: "yarns",
    Swatch: "swatches",
    Pattern: "patterns",
    Holding: "holdings",
    Reading: "readings",
    Event: "events",
    Plan: "plans",
    Part: "parts",
    Promise: "promises",
    Errand: "errands",
    Wheel: "wheels",
    Stint: "stints",
    Mark: "marks",
    Photo: "photos",
    Progress: "progress",
    Weighing: "weighings",
}


def a_person(id: str = "Ines", **other: Any) -> Person:
    return Person(**{"id": id, "name": id, "measures": (Measure("chest", 960),)} | other)


def a_fleece(id: str = "Bramble", **other: Any) -> Fleece:
    return Fleece(**{"id": id, "name": id} | other)


def a_yarn(id: str = "grey two-ply", **other: Any) -> Yarn:
    return Yarn(**{"id": id, "name": id, "plies": 2} | other)


def a_swatch(id: str = "first try", **other: Any) -> Swatch:
    """22 × 30 in 10 cm, washed, on a needle of 4 mm."""
    counted = {"needle_mm": 4.0, "finished": Count(22.0, 100, 30.0, 100), "day": DAY}
    return Swatch(**{"id": id, "name": id, "yarn_id": "grey two-ply"} | counted | other)


def a_pattern(id: str = "plain pullover", **other: Any) -> Pattern:
    """One size at 22 × 30 in 10 cm: a body of 229 stitches, 1.4 km stated."""
    body = SizePart("Body", "body", cast_on=229, length_mm=400)
    size = PatternSize("2", 1040, 1_400_000, (body,))
    return Pattern(**{"id": id, "name": id, "gauge": Gauge(22.0, 30.0), "sizes": (size,)} | other)


def a_holding(id: str = "F-1", kind: HoldingKind = "fleece", **other: Any) -> Holding:
    return Holding(**{"id": id, "kind": kind, "code": id} | other)


def a_skein(id: str = "G-1", yarn_id: str | None = "grey two-ply", **other: Any) -> Holding:
    return a_holding(id, "skein", yarn_id=yarn_id, **other)


def a_reading(holding_id: str = "G-1", value: int = 96_000, **other: Any) -> Reading:
    typed = {"kind": "mass", "typed": str(value), "unit": "mg", "instrument": "scale", "day": DAY}
    same = {"id": f"{holding_id} weighed", "holding_id": holding_id, "value": value}
    return Reading(**same | typed | other)


def an_event(seq: int, entry: Entry, **other: Any) -> Event:
    return Event(**{"seq": seq, "kind": entry.kind, "day": DAY, "lines": entry.lines} | other)


def a_plan(id: str = "pullover", **other: Any) -> Plan:
    yarns = (RoleYarn("main", "grey two-ply"),)
    return Plan(**{"id": id, "name": id, "gauge": Gauge(22.0, 30.0), "yarns": yarns} | other)


def a_part(id: str = "body", plan_id: str = "pullover", **other: Any) -> Part:
    return Part(**{"id": id, "plan_id": plan_id, "name": id, "shape": Counted(229, 120)} | other)


def a_promise(holding_id: str = "G-1", mm: int = 100_000, **other: Any) -> Promise:
    same = {"id": f"{holding_id} promised", "plan_id": "pullover", "part_id": "body"}
    return Promise(**same | {"holding_id": holding_id, "mm": mm} | other)


def an_errand(id: str = "soap", **other: Any) -> Errand:
    return Errand(**{"id": id, "text": "buy soap"} | other)


def a_wheel(id: str = "upright wheel", **other: Any) -> Wheel:
    return Wheel(**{"id": id, "name": id, "ratios": (Ratio(8.0), Ratio(14.0))} | other)


def a_stint(id: str = "an evening", **other: Any) -> Stint:
    return Stint(**{"id": id, "day": DAY, "work": "spin", "minutes": 120, "mg": 60_000} | other)


def a_mark(id: str = "event 1, yield", **other: Any) -> Mark:
    return Mark(**{"id": id, "verdict": "struck out", "day": DAY} | other)


def a_photo(id: str = "in the sun", **other: Any) -> Photo:
    size = {"media": "image/jpeg", "bytes": 1000, "width": 40, "height": 30}
    return Photo(**{"id": id, "sha256": "0f" * 32} | size | other)


def some_progress(part_id: str = "body", rows: int = 40, **other: Any) -> Progress:
    same = {"id": f"{part_id} 1", "plan_id": "pullover", "part_id": part_id}
    return Progress(**same | {"piece": 1, "rows": rows, "day": DAY} | other)


def a_weighing(holding_id: str = "G-1", mg: int = 60_000, **other: Any) -> Weighing:
    same = {"id": f"{holding_id} at {mg}", "plan_id": "pullover", "part_id": "body", "piece": 1}
    seen = {"rows": 40, "holding_id": holding_id, "mg": mg, "typed": f"{mg / 1000:g}"}
    return Weighing(**same | seen | {"scale_mg": 1000, "day": DAY} | other)


def a_book(
    *records: Any,
    held: Mapping[str, tuple[float, float]] | None = None,
    settings: Settings | None = None,
) -> Book:
    """A book of these records and the sinks, each holding of `held` arrived with (g, m)."""
    tables: dict[str, list[Any]] = {name: [] for name in TABLES.values()}
    tables["holdings"] += sinks()
    for record in records:
        tables[TABLES[type(record)]].append(record)
    holding = {one.id: one for one in tables["holdings"]}
    for name, (g, m) in (held or {}).items():
        entry = woolbook.arrive([Portion(holding[name], round(g * 1000), round(m * 1000))])
        tables["events"].append(an_event(len(tables["events"]) + 1, entry))
    rows = {name: tuple(found) for name, found in tables.items()}
    return Book(settings=settings or Settings(), **rows)
