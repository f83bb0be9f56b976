"""Sleeves of a drop shoulder: straight across at the top and sewn to the sides of the body."""

from app.craft.constructions.bands import ARMHOLE, joins_of, picked_up
from app.craft.constructions.bodies import Trunk
from app.craft.constructions.drawing import Join, Wanted
from app.craft.constructions.flat_bodies import Arms, FlatBody
from app.craft.constructions.pieces import edging, piece
from app.craft.constructions.sleeves import cuff_below, sleeve_of, sleeve_places


def straight_sleeves(wanted: Wanted, trunk: Trunk) -> Arms:
    """Both sleeves, as wide at the top as front and back are deep at the armhole together."""
    knit = wanted.knit
    armhole = 2 * knit.long(trunk.armhole)
    sleeve = sleeve_of(wanted, knit.pairs(armhole), every=2)
    cuffs = cuff_below(wanted, sleeve, in_round=False)
    edges = edging(cast_on=not cuffs, cast_off=True, sewn=True)
    made = piece("sleeves", "sleeve", (sleeve.run,), knit, copies=2, edges=edges)
    one = knit.wide(1)
    join = Join(
        "sleeve top", "armhole", "sewn to", knit.wide(sleeve.upper), armhole, "cm", -one, one
    )
    return Arms((*cuffs, made), (join,), sleeve_places(wanted, sleeve))


def armhole_bands(wanted: Wanted, body: FlatBody) -> Arms:
    """Bands around the armholes of a garment without sleeves."""
    edge = 2 * body.armhole_edge_cm
    made = picked_up("armhole bands", "band", wanted.bands[ARMHOLE], edge, in_round=True, copies=2)
    return Arms(tuple(one for one, _ in made), joins_of(made))
