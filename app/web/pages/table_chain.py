"""The chain from fleece to yarn, as two tables ask for it: forwards and backwards."""

from app.craft.chain import Making
from app.craft.counts import to_tex
from app.craft.figure import Figure
from app.craft.fleece import CAUSES, LOSS_U, STEPS, WATER, Losses, wool_for
from app.craft.ranges import ranges
from app.web.forms.table_fields import Asked, Field
from app.web.pages.table import Line, Row, Sheet
from app.web.pages.table_grist import SYSTEMS
from app.web.pages.table_numbers import plain, ranged, short
from app.web.shown import Shown

YIELD_U = 0.10
"""How unsure a yield is that was typed for a sum and not measured, as a share (assumed)."""

STATES = {state: state for state in STEPS}

STAGES = {"raw": "raw", "skirted": "skirted", "scoured": "scoured and dry", "carded": "prepared"}
"""States of the wool on its way to yarn, and what a line calls them."""

LOSS_FIELDS = (
    Field("skirt", "Lost in skirting", unit="%", least=0, most=95),
    Field("yield", "Yield in scouring", unit="%", least=1, most=100),
    Field("prepare", "Lost in carding or combing", unit="%", least=0, most=95),
    Field("spin", "Lost in spinning", unit="%", least=0, most=95),
    Field("finish", "Lost in finishing", unit="%", least=0, most=95),
)
PLY_FIELDS = (
    Field("plies", "Plies", "whole", least=1, most=24),
    Field("shrink", "Shortens in finishing", unit="%", least=0, most=60),
    Field("take_up", "Take-up in plying", unit="%", least=0, most=60),
)
GRIST_FIELDS = (
    Field("count", "Grist of the yarn", "count", most=1e7),
    Field("system", "in", "choice", options=SYSTEMS),
)
STATE_FIELD = Field("state", "The wool is", "choice", options=STATES)

USUAL = {
    "count": "450",
    "system": "tex",
    "plies": "2",
    "shrink": "8",
    "take_up": "5",
    "state": "raw",
    "skirt": "15",
    "yield": "60",
    "prepare": "10",
    "spin": "3",
    "finish": "0",
}
"""What the worked examples take; your own losses stand in the settings."""


def making_asked(asked: Asked) -> Making:
    """How the yarn is made, from what was typed in percent."""
    yield_share = asked["yield"] / 100
    return Making(
        to_tex(asked.words["system"], asked["count"]),
        asked.whole("plies"),
        Losses(
            skirt=asked["skirt"] / 100,
            prepare=asked["prepare"] / 100,
            spin=asked["spin"] / 100,
            finish=asked["finish"] / 100,
        ),
        Figure(yield_share, "share", {"yield in scouring": yield_share * YIELD_U}),
        asked["shrink"] / 100,
        asked["take_up"] / 100,
    )


def stages_told(shown: Shown, yarn_g: Figure, state: str, making: Making) -> tuple[Line, ...]:
    """Grams the wool weighs in its state and in each that follows, until it is yarn."""
    names = {state: state} | {
        stage: word for stage, word in STAGES.items() if len(STEPS[stage]) < len(STEPS[state])
    }
    lines = (
        Line(word, f"{plain(shown, _wool(yarn_g, stage, making))} g")
        for stage, word in names.items()
    )
    return (*lines, Line("finished yarn", f"{plain(shown, yarn_g.value)} g"))


def _wool(yarn_g: Figure, state: str, making: Making) -> float:
    return wool_for(yarn_g, state, making.yield_share, making.losses).value


def chain_sheets(shown: Shown) -> tuple[Sheet, ...]:
    """How sure a loss is that was not measured, and losses as they were printed."""
    rows = tuple(
        Row(
            CAUSES[step],
            (f"± {short(shown, 100 * u)} points",),
            "practice",
            "common practice; your own weighings come first",
        )
        for step, u in LOSS_U.items()
    )
    water = f"{short(shown, 100 * WATER.value)} ± {short(shown, 100 * WATER.u)} %"
    drying = Row("water in drying wool", (water,), "assumed", "weigh it again once it is dry")
    losses = tuple(
        Row(one.what, (ranged(shown, one.low, one.high),), one.standing, one.source)
        for one in ranges("step_losses")
    )
    return (
        Sheet("Losses of mass in print", "What", ("%",), losses),
        Sheet("How sure they are without weighings", "What", ("give or take",), (*rows, drying)),
    )
