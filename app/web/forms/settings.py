"""The form of the settings: units, number format, sureness, losses and the reel."""

from collections.abc import Mapping
from dataclasses import asdict, replace
from typing import Any, Literal

from app.book.plan import Losses
from app.book.settings import Settings, StepLosses
from app.book.stamp import stamp
from app.web.forms.filled import Filled
from app.web.forms.prices import price_values, read_prices
from app.web.forms.reader import Reader
from app.web.shown import Shown

LENGTH_UNITS: dict[Literal["m", "yd"], str] = {"m": "metres", "yd": "yards"}
MASS_UNITS: dict[Literal["g", "oz"], str] = {"g": "grams", "oz": "ounces"}
GRIST_UNITS: dict[Literal["m/100 g", "yd/lb", "tex"], str] = {
    "m/100 g": "metres in 100 grams",
    "yd/lb": "yards in a pound",
    "tex": "tex, grams in 1000 metres",
}
GAUGE_UNITS: dict[Literal["10 cm", "4 in"], str] = {"10 cm": "in 10 cm", "4 in": "in 4 inches"}
DECIMALS: dict[Literal[".", ","], str] = {".": "a point: 1.5", ",": "a comma: 1,5"}
PAPERS: dict[Literal["A4", "Letter"], str] = {"A4": "A4", "Letter": "Letter"}

Choice = tuple[str, Mapping[Any, str]]

CHOICES: dict[str, Choice] = {
    "length_unit": ("Lengths of yarn", LENGTH_UNITS),
    "mass_unit": ("Weights", MASS_UNITS),
    "grist_unit": ("Grist", GRIST_UNITS),
    "gauge_unit": ("Gauge, stitches and rows", GAUGE_UNITS),
    "decimal": ("Decimal sign", DECIMALS),
    "paper": ("Paper", PAPERS),
}
"""The label and the options of each choice."""

STEPS = {
    "skirt": "Skirting, raw to skirted",
    "carded": "Carding, scoured to carded",
    "combed": "Combing, scoured to combed",
    "spin": "Spinning, prepared fibre to bobbin",
    "finish": "Finishing, weight lost in the last wash",
    "ply_shrink": "Finishing, length lost in the last wash",
    "take_up": "Plying, length taken up by the twist",
}
"""What each loss from fleece to yarn is called."""

LEAST_SURE, MOST_SURE = 50.0, 99.5
MOST_LOST = 95.0
MOST_MINUTES = 24 * 60
LEAST_GIRTH, MOST_GIRTH = 100, 10_000
MOST_TAIL, MOST_KEPT = 2_000, 1_000_000


def filled_settings(settings: Settings) -> Filled:
    """The form as it shows the settings."""
    shown = Shown(settings)
    values = {name: str(getattr(settings, name)) for name in CHOICES}
    values |= {
        "sureness_pct": shown.field_number(settings.sureness_pct),
        "girth_mm": shown.field_size(settings.girth_mm),
        "evening_minutes": str(settings.evening_minutes),
        "tail_mm": shown.field_size(settings.losses.tail_mm),
        "swatch_mm": shown.field_length(settings.losses.swatch_mm),
        "unusable_pct": shown.field_number(settings.losses.unusable_pct),
        "mending_mm": shown.field_length(settings.losses.mending_mm),
    }
    values |= price_values(settings)
    for name, lost in asdict(settings.steps).items():
        values[f"step_{name}"] = shown.field_number(lost)
    return Filled(values, {}, stamp(settings))


def read_settings(reader: Reader, old: Settings) -> Settings:
    """The settings as typed, with the old ones where nothing was; good where the reader is ok."""
    return replace(
        old,
        length_unit=reader.choice("length_unit", LENGTH_UNITS) or old.length_unit,
        mass_unit=reader.choice("mass_unit", MASS_UNITS) or old.mass_unit,
        grist_unit=reader.choice("grist_unit", GRIST_UNITS) or old.grist_unit,
        gauge_unit=reader.choice("gauge_unit", GAUGE_UNITS) or old.gauge_unit,
        decimal=reader.choice("decimal", DECIMALS) or old.decimal,
        paper=reader.choice("paper", PAPERS) or old.paper,
        sureness_pct=_percent(reader, "sureness_pct", LEAST_SURE, MOST_SURE),
        girth_mm=reader.size("girth_mm", required=True, least=LEAST_GIRTH, most=MOST_GIRTH) or 0,
        evening_minutes=_minutes(reader, old),
        losses=_losses(reader),
        steps=StepLosses(**{name: _percent(reader, f"step_{name}") for name in STEPS}),
        prices=read_prices(reader),
    )


def _minutes(reader: Reader, old: Settings) -> int:
    minutes = reader.whole("evening_minutes", required=True, least=1, most=MOST_MINUTES)
    return minutes or old.evening_minutes


def _losses(reader: Reader) -> Losses:
    return Losses(
        tail_mm=reader.size("tail_mm", required=True, most=MOST_TAIL) or 0,
        swatch_mm=reader.length("swatch_mm", required=True, most=MOST_KEPT) or 0,
        unusable_pct=_percent(reader, "unusable_pct"),
        mending_mm=reader.length("mending_mm", required=True, most=MOST_KEPT) or 0,
    )


def _percent(reader: Reader, name: str, least: float = 0.0, most: float = MOST_LOST) -> float:
    return reader.number(name, required=True, unit="%", least=least, most=most) or 0.0
