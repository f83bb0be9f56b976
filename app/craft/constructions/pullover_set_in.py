"""The pullover with set-in sleeves: armholes shaped in to the shoulders, and caps to fit them."""

from app.craft.constructions.bands import CUFF, HEM, NECK
from app.craft.constructions.bodies import BODY_CHOICES, BODY_EASES, BODY_MEASURES
from app.craft.constructions.drawing import Construction, Drawing, Wanted
from app.craft.constructions.flat_bodies import back_and_front
from app.craft.constructions.necklines import NECKLINES
from app.craft.constructions.set_in import set_in_sleeves, set_in_trunk
from app.craft.constructions.sleeves import SLEEVE_CHOICES, SLEEVE_EASES, SLEEVE_MEASURES


def draw(wanted: Wanted) -> Drawing:
    """Back and front shaped at armhole and shoulder, sleeves with caps."""
    body = set_in_trunk(wanted)
    return back_and_front(wanted, body, set_in_sleeves(wanted, body))


CONSTRUCTION = Construction(
    word="pullover, set-in sleeve",
    title="Pullover with set-in sleeves",
    measures=BODY_MEASURES + SLEEVE_MEASURES,
    draw=draw,
    choices={**BODY_CHOICES, "neckline": NECKLINES, **SLEEVE_CHOICES},
    sizes={},
    eases=BODY_EASES + SLEEVE_EASES,
    bands={HEM: 5.0, CUFF: 5.0, NECK: 2.5},
)
