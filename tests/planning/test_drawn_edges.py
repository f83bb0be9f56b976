"""Every edge of a drawn garment counted once: against what its words tell to cast on, pick up and
cast off, and against the lengths of its seams."""

import re

import pytest

from app.book.design import Choice, Design
from app.book.gauge import Gauge
from app.book.person import Measure
from app.book.plan import Plan
from app.craft.constructions import construction_of, constructions
from app.craft.constructions.wanting import choices_of
from app.craft.figure import Figure
from app.planning.design import drawing_of, parts_from
from app.planning.edges import cast_off_stitches, edges, seam_m
from app.planning.schedule import schedule
from tests.craft.constructions.follow import Knitter

GAUGE = Gauge(22.0, 30.0)
LOOP = Figure(1.8091, "cm")
LIVE = {
    "body": "hem",
    "sides": "brim",
    "crown": "sides",
    "hands": "cuffs",
    "legs": "cuffs",
    "heels": "legs",
    "feet": "heels",
    "toes": "feet",
    "thumbs": "hands",
    "sleeves": "cuffs",
    "yoke": "body",
    "back": ("back hem", "back and front hems"),
    "front": "back and front hems",
    "fronts": "front hems",
    "neck band": "yoke",
}
"""What each piece that is not cast on or picked up is knit on from."""


def every_way():
    for word, one in constructions().items():
        yield word, ()
        for name, values in choices_of(one).items():
            if name in ("neckline", "front", "proportions", "sleeve"):
                yield from ((word, (Choice(name, value),)) for value in values[1:])


WAYS = [*every_way()]


def drawn(word, choices=(), mm=None):
    needs_chest = "chest" in construction_of(word).measures
    chest = {"chest": 960} if needs_chest else {}
    measures = tuple(Measure(*one) for one in (chest | (mm or {})).items())
    plan = Plan("p", "A plan", gauge=GAUGE, design=Design(word, measures, (), choices))
    drawing = drawing_of(plan.design, GAUGE)
    return list(zip(parts_from(plan, GAUGE), drawing.pieces, strict=True))


def told(piece):
    """Stitches cast on, picked up, cast off, and cast off loosely, as the words have it."""
    words = "\n".join(piece.words)
    on = sum(int(one) for one in re.findall(r"Cast on (\d+)", words))
    up = sum(int(one) for one in re.findall(r"Pick up (\d+)\b(?! stitches along either)", words))
    off = sum(int(one) for one in re.findall(r"[Cc]ast off (?:the )?(\d+)", words))
    off += sum(
        2 * int(one) - int(one) for one in re.findall(r"Cast off (\d+) .* each front", words)
    )
    loose = 0
    if "cast off loosely" in words:
        knitter = Knitter(piece.runs[0].stitches)
        for line in piece.words:
            knitter.follow(line)
        loose = knitter.stitches
    if "left, loosely" in words:
        off, loose = 0, off
    return on, up, off, loose


@pytest.mark.parametrize(("word", "choices"), WAYS)
def test_what_is_told_to_be_cast_on_and_off_is_counted_once(word, choices):
    """A cast-on takes a row and 3.3 widths, a pick-up a row, a cast-off 1.15 rows or 2; within 3 %
    or four stitches, which a V loses beside the steps of a shoulder."""
    for part, piece in drawn(word, choices):
        runs = schedule(part.shape, part.gauge or GAUGE)
        on, up, off, loose = told(piece)
        rows = on + up + 1.15 * off + 2.0 * loose
        wanted = rows * LOOP.value / 100 + 3.3 * on / 220
        sewn = 2.0 * seam_m(part, runs, GAUGE)
        assert edges(part, runs, GAUGE, LOOP).value - sewn == pytest.approx(
            wanted, rel=0.03, abs=4.01 * 1.15 * LOOP.value / 100
        )


@pytest.mark.parametrize(("word", "choices"), WAYS)
@pytest.mark.parametrize("depth", [None, 0])
def test_every_piece_begins_once(word, choices, depth):
    """Cast on, picked up, or knit on from another that is there and is not cast off there."""
    bands = construction_of(word).bands or {}
    mm = {} if depth is None else {f"{band} depth": depth for band in bands}
    pieces = {piece.name: piece for _, piece in drawn(word, choices, mm)}
    for piece in pieces.values():
        if piece.edges.startswith(("cast on", "picked up")):
            continue
        below = LIVE[piece.name]
        below = [one for one in ((below,) if isinstance(below, str) else below) if one in pieces]
        assert below, f"{piece.name} is knit on from nothing"
        assert not any("off" in pieces[one].edges for one in below)


def seams(word, **choices):
    chosen = tuple(Choice(*one) for one in choices.items())
    return sum(
        part.copies * seam_m(part, schedule(part.shape, GAUGE), GAUGE)
        for part, _ in drawn(word, chosen)
    )


def test_the_seams_of_a_drop_shoulder_pullover_by_hand():
    """Each in m: 115 rows at either side; sleeves of 15 and 114 rows; two armholes of 2 × 68 rows;
    shoulders of 38 stitches. A side is sewn to the armhole over the rows of it, so of the sides no
    more is left than what lies below."""
    made = {piece.name: piece for _, piece in drawn("pullover, drop shoulder")}
    row, stitch = 1 / 300, 1 / 220
    armhole = made["back"].rows - made["back"].runs[0].rows
    below = made["back"].runs[0].rows + made["back and front hems"].rows
    sleeve = made["sleeves"].rows + made["cuffs"].rows
    tops = made["sleeves"].runs[-1].stitches_to * stitch
    sewn_in = 2 * (tops + 2 * armhole * row) / 2
    shoulders = made["back"].runs[-1].stitches_to * stitch
    by_hand = 2 * below * row + 2 * sleeve * row + sewn_in + shoulders
    assert seams("pullover, drop shoulder") == pytest.approx(by_hand, rel=0.001)


def test_a_cardigan_has_the_seams_of_a_pullover():
    """Its fronts are sewn at one side each."""
    closed, opened = seams("pullover, set-in sleeve"), seams("cardigan, set-in sleeve")
    assert opened == pytest.approx(closed, rel=0.02)


def test_what_is_knit_in_one_piece_has_no_seams():
    assert seams("cardigan, raglan") == seams("pullover, round yoke") == 0


def test_by_hand_what_a_raglan_pullover_casts_on_and_off():
    """Hem 204 and cuffs 2 × 40 are cast on; the neck 20 + 54 is cast off and 116 picked up along
    it, which the band casts off loosely."""
    made = {part.name: (part, piece) for part, piece in drawn("pullover, raglan")}
    on = {
        name: part.copies * piece.runs[0].stitches
        for name, (part, piece) in made.items()
        if part.edges.startswith("cast on")
    }
    assert on == {"hem": 204, "cuffs": 80}
    yoke, runs = made["yoke"][0], schedule(made["yoke"][0].shape, GAUGE)
    assert cast_off_stitches(yoke, runs) == 20 + 54
    assert made["neck band"][0].edges == "picked up, stretchy cast-off"
