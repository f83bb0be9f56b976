"""What is told and what is reckoned are the same work: stitches counted by following the words."""

import re
from itertools import pairwise

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from app.craft.constructions import construction_of
from app.craft.constructions.drawing import Knit
from app.craft.constructions.wanting import want
from app.craft.shaping import shaping_text
from tests.craft.constructions.follow import gaps_told, rows_by_runs, rows_by_words
from tests.craft.constructions.random_bodies import WORDS, orders


def worked_by(told: str, rows: int, stitches: int, change: int) -> int:
    """Stitches worked in so many rows that change by `change` where the words say."""
    gaps = gaps_told(told)
    at = [1]
    for gap in gaps[1:]:
        at.append(at[-1] + gap)
    assert at[-1] <= rows
    return sum(stitches + change * sum(one <= row for one in at) for row in range(1, rows + 1))


def agree(told: str, rows: int, begun: int, ended: int, ends: int) -> bool:
    """Half a shaping in every row, a pair of rows for each, and 1.5 %."""
    change = ends if ended > begun else -ends
    by_run = rows * (begun + ended) / 2
    by_words = worked_by(told, rows, begun, change)
    return abs(by_words - by_run) <= ends * (rows / 2 + len(gaps_told(told))) + 0.015 * by_run


SOME_SHAPINGS, A_SHARE = 2.5, 0.04
"""How far words and runs may lie apart in a row: what is shaped at a time 2.5 times, or 4 %."""


def in_runs(rows, piece):
    """The rows of each run."""
    begun = 0
    for run in piece.runs:
        yield run, rows[begun : begun + run.rows]
        begun += run.rows


def far_apart(piece):
    """The rows in which the words lie too far from the runs."""
    by_words, by_runs = rows_by_words(piece), rows_by_runs(piece)
    assert len(by_words) == len(by_runs) == piece.rows
    found = []
    for (run, told), (_, meant) in zip(
        in_runs(by_words, piece), in_runs(by_runs, piece), strict=True
    ):
        steps = [abs(a - b) for a, b in pairwise(told)] + [abs(run.stitches - told[0])]
        most = max(SOME_SHAPINGS * max(steps), A_SHARE * max(run.stitches, run.stitches_to))
        found += [(a, b) for a, b in zip(told, meant, strict=True) if abs(a - b) > most]
        goes_on = piece.name == "yoke" and run is not piece.runs[-1]
        assert goes_on or told[-1] == run.stitches_to
    return found


KNIT = Knit(22, 30)


def drawn(word, measures=None, **choices):
    construction = construction_of(word)
    return construction.draw(want(construction, measures or {}, KNIT, choices=choices).wanted)


def test_a_triangular_shawl_grows_evenly():
    """352 stitches over 300 rows: 175 increases, 50 after a row and 125 after two, in turn."""
    (shawl,) = drawn("shawl, triangular", {"span": 160, "depth": 100}).pieces
    told = shawl.words[1]
    assert told == (
        "Increase one stitch at each end of the next and every row, 2 times, then every 2nd row, "
        "5 times, all this 25 times: 352 stitches."
    )
    assert shawl.worked == 53_100
    assert worked_by(told, 300, 2, 2) == pytest.approx(53_100, rel=0.01)


def test_a_crown_is_worked_as_it_is_told():
    crown = drawn("hat").piece("crown")
    (run,) = crown.runs
    by_words = worked_by(crown.words[0], run.rows, run.stitches + 8, -8)
    assert run.worked == pytest.approx(by_words, rel=0.015)


@pytest.mark.property
@pytest.mark.parametrize("word", WORDS)
@settings(max_examples=25, deadline=None)
@given(data=st.data())
def test_what_is_told_is_what_is_reckoned_row_for_row(word, data):
    """Every piece knit from its words alone: as many rows, the same count where a run ends, and in
    between as near as shaping goes."""
    drawing = data.draw(orders(word)).drawn()
    assume(drawing is not None)
    for piece in drawing.pieces:
        assert far_apart(piece) == [], piece


@pytest.mark.property
@given(st.integers(2, 300), st.integers(2, 200), st.integers(1, 200), st.booleans())
def test_any_run_is_told_as_it_is_reckoned(rows, stitches, events, in_round):
    assume(events <= rows)
    ended = stitches + 2 * events
    told = shaping_text(rows, stitches, ended, in_round)
    assert len(gaps_told(told)) == events
    assert agree(told, rows, stitches, ended, 2), told


@pytest.mark.parametrize("word", WORDS)
def test_a_piece_that_ends_says_what_becomes_of_its_last_stitches(word):
    """Cast off, grafted, drawn together; only what another piece is knit on from just ends."""
    goes_on = {"hem", "back hem", "front hems", "back and front hems", "cuffs", "brim", "sides"}
    goes_on |= {"legs", "heels", "feet", "body"}
    goes_on |= {"sleeves", "yoke"} if "yoke" in word or "raglan" in word else set()
    for piece in drawn(word).pieces:
        if piece.name not in goes_on or "off" in piece.edges:
            last = piece.words[-1].rstrip(".")
            last = re.sub(r", \d+ on each side$", "", last)
            assert last.endswith(("cast off loosely", "that are left", "that are left, loosely"))


def test_the_last_stitches_of_small_things():
    assert drawn("socks").piece("toes").words[-1] == "Graft the 6 + 6 stitches that are left."
    hands, thumbs = (drawn("mittens").piece(name) for name in ("hands", "thumbs"))
    assert hands.words[-1] == "Draw the yarn through the 8 stitches that are left."
    assert thumbs.words[-1] == "Draw the yarn through the 10 stitches that are left."
    cap = drawn("pullover, set-in sleeve").piece("sleeves")
    assert cap.words[-1] == "Cast off the 20 stitches that are left."


def test_a_v_parts_the_front_and_a_pattern_is_named():
    front = drawn("pullover, drop shoulder", neckline="V").piece("front")
    assert "Part it in the middle for the neck; work each side alone." in front.words
    scarf = drawn("scarf", pattern="garter stitch").piece("scarf")
    assert scarf.words[1] == "Work 510 rows on 48 stitches, in garter stitch."
