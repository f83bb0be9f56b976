"""A garment in one piece is folded as it is worn: front and back of one width, rows level."""

import pytest

from app.book.design import Choice, Design
from app.book.gauge import Gauge
from app.book.person import Measure
from app.book.shape import Counted, Trapezoid
from app.planning import reckon
from app.planning.design import parts_from
from app.planning.picture import Picture, picture
from app.planning.picture_folded import eased
from app.planning.picture_outline import area
from app.planning.picture_piece import Piece
from tests.books import a_book, a_part, a_plan, a_yarn
from tests.planning.test_picture_layout import bounds

GAUGE = Gauge(22.0, 30.0)
STITCH = 10 / 22


def of(*parts, **plan) -> Picture:
    book = a_book(a_yarn(), a_plan(**plan), *parts)
    return picture(book, reckon(book), "pullover")


def designed(word: str, **choices: str) -> Picture:
    chosen = tuple(Choice(name, value) for name, value in choices.items())
    design = Design(word, (Measure("chest", 960), Measure("neck", 360)), (), chosen)
    return of(*parts_from(a_plan(design=design), GAUGE), design=design)


def seen(found: Picture, place: str) -> dict[str, Piece]:
    return {one.view: one for one in found.pieces if one.place == place}


def in_one_piece(opened: bool):
    """200 stitches around, joined with its sleeves to 280."""
    body = a_part("body", name="Body", shape=Counted(200, 90), place="body", in_round=not opened)
    yoke = a_part("yoke", name="Yoke", shape=Counted(280, 60), place="yoke", position=2)
    return body, yoke


def test_a_body_in_the_round_is_seen_from_the_front_and_from_behind():
    found = of(*in_one_piece(opened=False))
    body = seen(found, "body")
    assert list(body) == ["front", "back"]
    assert {round(one.width, 6) for one in body.values()} == {round(100 * STITCH, 6)}
    assert body["front"].at[1] == body["back"].at[1]
    assert bounds(body["front"])[2] < bounds(body["back"])[0]


def test_a_flat_body_is_opened_at_the_front():
    """Half of its stitches are the back, a quarter each front."""
    found = of(*in_one_piece(opened=True))
    body, yoke = seen(found, "body"), seen(found, "yoke")
    assert list(body) == list(yoke) == ["left front", "right front", "back"]
    assert body["back"].width == pytest.approx(100 * STITCH)
    assert body["left front"].width == pytest.approx(50 * STITCH)
    assert bounds(body["left front"])[2] < bounds(body["right front"])[0]
    assert len({one.at[1] for one in body.values()}) == 1
    assert len({one.at[1] for one in yoke.values()}) == 1
    for view, edge in (("left front", 2), ("right front", 0)):
        assert bounds(yoke[view])[edge] == pytest.approx(bounds(body[view])[edge])


def test_a_skein_lies_level_in_all_views():
    found = designed("cardigan, round yoke")
    for place in ("body", "yoke", "neck"):
        views = seen(found, place).values()
        assert len(views) == 3
        assert len({(one.at[1], one.bands[0].ended) for one in views}) == 1


def test_bands_stand_in_the_opening_down_to_the_hem():
    found = designed("cardigan, raglan")
    bands = [one for one in found.pieces if one.name == "front bands"]
    hem, body = seen(found, "band")["left front"], seen(found, "body")
    assert len(bands) == 2
    for one in bands:
        left, _, right, low = bounds(one)
        assert bounds(body["left front"])[2] < left < right < bounds(body["right front"])[0]
        assert low == pytest.approx(bounds(hem)[3])


def test_a_neckline_is_taken_from_the_front_alone():
    """The back of a raglan goes straight up; its front has the neck, and is as wide."""
    yoke = seen(designed("pullover, raglan"), "yoke")
    assert area(yoke["front"].outline) < area(yoke["back"].outline)
    assert yoke["front"].width == pytest.approx(yoke["back"].width)
    left = seen(designed("cardigan, raglan", neckline="V"), "yoke")["left front"].outline
    top = max(up for _, up in left)
    assert max(x for x, up in left if up == top) < max(x for x, _ in left)


def test_stitches_drawn_in_all_round_make_no_step():
    """So many for 4 cm and half as many for 2: from 3 cm on it narrows, up to 5; as much fabric."""
    stepped = [(0.0, 20.0, 0.0), (4.0, 20.0, 0.0), (4.0, 10.0, 0.0), (6.0, 10.0, 0.0)]
    assert [(up, wide) for up, wide, _ in eased(stepped)] == [(0, 20), (3, 20), (5, 10), (6, 10)]
    level = [(0.0, 20.0, 0.0), (4.0, 10.0, 0.0), (4.0, 10.0, 0.0), (6.0, 10.0, 0.0)]
    assert eased(level) == level


def test_a_hem_is_folded_with_its_body_and_a_button_band_is_not():
    hem = a_part("hem", name="Hem", shape=Counted(180, 15), place="band", position=3)
    band = a_part("edge", name="Button band", shape=Counted(120, 8), place="band", position=4)
    round_one = a_part("other", name="Edging", shape=Counted(180, 8), in_round=True, position=5)
    found = of(*in_one_piece(opened=True), hem, band, round_one)
    views = {one.part_id: [] for one in found.pieces}
    for one in found.pieces:
        views[one.part_id].append(one.view)
    assert views["hem"] == ["left front", "right front", "back"]
    assert views["edge"] == views["other"] == [""]
    back = next(one for one in found.pieces if one.part_id == "hem" and one.view == "back")
    assert back.at[0] == pytest.approx(seen(found, "body")["back"].at[0])


def test_what_has_no_yoke_or_several_bodies_is_not_folded():
    alone = a_part("body", name="Body", place="body", in_round=True)
    assert [one.view for one in of(alone).pieces] == [""]
    yoke = a_part("yoke", name="Yoke", shape=Trapezoid(1200, 400, 200), position=2)
    pair = a_part("body", name="Body", place="body", copies=2)
    assert {one.view for one in of(pair, yoke).pieces} == {""}


def test_a_yoke_may_be_folded_above_an_opened_body_beside_a_collar_in_two_pieces():
    collar = a_part("collar", name="Collar", shape=Counted(40, 10), copies=2, position=3)
    found = of(*in_one_piece(opened=True), collar)
    assert [one.view for one in found.pieces if one.part_id == "collar"] == ["", ""]
    assert len(found.pieces) == 8
