"""What is told and what is reckoned are the same work: stitches counted by following the words."""

import re

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from app.craft.constructions import construction_of
from app.craft.constructions.drawing import Knit
from app.craft.constructions.wanting import want
from app.craft.shaping import shaping_text
from tests.craft.constructions.random_bodies import WORDS, orders

GAP = r"every (?:(\d+)\w\w )?(?:row|round), (?:(\d+) times|once)"


def gaps_told(told: str) -> list[int]:
    """The rows from each shaping to the one after it, the first falling on row 1."""
    begun, _, after = told.partition(", all this ")
    turn = _listed(begun)
    if not after:
        return turn
    times = int(after.split()[0])
    return turn * times + _listed(after, first=False)


def _listed(told: str, first: bool = True) -> list[int]:
    found = [1] if first and re.search(r"the next (row|round)\b", told) else []
    for gap, times in re.findall(GAP, told):
        found += [int(gap or 1)] * int(times or 1)
    return found


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


def tells(told: str, run, ends: int) -> bool:
    """Whether these words are this run's, with no odd stitch in its last row."""
    begun = re.match("(In|De)crease one stitch (at|on)", told)
    same = f": {run.stitches_to} stitches" in told
    shaped = abs(run.stitches_to - run.stitches)
    return bool(begun and same and shaped and len(gaps_told(told)) * ends == shaped)


KNIT = Knit(22, 30)


def drawn(word, measures=None):
    construction = construction_of(word)
    return construction.draw(want(construction, measures or {}, KNIT).wanted)


def test_a_triangular_shawl_grows_evenly():
    """352 stitches over 300 rows: 175 increases, 50 after a row and 125 after two, in turn."""
    (shawl,) = drawn("shawl, triangular", {"span": 160, "depth": 100}).pieces
    (told,) = shawl.words
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
@settings(max_examples=20, deadline=None)
@given(data=st.data())
def test_words_and_runs_are_the_same_work(word, data):
    """Every run that is told as one stitch so often."""
    drawing = data.draw(orders(word)).drawn()
    assume(drawing is not None)
    for piece in drawing.pieces:
        ends = 1 if piece.name == "fronts" else 2
        for run in piece.runs:
            for told in piece.words:
                if tells(told, run, ends):
                    assert agree(told, run.rows, run.stitches, run.stitches_to, ends), told


@pytest.mark.property
@given(st.integers(2, 300), st.integers(2, 200), st.integers(1, 200), st.booleans())
def test_any_run_is_told_as_it_is_reckoned(rows, stitches, events, in_round):
    assume(events <= rows)
    ended = stitches + 2 * events
    told = shaping_text(rows, stitches, ended, in_round)
    assert len(gaps_told(told)) == events
    assert agree(told, rows, stitches, ended, 2), told


@pytest.mark.property
@pytest.mark.parametrize("word", ["pullover, set-in sleeve", "cardigan, set-in sleeve"])
@settings(max_examples=20, deadline=None)
@given(data=st.data())
def test_what_is_cast_off_at_the_shoulders_is_the_shoulders(word, data):
    drawing = data.draw(orders(word)).drawn()
    assume(drawing is not None)
    back = drawing.piece("back")
    steps = [one for one in back.words if "in even steps" in one]
    assume(steps)
    cast_off = int(steps[-1].split()[2]) + int(back.words[-1].split()[3])
    assert cast_off == back.runs[-1].stitches
