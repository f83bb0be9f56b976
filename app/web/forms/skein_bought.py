"""The form of bought balls: one label, several balls alike."""

from collections.abc import Mapping
from dataclasses import replace
from datetime import date

from app.book.book import Book
from app.book.settings import Settings
from app.book.yarn import Yarn
from app.web.forms.reader import Reader
from app.web.forms.skein import ask_if_odd
from app.web.forms.skein_yarn import read_skein_yarn
from app.web.forms.yarn import read_colour, read_line
from app.work.skein_buy import Purchase
from app.work.skein_readings import Length, Weight

MOST_BALLS = 200


def read_bought(
    values: Mapping[str, object], settings: Settings, book: Book
) -> tuple[Reader, Purchase]:
    """What was typed and the balls it describes; they count only where the reader is ok."""
    reader = Reader(values, settings)
    count = reader.whole("count", least=1, most=MOST_BALLS)
    if not reader.typed("count"):
        reader.refuse("count", "Say how many balls there are.")
    yarn = read_skein_yarn(reader, book, bought=True)
    weight, length = _label_weight(reader, yarn), _label_length(reader, yarn)
    if yarn.id not in book.yarn:
        yarn = replace(yarn, ball_mg=weight.mg, ball_mm=length.mm)
    balls = Purchase(
        yarn=yarn,
        count=count or 1,
        weight=weight,
        length=length,
        day=reader.day("day") or date.today(),
        code=read_line(reader, "code", longest=30),
        dye_lot=reader.text("dye_lot", longest=40),
        price=reader.text("price", longest=40),
        colour=read_colour(reader),
        colour_name=reader.text("colour_name", longest=60),
        place=reader.text("place", longest=80),
        notes=reader.text("notes", longest=4000),
    )
    ask_if_odd(reader, weight.mg, length.mm)
    return reader, balls


def bought_values(**chosen: str) -> dict[str, str]:
    """What the form holds when it is opened."""
    return {"day": date.today().isoformat(), **chosen}


def _label_weight(reader: Reader, yarn: Yarn) -> Weight:
    """The weight typed, or the one the label of this yarn is known to state."""
    if not (yarn.ball_mg or reader.typed("mass")):
        reader.refuse("mass", "Say how much one ball weighs.")
    mg = reader.mass("mass", least=1)
    unit = reader.settings.mass_unit
    if mg is None and yarn.ball_mg:
        return Weight(yarn.ball_mg, f"{yarn.ball_mg / 1000:g}", "g", instrument="label")
    return Weight(mg or 0, reader.typed("mass"), unit, instrument="label")


def _label_length(reader: Reader, yarn: Yarn) -> Length:
    """The length typed, or the one the label of this yarn is known to state."""
    if not (yarn.ball_mm or reader.typed("length")):
        reader.refuse("length", "Say how long the yarn of one ball is.")
    mm = reader.length("length", least=1)
    unit = reader.settings.length_unit
    if mm is None and yarn.ball_mm:
        return Length(yarn.ball_mm, f"{yarn.ball_mm / 1000:g}", "m", instrument="label")
    return Length(mm or 0, reader.typed("length"), unit, instrument="label")
