"""The part of the settings that weighs what the maker would rather avoid when skeins are given to
parts."""

from app.book.settings import Prices, Settings
from app.web.forms.reader import Reader
from app.web.shown import Shown

PRICES = {
    "join": (
        "A change of skein inside a part",
        "Two tails to weave in, and a place that may show.",
    ),
    "cut": ("A skein that goes on from one part into another", "It ties the parts together."),
    "scrap": ("A left-over too short to use", "It lies in the basket for ever."),
    "unlike": (
        "Ten metres in a yarn that was not meant for the part",
        "A yarn that looks alike counts half of it.",
    ),
}
"""What each price is called, and what it is for."""

MOST = 100.0
MOST_SCRAP = 1_000_000


def price_values(settings: Settings) -> dict[str, str]:
    """The fields as they show the settings."""
    shown, prices = Shown(settings), settings.prices
    values = {f"price_{name}": shown.field_number(getattr(prices, name)) for name in PRICES}
    return values | {"scrap_below_mm": shown.field_length(prices.scrap_below_mm)}


def price_fields() -> tuple[tuple[str, str, str], ...]:
    """Each field: its name, its label, its hint."""
    return tuple((f"price_{name}", label, hint) for name, (label, hint) in PRICES.items())


def read_prices(reader: Reader) -> Prices:
    """The prices as typed; good where the reader is ok."""
    told = {
        name: reader.number(f"price_{name}", required=True, least=0.0, most=MOST) or 0.0
        for name in PRICES
    }
    below = reader.length("scrap_below_mm", required=True, most=MOST_SCRAP) or 0
    return Prices(**told, scrap_below_mm=below)
