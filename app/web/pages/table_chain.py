"""The chain from fleece to yarn, as two tables ask for it: forwards and backwards."""

from app.craft.figure import Figure
from app.craft.fleece import CAUSES, LOSS_U, STEPS, WATER, Losses, Making, share_kept
from app.craft.ranges import ranges
from app.web.forms.table_fields import Asked, Field
from app.web.pages.table import Line, Row, Sheet
from app.web.pages.table_grist import SYSTEMS
from app.web.pages.table_numbers import plain, ranged, short
from app.web.shown import Shown

YIELD_U = 0.10
"""How unsure a yield is that was typed for a sum and not measured (assumed)."""

STATES = {state: state for state in STEPS}

AFTER: dict[Making, str] = {
    "skirt": "skirted",
    "scour": "scoured and dry",
    "dry": "dry",
    "prepare": "carded or combed",
    "spin": "off the bobbin",
    "finish": "finished yarn",
}
"""What the wool is called once a step is done."""

LOSS_FIELDS = (
    Field("skirt", "Lost in skirting", unit="%", least=0, most=95),
    Field("yield", "Yield in scouring", unit="%", least=1, most=100),
    Field("prepare", "Lost in carding or combing", unit="%", least=0, most=95),
    Field("spin", "Lost in spinning", unit="%", least=0, most=95),
    Field("finish", "Lost in finishing", unit="%", least=0, most=95),
)

USUAL_LOSSES = {"skirt": "15", "yield": "60", "prepare": "10", "spin": "3", "finish": "0"}
"""Losses the worked examples take; your own stand in the settings."""

GRIST_FIELDS = (
    Field("count", "Grist of the yarn", "count", most=1e7),
    Field("system", "in", "choice", options=SYSTEMS),
)
STATE_FIELD = Field("state", "The wool is", "choice", options=STATES)


def losses_asked(asked: Asked) -> Losses:
    """The losses typed, as shares."""
    names = ("skirt", "prepare", "spin", "finish")
    return Losses(**{name: asked[name] / 100 for name in names})


def yield_asked(asked: Asked) -> Figure:
    """The yield typed, as a share."""
    share = asked["yield"] / 100
    return Figure(share, "share", {"yield in scouring": share * YIELD_U})


def steps_told(
    shown: Shown, start_g: float, steps: tuple[Making, ...], asked: Asked
) -> tuple[Line, ...]:
    """Grams after each step, with what the step took."""
    told, grams = [], start_g
    for step in steps:
        kept = _kept(step, asked)
        told.append(Line(AFTER[step], f"{plain(shown, grams * kept)} g", _lost(shown, grams, kept)))
        grams *= kept
    return tuple(told)


def _kept(step: Making, asked: Asked) -> float:
    """Share of the mass one step keeps."""
    if step == "scour":
        return asked["yield"] / 100
    return 1 - WATER.value if step == "dry" else 1 - asked[step] / 100


def _lost(shown: Shown, grams: float, kept: float) -> str:
    return f"{plain(shown, grams * (1 - kept), 3)} g lost" if kept < 1 else "nothing lost"


def kept_in_all(state: str, asked: Asked) -> Figure:
    """Share of wool in a state that ends as yarn, and how sure that is."""
    return share_kept(state, yield_asked(asked), losses_asked(asked))


def chain_sheets(shown: Shown) -> tuple[Sheet, ...]:
    """The steps in order, with how sure a loss is that was not measured."""
    rows = tuple(
        Row(
            AFTER[step],
            (CAUSES[step], f"± {short(shown, 100 * u)} points"),
            "practice",
            "common practice; your own weighings come first",
        )
        for step, u in LOSS_U.items()
    )
    water = Row(
        "drying wool",
        (
            "water still in it",
            f"{short(shown, 100 * WATER.value)} ± {short(shown, 100 * WATER.u)} %",
        ),
        "assumed",
        "weigh it again once it is dry",
    )
    scour = Row(
        AFTER["scour"],
        ("yield", "see the table of breeds"),
        "published",
        "printed breed tables",
    )
    losses = tuple(
        Row(one.what, (ranged(shown, one.low, one.high),), one.standing, one.source)
        for one in ranges("step_losses")
    )
    columns = ("what goes", "how sure without weighings")
    return (
        Sheet("From fleece to yarn", "After this step", columns, (*rows, scour, water), prose=True),
        Sheet("Losses of mass in print", "What", ("%",), losses),
    )
