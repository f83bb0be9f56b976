"""The sentence of the quick reckoning, read into a question. Anything may be left open."""

from dataclasses import dataclass, replace

from app.book.book import Book
from app.book.gauge import Gauge
from app.craft.figure import Figure
from app.craft.garments import KINDS
from app.craft.thickness import tex_from_wraps
from app.craft.typed import Unclear, length_mm, mass_mg
from app.planning.gauges import ROWS_TO_STITCHES
from app.planning.quick import Question
from app.planning.yarns import Lots
from app.web.forms.gauge import read_gauge
from app.web.forms.reader import Reader
from app.work.reckoning import Known

ROWS_GUESSED_PCT = 3.0
"""What a guessed row count adds to the doubt about the yarn in a stitch (half of 6 %)."""

WRAPS_SHARE = 0.20
"""Standard uncertainty of a grist taken from wraps per inch, being a square (practice)."""

WRAPS = (3.0, 60.0)
CHEST_MM = (300, 1800)
BABY_MM = 480
"""A bare chest below this is asked about: 48 cm is a year-old's, 48 inches a large adult's."""


@dataclass(frozen=True, slots=True)
class Have:
    """Yarn on hand: metres, or grams, and the grist that is known of it."""

    m: float | None
    g: float | None
    tex: Figure | None


def read_question(reader: Reader, known: Known) -> Question | None:
    """The question typed; None where a field is at fault."""
    kind = reader.choice("garment", KINDS)
    have = _read_have(reader, known)
    gauge = _read_gauge(reader)
    measures = _read_measures(reader, known.book)
    if not reader.ok or kind is None:
        return None
    return Question(
        kind, have.m, have.g, have.tex, gauge, measures, known.book.settings.sureness_pct
    )


def _read_have(reader: Reader, known: Known) -> Have:
    yarn_id = reader.choice("yarn", ["", *known.book.yarn], default="") or ""
    tex = _read_tex(reader, known.book, yarn_id)
    text = reader.typed("have")
    if not text:
        free = _free_m(known, yarn_id)
        if free <= 0:
            reader.refuse("have", "Say how much yarn you have, in metres or in grams.")
        return Have(free, None, tex)
    metres, grams = _read_amount(reader, text)
    return Have(metres, grams, tex)


def _read_amount(reader: Reader, text: str) -> tuple[float | None, float | None]:
    """An amount by its unit: a length, or a weight; a bare number is a length."""
    settings = reader.settings
    try:
        return length_mm(text, settings.length_unit, settings.decimal) / 1000, None
    except Unclear as not_a_length:
        try:
            return None, mass_mg(text, settings.mass_unit, settings.decimal) / 1000
        except Unclear:
            reader.refuse("have", str(not_a_length))
            return None, None


def _free_m(known: Known, yarn_id: str) -> float:
    holding = known.book.holding
    lines = known.reckoning.shelf.values()
    return sum(one.free_m for one in lines if holding[one.holding_id].yarn_id == yarn_id)


def _read_tex(reader: Reader, book: Book, yarn_id: str) -> Figure | None:
    wraps = reader.number("wraps", least=WRAPS[0], most=WRAPS[1])
    if wraps is not None:
        tex = tex_from_wraps(wraps)
        return Figure(tex, "tex", {"grist": tex * WRAPS_SHARE})
    return Lots(book).tex(yarn_id) if yarn_id else None


def _read_gauge(reader: Reader) -> Gauge | None:
    if reader.typed("gauge_stitches") and not reader.typed("gauge_rows"):
        stitches = reader.number("gauge_stitches")
        if stitches is None:
            return None
        guessed = reader.settings.decimal.join(f"{stitches * ROWS_TO_STITCHES:.2f}".split("."))
        reader.values["gauge_rows"] = guessed
        gauge = read_gauge(reader)
        reader.values["gauge_rows"] = ""
        return replace(gauge, assumed_pct=ROWS_GUESSED_PCT) if gauge else None
    return read_gauge(reader)


def _read_measures(reader: Reader, book: Book) -> dict[str, float]:
    """The person's measures in cm; a chest typed beside wins."""
    person_id = reader.choice("person", ["", *book.person], default="")
    person = book.person.get(person_id or "")
    found = {one.name: one.mm / 10 for one in person.measures} if person else {}
    chest = reader.size("chest", least=CHEST_MM[0], most=CHEST_MM[1])
    _ask_about_inches(reader, chest)
    return found if chest is None else {**found, "chest": chest / 10}


def _ask_about_inches(reader: Reader, chest_mm: int | None) -> None:
    """A chest of 38 cm is a baby's; typed bare it may well be inches."""
    typed = reader.typed("chest")
    bare = not any(sign.isalpha() or sign in '"″' for sign in typed)
    if chest_mm is not None and chest_mm < BABY_MM and bare:
        question = (
            f"Is this {typed} cm, as for a newborn, or {typed} inches? Type the unit as well."
        )
        reader.refuse("chest", question)
