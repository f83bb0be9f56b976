"""Stated odds and ranges against simulated truth: a thousand makers with one plan each.

The truth: yarn in a stitch strays from Munden's by 7 % (normal), a reel's girth by 0.5 % (normal,
shared by a maker's skeins), each skein's turns by half of one (even); all measured finished. Each
maker has between 0.8 and 1.3 times the expected need.
"""

import random
from math import sqrt
from statistics import mean

import pytest

from app.book.plan import Losses
from app.craft.odds import normal_quantile
from app.planning import reckon
from app.planning.answers import PlanAnswer
from tests.books import a_book, a_part, a_plan, a_promise, a_reading, a_skein, a_yarn

MAKERS = 1000
EXPECTED_M = 497.13
SKEINS = 3
GIRTH_M = 1.5
EXACT = Losses(0, 0, 0.0, 0)

pytestmark = pytest.mark.calibration


def reeled(code: str, turns: float):
    return a_reading(
        code,
        round(turns * GIRTH_M * 1000),
        id=f"{code} reeled",
        kind="length",
        instrument="reel",
        finished=True,
        girth_mm=round(GIRTH_M * 1000),
        turns=turns,
    )


def one_maker(chance: random.Random) -> tuple[PlanAnswer, float, float]:
    """What the program says of a maker's plan, and the metres it really needs and has."""
    turns = EXPECTED_M * chance.uniform(0.8, 1.3) / SKEINS / GIRTH_M
    codes = [f"G-{i}" for i in range(SKEINS)]
    length = turns * GIRTH_M
    book = a_book(
        a_yarn(),
        *(a_skein(code) for code in codes),
        *(reeled(code, turns) for code in codes),
        a_plan(losses=EXACT),
        a_part(),
        *(a_promise(code, round(length * 1000)) for code in codes),
        held=dict.fromkeys(codes, (length * 0.45, length)),
    )
    need = EXPECTED_M * (1 + chance.gauss(0, 0.07))
    girth = GIRTH_M * (1 + chance.gauss(0, 0.005))
    have = sum((turns + chance.uniform(-0.5, 0.5)) * girth for _ in codes)
    return reckon(book).plan("pullover"), need, have


@pytest.fixture(scope="module")
def makers() -> list[tuple[PlanAnswer, float, float]]:
    chance = random.Random(2026)
    return [one_maker(chance) for _ in range(MAKERS)]


def test_a_stated_range_of_90_percent_covers_85_to_95(makers):
    z = normal_quantile(0.95)
    hit = [abs(need - one.need.value) <= z * one.need.u for one, need, _ in makers]
    assert 0.85 <= mean(hit) <= 0.95


def test_what_is_left_at_least_is_left_nine_times_in_ten(makers):
    sure = [(one, have - need) for one, need, have in makers if one.left_at_least_m > 0]
    hit = [left >= one.left_at_least_m for one, left in sure]
    assert len(sure) > 200
    assert 0.85 <= mean(hit) <= 0.95


@pytest.mark.parametrize(("low", "high"), [(0.0, 0.2), (0.2, 0.5), (0.5, 0.8), (0.8, 1.0)])
def test_odds_come_true_as_often_as_they_say(makers, low, high):
    """Within three standard errors of the share seen, and never more than ten points off."""
    said = [(one.odds, have >= need) for one, need, have in makers if low <= one.odds <= high]
    seen, stated = mean(hit for _, hit in said), mean(odds for odds, _ in said)
    error = sqrt(max(stated * (1 - stated), 0.01) / len(said))
    assert len(said) > 60
    assert abs(seen - stated) <= min(0.1, 3 * error)
