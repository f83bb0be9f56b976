"""How figures are shown: in her units, her decimal sign, and rounded the honest way.

What is left or free rounds down, what is missing rounds up, both forgiving the dust of floating
point; everything else to the nearest. A narrow no-break space parts thousands and units.
"""

from collections.abc import Callable
from datetime import date
from decimal import Decimal
from math import ceil, floor, inf, log10

from app.book.settings import Settings
from app.craft.counts import OUNCE_G, YARD_M, from_tex
from app.craft.figure import Figure
from app.craft.odds import normal_quantile, times_in_twenty

THIN = "\u202f"
MINUS = "\u2212"
DUST = 1e-9
NINE_IN_TEN = 0.9

MM_PER_CM = 10.0
MM_PER_IN = 25.4
OZ_PER_LB, POUNDS_FROM_OZ = 16.0, 32.0
"""Ounces in a pound, and from how many on a mass is told in pounds and ounces."""

Rounding = Callable[[float], int]


def nearest(x: float) -> int:
    """The nearest whole number, halves up."""
    return floor(x + 0.5)


def down(x: float) -> int:
    """The whole number below, forgiving dust."""
    return floor(x + DUST * max(1.0, abs(x)))


def up(x: float) -> int:
    """The whole number above, forgiving dust."""
    return ceil(x - DUST * max(1.0, abs(x)))


class Shown:
    """Formats figures for one maker's settings. Every answer is plain text without markup."""

    def __init__(self, settings: Settings) -> None:
        self.settings = settings

    # -- plain numbers ------------------------------------------------------------------

    def number(self, x: float, places: int = 0, least: int | None = None) -> str:
        """`x` to `places` decimals, grouped by thousands; trailing zeros beyond `least` go."""
        text = f"{abs(x):,.{places}f}".replace(",", THIN)
        if least is not None and "." in text:
            whole, decimals = text.split(".")
            kept = decimals.rstrip("0").ljust(least, "0")
            text = f"{whole}.{kept}" if kept else whole
        text = text.replace(".", self.settings.decimal)
        below_zero = x < 0 and any(sign not in f"0{self.settings.decimal}" for sign in text)
        return MINUS + text if below_zero else text

    def percent(self, x: float, places: int = 0) -> str:
        """A share given in percent: "60 %"."""
        return f"{self.number(x, places, least=0)}{THIN}%"

    def percent_range(self, share: Figure) -> str:
        """ "40 to 52 %": where a share lies 9 times in 10."""
        low, high = (100 * x for x in _nine_in_ten(share))
        return f"{self.number(low)} to {self.percent(high)}"

    def odds(self, p: float) -> str:
        """Odds between 0 and 1 as a person would say them: "19 times in 20"."""
        times = times_in_twenty(p)
        if times in (0, 20):
            return "practically every time" if times else "hardly ever"
        return "once in 20" if times == 1 else f"{times} times in 20"

    def day(self, day: date) -> str:
        """A day in words: "1 March 2026"."""
        return f"{day.day} {day:%B} {day.year}".replace(" ", "\u00a0")

    # -- lengths of yarn, from metres -----------------------------------------------------

    def length(self, m: float) -> str:
        """A length of yarn, to the nearest metre or yard (a tenth below ten)."""
        return self._with_unit(self._yarn(m), nearest, self.settings.length_unit)

    def at_least_length(self, m: float) -> str:
        """A length that is left or free, rounded down."""
        return self._with_unit(self._yarn(m), down, self.settings.length_unit)

    def short_length(self, m: float) -> str:
        """A length that is missing or must be made, rounded up."""
        return self._with_unit(self._yarn(m), up, self.settings.length_unit)

    def length_range(self, figure: Figure) -> str:
        """Where a figure in m lies 9 times in 10: "1 830 to 2 310 m"."""
        low, high = (self._yarn(x) for x in _nine_in_ten(figure))
        return self._range(low, high, self.settings.length_unit)

    def length_give_or_take(self, figure: Figure) -> str:
        """A figure in m with its standard uncertainty: "497 ± 21 m"."""
        parts = (self._yarn(figure.value), self._yarn(figure.u))
        return self._give_or_take(*parts, self.settings.length_unit)

    def girth(self, mm: int) -> str:
        """Once round a reel, in m or yd: in whichever it is the rounder number, as reels are made
        and their girth is typed."""
        units = ("m", 1000.0), ("yd", 1000.0 * YARD_M)
        told = [f"{self._field(mm, per_unit)} {unit}" for unit, per_unit in units]
        return min(told if self.settings.length_unit == "m" else reversed(told), key=len)

    # -- masses, from grams ---------------------------------------------------------------

    def mass(self, g: float) -> str:
        """A mass, to the nearest gram (a tenth below ten) or tenth of an ounce, from 2 lb on in
        pounds and ounces."""
        return self._with_unit(self._wool(g), nearest, self.settings.mass_unit)

    def at_least_mass(self, g: float) -> str:
        """A mass that is left or free, rounded down."""
        return self._with_unit(self._wool(g), down, self.settings.mass_unit)

    def short_mass(self, g: float) -> str:
        """A mass that is missing or must be made, rounded up."""
        return self._with_unit(self._wool(g), up, self.settings.mass_unit)

    def mass_range(self, figure: Figure, most_g: float = inf) -> str:
        """Where a figure in g lies 9 times in 10, and never above the most it can be: "830 to
        1 050 g"."""
        low, high = (self._wool(min(x, most_g)) for x in _nine_in_ten(figure))
        return self._range(low, high, self.settings.mass_unit)

    def mass_give_or_take(self, figure: Figure) -> str:
        """A figure in g with its standard uncertainty: "940 ± 66 g"."""
        parts = (self._wool(figure.value), self._wool(figure.u))
        return self._give_or_take(*parts, self.settings.mass_unit)

    def figure(self, x: float, unit: str, u: float | None = None) -> str:
        """A figure of a working in the unit it was reckoned in: "1.809 ± 0.04 cm"; of its
        uncertainty two digits are shown, and the figure to the same place."""
        size = u / 10 if u else abs(x) / 1000
        places = min(3, max(0, -floor(log10(size)))) if size else 0
        parts = [self.number(part, places, least=0) for part in ([x] if u is None else [x, u])]
        return f"{' ± '.join(parts)}{THIN}{unit}" if unit else " ± ".join(parts)

    # -- thickness and sizes --------------------------------------------------------------

    def grist(self, tex: float) -> str:
        """A linear density in tex, in her unit of grist: "222 m/100 g"."""
        unit = self.settings.grist_unit.replace(" ", THIN)
        return f"{self.number(self.grist_value(tex))}{THIN}{unit}"

    def grist_value(self, tex: float) -> float:
        """A linear density in tex as a number in her unit of grist."""
        return from_tex(self.settings.grist_unit, tex)

    def size(self, mm: float) -> str:
        """A measure of a body or of fabric: "104 cm", "41 in"."""
        return f"{self.number(mm / self._mm_per_size, 1, least=0)}{THIN}{self.size_unit}"

    @property
    def size_unit(self) -> str:
        """The unit bodies and fabric are measured in: cm beside metres, in beside yards."""
        return "cm" if self.settings.length_unit == "m" else "in"

    # -- what a field holds: exact, without grouping --------------------------------------

    def field_number(self, x: float | None) -> str:
        """A number as she would type it; empty for None."""
        return "" if x is None else self._plain(f"{Decimal(repr(float(x))):f}")

    def field_length(self, mm: int | None) -> str:
        """A length of yarn in her unit, in as few digits as read back to the same mm."""
        return self._field(mm, 1000.0 * (1 if self.settings.length_unit == "m" else YARD_M))

    def field_size(self, mm: int | None) -> str:
        """A measure of a body or of fabric in her unit."""
        return self._field(mm, self._mm_per_size)

    def field_span(self, mm: float) -> str:
        """A width or height counted over, in her unit, exact to a hundredth of a mm."""
        return self.field_number(round(mm / self._mm_per_size, 4))

    def field_mass(self, mg: int | None) -> str:
        """A mass in her unit, in as few digits as read back to the same mg."""
        return self._field(mg, 1000.0 * (1 if self.settings.mass_unit == "g" else OUNCE_G))

    # -- how it is done -------------------------------------------------------------------

    @property
    def _mm_per_size(self) -> float:
        return MM_PER_CM if self.settings.length_unit == "m" else MM_PER_IN

    def _yarn(self, m: float) -> float:
        return m if self.settings.length_unit == "m" else m / YARD_M

    def _wool(self, g: float) -> float:
        return g if self.settings.mass_unit == "g" else g / OUNCE_G

    def _places(self, x: float, unit: str) -> int:
        small = 0 < abs(x) < 10
        return 1 if small or (unit == "oz" and abs(x) < 100) else 0

    def _with_unit(self, x: float, rounded: Rounding, unit: str) -> str:
        places = self._places(x, unit)
        x = rounded(x * 10**places) / 10**places
        if unit == "oz" and abs(x) >= POUNDS_FROM_OZ:
            return self._pounds(x, places)
        return f"{self.number(x, places, least=0)}{THIN}{unit}"

    def _pounds(self, oz: float, places: int) -> str:
        """ "5 lb 1.7 oz" """
        pounds, rest = divmod(abs(oz), OZ_PER_LB)
        sign = MINUS if oz < 0 else ""
        ounces = self.number(rest, places, least=0)
        tail = f"{THIN}{ounces}{THIN}oz" if ounces != "0" else ""
        return f"{sign}{self.number(pounds)}{THIN}lb{tail}"

    def _range(self, low: float, high: float, unit: str) -> str:
        step = _coarse_step(max(high - low, DUST))
        below, above = down(low / step) * step, up(high / step) * step
        places = 0 if step >= 1 else 1
        words = [self.number(x, places, least=0) for x in (max(0.0, below), above)]
        return f"{words[0]} to {words[1]}{THIN}{unit}"

    def _give_or_take(self, x: float, u: float, unit: str) -> str:
        places = self._places(x, unit)
        words = [self.number(part, places, least=0) for part in (x, u)]
        return f"{words[0]} ± {words[1]}{THIN}{unit}"

    def _field(self, count: int | None, per_unit: float) -> str:
        if count is None:
            return ""
        for places in range(9):
            text = f"{count / per_unit:.{places}f}"
            if round(float(text) * per_unit) == count:
                return self._plain(text)
        raise ValueError(f"{count} has no short form")

    def _plain(self, text: str) -> str:
        if "." in text:
            text = text.rstrip("0").rstrip(".")
        return text.replace(".", self.settings.decimal)


def _nine_in_ten(figure: Figure) -> tuple[float, float]:
    reach = normal_quantile((1 + NINE_IN_TEN) / 2) * figure.u
    return max(0.0, figure.value - reach), figure.value + reach


def _coarse_step(width: float) -> float:
    """A round step about a twentieth of the width or finer, so that a range is not over-exact."""
    for step in (100.0, 50.0, 20.0, 10.0, 5.0, 2.0, 1.0, 0.5, 0.2):
        if step <= width / 10:
            return step
    return 0.1


def as_typed(text: str, unit: str) -> str:
    """What was typed, with the unit it was understood in where none was typed with it."""
    return text if any(sign.isalpha() for sign in text) else f"{text} {unit}"
