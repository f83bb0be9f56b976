"""Needle sizes: mm, US numbers and old British ones."""

from app.craft.needles import Needle, nearest_needle, needles, old_british_size, us_size
from app.craft.typed import Unclear, number
from app.web.forms.table_fields import Asked, Fault, Field
from app.web.pages.table import Answer, Example, Line, Row, Sheet, Table
from app.web.pages.table_numbers import short
from app.web.shown import Shown

KINDS = {"mm": "mm", "US": "US number", "old British": "old British number"}


def ask(asked: Asked, shown: Shown) -> Answer:
    """A size in the other two systems; a US number may be two needles."""
    kind, size = asked.words["kind"], asked.words["size"]
    found = _by_mm(size, shown) if kind == "mm" else _by_number(kind, size)
    said = " or ".join(f"{short(shown, one.mm, 2)} mm" for one in found)
    lines = tuple(Line(f"{short(shown, one.mm, 2)} mm", _numbers(one), one.source) for one in found)
    if kind == "mm":
        return Answer(f"{said}: {_numbers(found[0])}.", lines)
    return Answer(f"{kind} {size} is {said}.", lines)


def _by_mm(size: str, shown: Shown) -> tuple[Needle, ...]:
    try:
        mm = number(size, shown.settings.decimal, "mm")
    except Unclear as unclear:
        raise Fault("size", str(unclear)) from None
    if not 0.5 <= mm <= 50:
        raise Fault("size", "A needle is between 0.5 and 50 mm thick.")
    return (nearest_needle(mm),)


def _by_number(kind: str, size: str) -> tuple[Needle, ...]:
    found = (us_size if kind == "US" else old_british_size)(size)
    if not found:
        raise Fault("size", f"No needle has that {KINDS[kind]}.")
    return tuple(one for one in needles() if one.mm in found)


def _numbers(one: Needle) -> str:
    return f"US {one.us or 'none'}, old British {one.uk_old or 'none'}"


def sheets(shown: Shown) -> tuple[Sheet, ...]:
    rows = tuple(
        Row(
            f"{short(shown, one.mm, 2)} mm",
            (one.us or "–", one.uk_old or "–"),
            one.standing,
            one.source,
        )
        for one in needles()
    )
    return (Sheet("Knitting needles", "Size", ("US", "old British"), rows),)


TABLE = Table(
    word="needles",
    title="Needle sizes",
    group="Fabric",
    place=2,
    answers="What is this needle called elsewhere?",
    fields=(
        Field("size", "Size", "text"),
        Field("kind", "as", "choice", options=KINDS),
    ),
    ask=ask,
    example=Example({"size": "2", "kind": "US"}, "US 2", "US 2 is 2.75 mm or 3 mm."),
    sheets=sheets,
    notes=("A needle is known by its mm: numbers differ by country, and a US 2 by its maker.",),
    more="hook conversion us uk metric knitting needle size",
)
