"""Yarn to fleece: how much wool a yarn needs, and how its singles are to be spun."""

from app.craft.chain import backwards
from app.craft.counts import from_tex
from app.craft.fleece import wool_for
from app.web.forms.table_fields import Asked, Field
from app.web.pages.table import Answer, Example, Line, Table
from app.web.pages.table_chain import (
    GRIST_FIELDS,
    LOSS_FIELDS,
    PLY_FIELDS,
    STATE_FIELD,
    USUAL,
    chain_sheets,
    making_asked,
    stages_told,
)
from app.web.pages.table_numbers import plain
from app.web.shown import Shown


def ask(asked: Asked, shown: Shown) -> Answer:
    """Wool to begin with, and length and grist of the singles."""
    state, making = asked.words["state"], making_asked(asked)
    chain = backwards(asked["length"], making)
    wool = wool_for(chain.yarn_g, state, making.yield_share, making.losses)
    tex, singles = chain.single_tex.value, plain(shown, chain.single_m.value)
    sentence = (
        f"{plain(shown, wool.value)} g {state} for {plain(shown, chain.yarn_g.value)} g of yarn: "
        f"{singles} m of singles at {plain(shown, tex)} tex."
    )
    lines = (
        *stages_told(shown, chain.yarn_g, state, making),
        Line("to ply", f"{plain(shown, chain.plied_m.value)} m"),
        Line("singles in all", f"{singles} m", f"for {making.plies} plies"),
        Line("grist of a single", f"{plain(shown, tex)} tex"),
        Line("grist of a single", f"{plain(shown, from_tex('m/100 g', tex))} m/100 g"),
    )
    return Answer(sentence, lines, steps=chain.steps)


TABLE = Table(
    word="yarn-to-fleece",
    title="Yarn to fleece",
    group="Fleece",
    place=5,
    answers="How much fleece does this much yarn need, and how are its singles spun?",
    fields=(
        Field("length", "Yarn wanted", "yarn"),
        *GRIST_FIELDS,
        *PLY_FIELDS,
        STATE_FIELD,
        *LOSS_FIELDS,
    ),
    ask=ask,
    example=Example(
        {"length": "400 m", **USUAL},
        "400 m of a 2-ply of 450 tex, from raw fleece",
        "404.3 g raw for 180.0 g of yarn: 915.3 m of singles at 196.7 tex.",
    ),
    sheets=chain_sheets,
    notes=("Spin a little more than this: ends left on bobbins are not lost, but not plied.",),
    more="singles plies spin raw greasy how much to buy",
)
