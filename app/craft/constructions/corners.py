"""Bands that meet: along the fronts and around the neck, and where the two come together."""

from dataclasses import replace

from app.craft.constructions.bands import FRONT, NECK, TOPS, Made, live, picked_up
from app.craft.constructions.drawing import DrawnPiece, Join, Wanted
from app.craft.constructions.necklines import Neck, V


def front_bands(wanted: Wanted, edge_cm: float) -> Made:
    """Both bands along the front edges, from the hem's cast-on to the neck."""
    rows = wanted.knit.rows
    return picked_up(
        "front bands", "band", wanted.bands[FRONT], edge_cm, in_round=False, copies=2, rows=rows
    )


def closed_neck(wanted: Wanted, neck: Neck, edge_cm: float) -> Made:
    """The band around a closed neck; at the point of a V it is mitred."""
    band, pointed = wanted.bands[NECK], neck.shape == V
    return picked_up("neck band", "neck", band, edge_cm, in_round=True, pointed=pointed)


def opened_neck(wanted: Wanted, neck: Neck, edge_cm: float) -> Made:
    """The band around the neck of a garment with front bands: it takes in their tops, or along a V
    is as deep as they are, so that its ends are sewn to them."""
    band = wanted.bands[NECK]
    if neck.shape != V:
        tops = front_top_cm(wanted)
        return picked_up("neck band", "neck", band, edge_cm, in_round=False, tops_cm=tops)
    deep = replace(band, depth_cm=wanted.bands[FRONT].depth_cm)
    made = picked_up("neck band", "neck", deep, edge_cm, in_round=False)
    return tuple((one, (*joins, _sewn_to_tops(wanted, one))) for one, joins in made)


def _sewn_to_tops(wanted: Wanted, neck: DrawnPiece) -> Join:
    has, row = neck.knit.long(neck.rows), neck.knit.long(1)
    return Join("end of the neck band", TOPS, "sewn to", has, front_top_cm(wanted), "cm", -row, row)


def yoke_neck(wanted: Wanted, stitches: int, *, opened: bool) -> Made:
    """The band knit on from a yoke's last stitches."""
    tops = front_top_cm(wanted) if opened else 0.0
    band = wanted.bands[NECK]
    return live("neck band", "neck", band, stitches, in_round=not opened, tops_cm=tops)


def front_top_cm(wanted: Wanted) -> float:
    """How far the top of a front band reaches, in cm."""
    band = wanted.bands[FRONT]
    return band.knit.long(band.knit.along(band.depth_cm))
