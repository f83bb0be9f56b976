"""Yokes: how many are drawn in where, and how it is told."""

import re

import pytest

from app.craft.constructions import construction_of
from app.craft.constructions.drawing import Knit
from app.craft.constructions.raglan import underarm_of
from app.craft.constructions.round_yoke import Counts, by_thirds, to_the_neck
from app.craft.constructions.wanting import want

KNIT = Knit(22, 30)


def drawn(word, measures=None, **choices):
    construction = construction_of(word)
    body = {"chest": 96, **(measures or {})}
    return construction.draw(want(construction, body, KNIT, choices=choices).wanted)


@pytest.mark.published
def test_the_percentages_of_the_round_yoke():
    """Zimmermann, Knitting Without Tears: K 200, underarm 16, joined 268, then 179, 120, 80."""
    assert underarm_of(200) == 16
    assert 200 + 2 * 66 - 4 * 16 == 268
    assert by_thirds(268) == Counts(179, 120, 80)


def test_a_round_yoke_by_measure_ends_at_the_neck():
    """270 to 80 in three equal shares: 270 × (8/27)^(1/3) = 180, then 120, then 80."""
    assert to_the_neck(270, 80) == Counts(180, 120, 80)
    made = drawn("pullover, round yoke", {"neck": 40, "upper arm": 30}, proportions="by measure")
    assert made.piece("yoke").runs[-1].stitches == 88
    assert made.piece("sleeves").runs[-1].stitches_to == 76


def test_a_round_yoke_tells_its_rounds():
    told = drawn("pullover, round yoke").piece("yoke").words
    assert told[0] == "Join body and sleeves: 308 stitches."
    assert told[1] == (
        "Work 39 rounds; in the next decrease 102 stitches evenly "
        "(knit 1, knit 2 together all along): 206 stitches."
    )


def test_a_round_yoke_by_measure_has_its_own_decreases():
    told = drawn("pullover, round yoke", {"neck": 40}, proportions="by measure").piece("yoke").words
    assert "all along" not in told[1]


def test_a_raglan_is_drawn_in_at_eight_places():
    """Back 114 − 18 = 96 to 38: 29 times; sleeve 76 − 18 = 58 to 8: 25 times; each twice a round
    for body and sleeves on either side: 308 − 4 × 29 − 4 × 25 = 92 = 2 × 38 + 2 × 8."""
    yoke = drawn("pullover, raglan").piece("yoke")
    assert yoke.runs[0].stitches - 4 * 29 - 4 * 25 == 92
    assert yoke.runs[-1].stitches_to + yoke.runs[-1].gap_to == 92
    assert yoke.words[1].startswith("Decrease one stitch of the body beside each line on the next")
    assert "After 44 rounds work the round neck as well, while the lines go on." in yoke.words


def test_a_sleeve_no_wider_than_its_top_is_not_drawn_in():
    yoke = drawn("pullover, raglan", {"upper arm": 6, "wrist": 6}).piece("yoke")
    assert not any("sleeves beside" in one for one in yoke.words)


def test_an_opened_front_has_no_opening_in_its_middle():
    """A cardigan's yoke is narrower at its ends instead."""
    yoke = drawn("cardigan, raglan").piece("yoke")
    assert not yoke.in_round
    assert yoke.runs[-1].gap_to > 0
    assert max(x for x, y in yoke.outline if y == max(high for _, high in yoke.outline)) < 20
    assert all(x != 0 for x, _ in yoke.outline)


def test_a_garment_without_hem_or_cuffs_is_cast_on_itself():
    made = drawn("pullover, raglan", {"hem depth": 0, "cuff depth": 0})
    assert {piece.name for piece in made.pieces} == {"body", "sleeves", "yoke", "neck band"}
    assert made.piece("body").edges == made.piece("sleeves").edges == "cast on"
    assert drawn("pullover, raglan").piece("body").edges == "none"


def test_a_blanket_without_a_border_is_one_piece():
    made = drawn("blanket", {"border depth": 0})
    assert [piece.name for piece in made.pieces] == ["middle"]


def test_a_waistcoat_is_opened_or_closed():
    opened = drawn("waistcoat, straight armholes")
    closed = drawn("waistcoat, straight armholes", front="closed")
    assert opened.piece("fronts").copies == 2
    assert closed.piece("front").in_round is False
    assert "front bands" not in {piece.name for piece in closed.pieces}


def test_the_rounds_of_a_round_yoke_add_up_to_its_words():
    """What is worked plain and one for each decrease, then the last round at the neck."""
    yoke = drawn("pullover, round yoke").piece("yoke")
    plain = [int(one.split()[1]) for one in yoke.words if one.startswith("Work")]
    assert sum(plain) + len(plain) == yoke.rows


@pytest.mark.parametrize("word", ["pullover, raglan", "cardigan, raglan"])
def test_a_fitted_body_in_one_piece_is_shaped_at_both_its_sides(word):
    """From hips to waist, four stitches at a time: as often as the run loses four."""
    body = drawn(word, {"waist": 80, "hips": 96}, body="fitted").piece("body")
    for run, told in zip(body.runs, body.words, strict=True):
        times = abs(run.stitches_to - run.stitches) // 4
        assert abs(run.stitches_to - run.stitches) == 4 * times
        assert "one stitch on each side of both side markers on the next" in told
        assert sum(int(one) for one in re.findall(r"(\d+) times", told)) in (times, times - 1)
