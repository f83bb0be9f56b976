"""Yarn to fleece: how much wool a yarn needs, and how its singles are to be spun."""

from app.craft.counts import from_tex, to_tex
from app.craft.fleece import plied_length, single_length, single_tex, steps_from, yarn_mass
from app.web.forms.table_fields import Asked, Field
from app.web.pages.table import Answer, Example, Line, Table
from app.web.pages.table_chain import (
    GRIST_FIELDS,
    LOSS_FIELDS,
    STATE_FIELD,
    USUAL_LOSSES,
    chain_sheets,
    kept_in_all,
    steps_told,
)
from app.web.pages.table_numbers import plain
from app.web.shown import Shown


def ask(asked: Asked, shown: Shown) -> Answer:
    """Wool to begin with, and length and grist of each single."""
    yarn = yarn_mass(asked["length"], to_tex(asked.words["system"], asked["count"]))
    state = asked.words["state"]
    wool = yarn / kept_in_all(state, asked).value
    single, tex = _single(asked, yarn)
    sentence = (
        f"{plain(shown, wool)} g {state} for {plain(shown, yarn)} g of yarn: "
        f"{asked.whole('plies')} singles of {plain(shown, single)} m at {plain(shown, tex)} tex."
    )
    lines = (
        Line(state, f"{plain(shown, wool)} g"),
        *steps_told(shown, wool, steps_from(state), asked),
        Line("to ply", f"{plain(shown, plied_length(asked['length'], asked['shrink'] / 100))} m"),
        Line("each single", f"{plain(shown, single)} m", f"{plain(shown, tex)} tex"),
        Line("grist of a single", f"{plain(shown, from_tex('m/100 g', tex))} m/100 g"),
    )
    return Answer(sentence, lines)


def _single(asked: Asked, yarn_g: float) -> tuple[float, float]:
    """Metres and tex of each single, off the bobbin."""
    plied = plied_length(asked["length"], asked["shrink"] / 100)
    metres = single_length(plied, asked["take_up"] / 100)
    spun = yarn_g / (1 - asked["finish"] / 100)
    return metres, single_tex(spun, asked.whole("plies"), metres)


TABLE = Table(
    word="yarn-to-fleece",
    title="Yarn to fleece",
    group="Fleece",
    place=5,
    answers="How much fleece does this much yarn need, and how are its singles spun?",
    fields=(
        Field("length", "Yarn wanted", "yarn"),
        *GRIST_FIELDS,
        Field("plies", "Plies", "whole", least=1, most=24),
        Field("shrink", "Shortens in finishing", unit="%", least=0, most=60),
        Field("take_up", "Take-up in plying", unit="%", least=0, most=60),
        STATE_FIELD,
        *LOSS_FIELDS,
    ),
    ask=ask,
    example=Example(
        {
            "length": "400 m",
            "count": "450",
            "system": "tex",
            "plies": "2",
            "shrink": "8",
            "take_up": "5",
            "state": "raw",
            **USUAL_LOSSES,
        },
        "400 m of a 2-ply of 450 tex, from raw fleece",
        "404.3 g raw for 180.0 g of yarn: 2 singles of 457.7 m at 196.7 tex.",
    ),
    sheets=chain_sheets,
    notes=("Spin a little more than this: ends left on bobbins are not lost, but not plied.",),
    more="singles plies spin raw greasy how much to buy",
)
