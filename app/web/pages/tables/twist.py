"""Twist: its factor, its angle, the length it takes up, and what it suits."""

from app.craft.counts import to_tex
from app.craft.twist import (
    INCH_CM,
    balanced_ply_twist,
    english_multiplier,
    per_inch,
    twist_angle,
)
from app.craft.twist_uses import twist_told, twist_uses
from app.web.forms.table_fields import Asked, Field
from app.web.pages.table import Answer, Example, Line, Row, Sheet, Table
from app.web.pages.table_grist import grist_fields
from app.web.pages.table_numbers import plain, ranged, short
from app.web.shown import Shown

PER = {"inch": "in an inch", "cm": "in a cm", "m": "in a metre"}
CM = {"inch": INCH_CM, "cm": 1.0, "m": 100.0}
GRISTS = (200, 300, 400, 600, 800, 1200)
TURNS = (2, 3, 4, 6, 8, 12)


def ask(asked: Asked, shown: Shown) -> Answer:
    """Everything one twist says of a yarn."""
    tex = to_tex(asked.words["system"], asked["count"])
    turns = asked["turns"] / CM[asked.words["per"]]
    told = twist_told(turns, tex)
    angle, factor, taken = told.angle, told.factor, f"{short(shown, 100 * told.take_up)} %"
    lines = (
        Line("turns in a cm", plain(shown, turns, 3)),
        Line("turns in an inch", plain(shown, per_inch(turns), 3)),
        Line("twist factor", plain(shown, factor, 3), "turns in a cm × √tex"),
        Line("English multiplier", plain(shown, english_multiplier(factor), 3), "÷ 9.567"),
        Line("angle", f"{short(shown, angle)}°", "of the surface fibres to the yarn"),
        Line("take-up", taken, "of a strand (Hearle: tan²(α ÷ 2))"),
        *(_balanced(shown, turns, plies) for plies in (2, 3)),
    )
    uses = " or ".join(one.use for one in told.uses)
    sentence = (
        f"Twist factor {plain(shown, factor, 3)}, angle {short(shown, angle, 0)}°: "
        f"{'as for ' + uses if uses else 'as for no usual use'}."
    )
    return Answer(sentence, lines, steps=told.steps)


def _balanced(shown: Shown, turns: float, plies: int) -> Line:
    balanced = per_inch(balanced_ply_twist(turns, plies))
    return Line(
        f"to balance in a {plies}-ply",
        f"{plain(shown, balanced, 3)} in an inch",
        f"{plies}/{plies + 1} of the singles (practice; Ross)",
    )


def sheets(shown: Shown) -> tuple[Sheet, ...]:
    source = "tan α = π × diameter × turns, the yarn taken as 1.27 cm³ to a gram"
    rows = tuple(
        Row(
            f"{turns} in an inch",
            tuple(
                f"{short(shown, twist_angle(turns / INCH_CM, to_tex('m/100 g', m)), 0)}°"
                for m in GRISTS
            ),
            "derived",
            source,
        )
        for turns in TURNS
    )
    columns = tuple(f"{m} m/100 g" for m in GRISTS)
    uses = tuple(
        Row(one.use, (ranged(shown, one.low, one.high),), one.standing, one.source)
        for one in twist_uses()
    )
    return (
        Sheet("What a twist suits", "Use", ("twist factor, turns in a cm × √tex",), uses),
        Sheet("Angle of twist", "Turns", columns, rows),
    )


TABLE = Table(
    word="twist",
    title="Twist",
    group="Twist",
    place=1,
    answers="How hard is this yarn twisted, and what does that suit?",
    fields=(
        Field("turns", "Turns", most=10_000),
        Field("per", "counted", "choice", options=PER),
        *grist_fields(),
    ),
    ask=ask,
    example=Example(
        {"turns": "4", "per": "inch", "count": "450", "system": "tex"},
        "4 turns in an inch at 450 tex",
        "Twist factor 33.4, angle 23°: as for jumpers, hats and most knitting.",
    ),
    sheets=sheets,
    notes=(
        "The diameter here is of the twisted yarn, not of yarn wrapped on a ruler, which would "
        "nearly double the angle.",
        "Plying against the singles' twist lets them grow again: measure the take-up of plying.",
    ),
    more="twist factor multiplier angle contraction balanced ply tpi turns per inch",
)
