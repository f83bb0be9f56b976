"""The thickness of a yarn as tables ask for it and tell it."""

from app.craft.counts import COUNTS, Count, from_tex
from app.web.forms.table_fields import Field
from app.web.pages.table import Line
from app.web.pages.table_numbers import plain
from app.web.shown import Shown

SYSTEMS = {name: name for name in ("m/100 g", "yd/lb", *COUNTS)}
"""Count systems to choose from, those a handspinner uses first."""

USUAL = ("tex", "m/100 g", "yd/lb")


def grist_fields(label: str = "Grist or count") -> tuple[Field, Field]:
    """Two blanks: a yarn's number, and the system it is in."""
    return (
        Field("count", label, "count", most=1e7),
        Field("system", "in", "choice", options=SYSTEMS),
    )


def grist_said(shown: Shown, tex: float) -> str:
    """A yarn in the three usual ways: "450.7 tex, 221.9 m/100 g, 1101 yd/lb"."""
    return ", ".join(f"{plain(shown, from_tex(name, tex))} {name}" for name in USUAL)


def grist_lines(shown: Shown, tex: float) -> tuple[Line, ...]:
    """The same, a line each."""
    return tuple(
        Line(name, plain(shown, from_tex(name, tex)), factor(shown, COUNTS[name])) for name in USUAL
    )


def factor(shown: Shown, count: Count) -> str:
    """How tex and the system are tied: "tex = 590.5 ÷ number"."""
    sign = "×" if count.kind == "direct" else "÷"
    k = f"{count.k:.6g}".replace(".", shown.settings.decimal)
    return f"tex = {k} {sign} number"
