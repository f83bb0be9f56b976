"""The form of a garment from measurements: what was typed, and the plan with its design."""

from collections.abc import Mapping
from dataclasses import dataclass, replace

from app.book.book import Book
from app.book.design import Choice, Design
from app.book.gauge import Gauge
from app.book.ids import new_id
from app.book.person import Measure, Person
from app.book.plan import Plan
from app.craft.constructions import construction_of, constructions
from app.craft.constructions.drawing import Construction
from app.craft.constructions.wanting import choices_of, sizes_of
from app.craft.gauge import TEN_CM_IN
from app.craft.sizes import LEAST_CHEST_CM, MOST_CHEST_CM
from app.craft.typed import Unclear, number
from app.web.forms.design_fields import (
    CHEST,
    band_gauge_field,
    band_needle_field,
    choice_field,
    ease_field,
    measures_asked,
)
from app.web.forms.gauge import MEASURES, NEEDLE_MM, ROWS, STITCHES
from app.web.forms.gauge_swatch import read_gauge_or_swatch, swatches_offered
from app.web.forms.options import names_by_id
from app.web.forms.person import LEAST_MM, MOST_MM, field_of
from app.web.forms.plan import read_yarns
from app.web.forms.reader import Reader

USUAL = "pullover, round yoke"
"""What is offered where nothing was chosen."""

LEAST_SIZE_MM, MOST_SIZE_MM = 1, 5_000
MOST_EASE_MM = 1_000
NO_GAUGE = "Say how many stitches and rows you knit, or take them from a swatch."


@dataclass(frozen=True, slots=True)
class Wish:
    """A plan as it was designed in the form, with its construction and the person it is for."""

    plan: Plan
    construction: Construction
    person: Person | None


def construction_chosen(values: Mapping[str, object]) -> Construction:
    """The construction a form names, else the usual one."""
    word = values.get("construction")
    known = constructions()
    return known[word] if isinstance(word, str) and word in known else construction_of(USUAL)


def read_design(
    values: Mapping[str, object], book: Book, old: Plan | None = None
) -> tuple[Reader, Wish]:
    """What was typed and the plan it describes; the plan counts only where the reader is ok."""
    reader = Reader(values, book.settings)
    reader.choice("construction", constructions())
    construction = construction_chosen(values)
    person = book.person.get(reader.choice("person_id", ["", *book.person], default="") or "")
    plan = replace(
        old or Plan(id=new_id(), name=""),
        name=reader.text("name", longest=80) or construction.title,
        person_id=person.id if person else None,
        gauge=_gauge(reader, book, old),
        yarns=read_yarns(reader, names_by_id(book.yarns), old.yarns if old else ()),
        design=Design(
            construction.word,
            _measures(reader, construction, person),
            _ease(reader, construction),
            _choices(reader, construction),
        ),
        pattern_id=None,
        size="",
        follows="",
    )
    return reader, Wish(plan, construction, person)


def _gauge(reader: Reader, book: Book, old: Plan | None) -> Gauge | None:
    gauge = read_gauge_or_swatch(reader, swatches_offered(book, old), old.gauge if old else None)
    if gauge is None:
        reader.refuse("gauge_stitches", NO_GAUGE)
    return gauge


def _measures(
    reader: Reader, construction: Construction, person: Person | None
) -> tuple[Measure, ...]:
    """What was typed, else what the person has; what nobody has is left to the body table."""
    theirs = {one.name: one.mm for one in person.measures} if person else {}
    known = {name: _measure(reader, construction, name) for name in measures_asked(construction)}
    wanted = {name: theirs.get(name) if mm is None else mm for name, mm in known.items()}
    return tuple(Measure(name, mm) for name, mm in wanted.items() if mm is not None)


def _measure(reader: Reader, construction: Construction, name: str) -> int | None:
    if name == CHEST:
        least, most = round(10 * LEAST_CHEST_CM), round(10 * MOST_CHEST_CM)
    elif name in sizes_of(construction):
        least, most = LEAST_SIZE_MM, MOST_SIZE_MM
    else:
        least, most = LEAST_MM, MOST_MM
    return reader.size(field_of(name), least=least, most=most)


def _ease(reader: Reader, construction: Construction) -> tuple[Measure, ...]:
    typed = {name: _signed(reader, ease_field(name)) for name in construction.eases}
    return tuple(Measure(name, mm) for name, mm in typed.items() if mm is not None)


def _signed(reader: Reader, field: str) -> int | None:
    """A size that may lie below zero: a tight garment is smaller than its body."""
    text = reader.typed(field)
    below = text[:1] in ("-", "−")
    plain = Reader({field: text[1:] if below else text}, reader.settings)
    mm = plain.size(field, most=MOST_EASE_MM)
    reader.errors |= plain.errors
    return -mm if mm is not None and below else mm


def _choices(reader: Reader, construction: Construction) -> tuple[Choice, ...]:
    known = choices_of(construction).items()
    chosen = {name: reader.choice(choice_field(name), of, default=of[0]) for name, of in known}
    for band in construction.bands or {}:
        chosen |= {f"{band} gauge": _band_gauge(reader, band)}
        chosen |= {f"{band} needle": _band_needle(reader, band)}
    return tuple(Choice(name, value) for name, value in chosen.items() if value)


def _band_gauge(reader: Reader, band: str) -> str:
    """A gauge such as "24 × 32", kept as stitches and rows in 10 cm; empty where it has none."""
    field = band_gauge_field(band)
    text = reader.typed(field)
    if not text:
        return ""
    factor = TEN_CM_IN[reader.choice("gauge_measure", MEASURES) or "10 cm"]
    try:
        stitches, rows = (number(one, reader.settings.decimal) * factor for one in _two(text))
    except (Unclear, ValueError):
        reader.refuse(field, "Give stitches and rows, as in 24 × 32.")
        return ""
    if not (STITCHES[0] <= stitches <= STITCHES[1] and ROWS[0] <= rows <= ROWS[1]):
        reader.refuse(field, "This gauge is not to be believed: give stitches × rows.")
    return f"{round(stitches, 4):g} × {round(rows, 4):g}"


def _two(text: str) -> list[str]:
    return text.replace("x", "×").replace("X", "×").replace("*", "×").split("×")


def _band_needle(reader: Reader, band: str) -> str:
    least, most = NEEDLE_MM
    mm = reader.number(band_needle_field(band), unit="mm", least=least, most=most)
    return f"{mm:g}" if mm else ""
