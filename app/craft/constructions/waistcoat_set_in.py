"""The waistcoat with shaped armholes: opened at the front or closed, banded at the armholes."""

from app.craft.constructions.bands import ARMHOLE, FRONT, HEM, NECK
from app.craft.constructions.bodies import BODY_CHOICES, BODY_EASES, BODY_MEASURES
from app.craft.constructions.drawing import Construction, Drawing, Wanted
from app.craft.constructions.flat_bodies import FRONTS, fronts_as_chosen
from app.craft.constructions.necklines import NECKLINES
from app.craft.constructions.set_in import set_in_trunk
from app.craft.constructions.straight_sleeves import armhole_bands


def draw(wanted: Wanted) -> Drawing:
    """Back and front or fronts shaped at armhole and shoulder, with bands and no sleeves."""
    body = set_in_trunk(wanted)
    return fronts_as_chosen(wanted, body, armhole_bands(wanted, body))


CONSTRUCTION = Construction(
    word="waistcoat, shaped armholes",
    title="Waistcoat with shaped armholes",
    measures=BODY_MEASURES,
    draw=draw,
    choices={**BODY_CHOICES, "front": FRONTS, "neckline": NECKLINES},
    sizes={},
    eases=BODY_EASES,
    bands={HEM: 5.0, NECK: 2.5, FRONT: 3.0, ARMHOLE: 2.5},
)
