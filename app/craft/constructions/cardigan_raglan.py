"""The raglan cardigan: one piece from hem to neck, opened at the front."""

from app.craft.constructions.bands import CUFF, FRONT, HEM, NECK
from app.craft.constructions.bodies import BODY_CHOICES, BODY_EASES, BODY_MEASURES
from app.craft.constructions.drawing import Construction, Drawing, Wanted
from app.craft.constructions.necklines import NECKLINES
from app.craft.constructions.raglan import raglan
from app.craft.constructions.sleeves import SLEEVE_CHOICES, SLEEVE_EASES, SLEEVE_MEASURES


def draw(wanted: Wanted) -> Drawing:
    """Body knit flat, sleeves in the round, joined and drawn in along four lines."""
    return raglan(wanted, opened=True)


CONSTRUCTION = Construction(
    word="cardigan, raglan",
    title="Cardigan with a raglan yoke",
    measures=BODY_MEASURES + SLEEVE_MEASURES,
    draw=draw,
    choices={**BODY_CHOICES, "neckline": NECKLINES, **SLEEVE_CHOICES},
    sizes={},
    eases=BODY_EASES + SLEEVE_EASES,
    bands={HEM: 5.0, CUFF: 5.0, NECK: 2.5, FRONT: 3.0},
)
