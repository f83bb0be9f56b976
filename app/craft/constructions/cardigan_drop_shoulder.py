"""The drop-shoulder cardigan: straight back and fronts, sleeves sewn to their sides."""

from app.craft.constructions.bands import CUFF, FRONT, HEM, NECK
from app.craft.constructions.bodies import BODY_CHOICES, BODY_EASES, BODY_MEASURES
from app.craft.constructions.drawing import Construction, Drawing, Wanted
from app.craft.constructions.flat_bodies import back_and_fronts, straight_trunk
from app.craft.constructions.necklines import NECKLINES
from app.craft.constructions.sleeves import SLEEVE_CHOICES, SLEEVE_EASES, SLEEVE_MEASURES
from app.craft.constructions.straight_sleeves import straight_sleeves


def draw(wanted: Wanted) -> Drawing:
    """Back and fronts straight from hem to shoulder, sleeves as wide as the armhole is deep."""
    body = straight_trunk(wanted)
    return back_and_fronts(wanted, body, straight_sleeves(wanted, body.trunk))


CONSTRUCTION = Construction(
    word="cardigan, drop shoulder",
    title="Cardigan with drop shoulders",
    measures=BODY_MEASURES + SLEEVE_MEASURES,
    draw=draw,
    choices={**BODY_CHOICES, "neckline": NECKLINES, **SLEEVE_CHOICES},
    sizes={},
    eases=BODY_EASES + SLEEVE_EASES,
    bands={HEM: 5.0, CUFF: 5.0, NECK: 2.5, FRONT: 3.0},
)
