"""Fleece to yarn: what this wool will become."""

from app.craft.chain import forwards
from app.craft.figure import Figure
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
    """Grams and metres of yarn, with what the wool weighs on the way."""
    state, making = asked.words["state"], making_asked(asked)
    chain = forwards(Figure(asked["mass"], "g"), state, making)
    metres = chain.finished_m
    sentence = (
        f"About {plain(shown, chain.yarn_g.value)} g of yarn, {plain(shown, metres.value)} m, "
        f"give or take {plain(shown, metres.u, 2)} m."
    )
    lines = (
        *stages_told(shown, chain.yarn_g, state, making),
        Line("length", f"{plain(shown, metres.value)} m", "1000 × grams ÷ tex"),
        Line("singles in all", f"{plain(shown, chain.single_m.value)} m"),
    )
    return Answer(sentence, lines, f"Most of the doubt: {metres.chief_cause}.", chain.steps)


TABLE = Table(
    word="fleece-to-yarn",
    title="Fleece to yarn",
    group="Fleece",
    place=4,
    answers="How far does this fleece go?",
    fields=(
        Field("mass", "Weight now", "wool"),
        STATE_FIELD,
        *GRIST_FIELDS,
        *PLY_FIELDS,
        *LOSS_FIELDS,
    ),
    ask=ask,
    example=Example(
        {"mass": "404.3 g", **USUAL},
        "404.3 g raw, for a yarn of 450 tex",
        "About 180.0 g of yarn, 400.0 m, give or take 50 m.",
    ),
    sheets=chain_sheets,
    notes=("A fleece on your shelf is reckoned with your own losses on its own page.",),
    caution="Raw fleece carries dust and at times disease: wear a mask, wash your hands.",
    more="yield loss scoured raw greasy metres",
)
