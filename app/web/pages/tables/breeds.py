"""Breeds: what is printed of each; where sources disagree, each keeps its row."""

from app.craft.breeds import (
    UNKNOWN_YIELD,
    Breed,
    Range,
    all_rows,
    breed_names,
    rows_of,
    typical_micron,
    typical_staple,
    typical_yield,
)
from app.craft.counts import POUND_G
from app.web.forms.table_fields import Asked, Field
from app.web.pages.table import Answer, Example, Line, Row, Sheet, Table
from app.web.pages.table_numbers import ranged, short
from app.web.shown import Shown


def ask(asked: Asked, shown: Shown) -> Answer:
    """What all sources say of one breed together, and each of them by itself."""
    breed = asked.words["breed"]
    rows = rows_of(breed)
    if not rows:
        mean, u = (short(shown, x) for x in UNKNOWN_YIELD)
        return Answer(f"Nothing is printed of {breed} here. A yield of {mean} ± {u} % is assumed.")
    typical = typical_yield(breed)
    figure = typical.figure
    said = [f"yield {short(shown, figure.value)} ± {short(shown, figure.u)} %"]
    if typical.standing == "assumed":
        said[0] += ", assumed"
    if micron := typical_micron(breed):
        said.append(f"{ranged(shown, *micron)} µm")
    if staple := typical_staple(breed):
        said.append(f"staple {_staple(shown, staple)}")
    lines = tuple(Line(_name(one), "; ".join(_told(shown, one)), one.source) for one in rows)
    return Answer(f"{rows[0].name}: {', '.join(said)}.", lines)


def _told(shown: Shown, one: Breed) -> list[str]:
    words = ("yield", "", "staple", "fleece", "count")
    parts = (f"{word} {cell}".strip() for word, cell in zip(words, _cells(shown, one), strict=True))
    return [part for part in parts if not part.endswith("–")]


def _cells(shown: Shown, one: Breed) -> tuple[str, ...]:
    return (
        f"{ranged(shown, *one.yield_pct)} %" if one.yield_pct else "–",
        f"{ranged(shown, *one.micron)} µm" if one.micron else "–",
        _staple(shown, one.staple_mm) if one.staple_mm else "–",
        _fleece(shown, one.fleece_kg) if one.fleece_kg else "–",
        f"{one.count.replace('-', '–')}s" if one.count else "–",
    )


def _staple(shown: Shown, mm: Range) -> str:
    """In cm or in, as bodies are measured."""
    unit = shown.size_unit
    low, high = (end / (10.0 if unit == "cm" else 25.4) for end in mm)
    return f"{ranged(shown, low, high)} {unit}"


def _fleece(shown: Shown, kg: Range) -> str:
    """A raw fleece, in kg or lb, as wool is weighed."""
    unit, per = ("kg", 1.0) if shown.settings.mass_unit == "g" else ("lb", POUND_G / 1000)
    low, high = (end / per for end in kg)
    return f"{ranged(shown, low, high)} {unit}"


def _name(one: Breed) -> str:
    return f"{one.name} ({one.kind})" if one.kind else one.name


def sheets(shown: Shown) -> tuple[Sheet, ...]:
    rows = tuple(
        Row(_name(one), _cells(shown, one), one.standing, one.source) for one in all_rows()
    )
    columns = ("yield", "fineness", "staple", "raw fleece", "count")
    return (Sheet("What is printed of breeds", "Breed", columns, rows),)


TABLE = Table(
    word="breeds",
    title="Breeds",
    group="Fleece",
    place=1,
    answers="What can I expect of a fleece of this breed?",
    fields=(Field("breed", "Breed", "text", options={name: name for name in breed_names()}),),
    ask=ask,
    example=Example(
        {"breed": "Corriedale"},
        "Corriedale",
        "Corriedale: yield 55 ± 5 %, 24.5 to 31.5 µm, staple 8.9 to 15.2 cm.",
    ),
    sheets=sheets,
    notes=(
        "Yield is the weight scoured and dry, in percent of the weight skirted.",
        "Where sources disagree each keeps its row, and the whole span is used.",
    ),
    more="sheep yield micron staple fleece wool",
)
