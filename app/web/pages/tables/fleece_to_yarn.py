"""Fleece to yarn: what this wool will become."""

from app.craft.counts import to_tex
from app.craft.fleece import steps_from
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
    """Grams of yarn, metres at the grist, and what goes at each step."""
    state, mass = asked.words["state"], asked["mass"]
    yarn = kept_in_all(state, asked).scaled(mass, "g")
    metres = yarn.scaled(1000 / to_tex(asked.words["system"], asked["count"]), "m")
    sentence = (
        f"About {plain(shown, yarn.value)} g of yarn, {plain(shown, metres.value)} m, "
        f"give or take {plain(shown, metres.u, 2)} m."
    )
    lines = (
        Line(state, f"{plain(shown, mass)} g"),
        *steps_told(shown, mass, steps_from(state), asked),
        Line("length", f"{plain(shown, metres.value)} m", "1000 × grams ÷ tex"),
    )
    return Answer(sentence, lines, f"Most of the doubt: {yarn.chief_cause}.")


TABLE = Table(
    word="fleece-to-yarn",
    title="Fleece to yarn",
    group="Fleece",
    place=4,
    answers="How far does this fleece go?",
    fields=(Field("mass", "Weight now", "wool"), STATE_FIELD, *GRIST_FIELDS, *LOSS_FIELDS),
    ask=ask,
    example=Example(
        {"mass": "404.3 g", "state": "raw", "count": "450", "system": "tex", **USUAL_LOSSES},
        "404.3 g raw, for a yarn of 450 tex",
        "About 180.0 g of yarn, 400.0 m, give or take 50 m.",
    ),
    sheets=chain_sheets,
    notes=("A fleece on your shelf is reckoned with your own losses on its own page.",),
    caution="Raw fleece carries dust and at times disease: wear a mask, wash your hands.",
    more="yield loss scoured raw greasy metres",
)
