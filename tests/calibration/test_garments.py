"""What garments teach, against simulated truth: a thousand makers with four garments each.

The truth: a hand N(0, 10 %) that a maker has for good, 3 % from garment to garment. The program is
told neither.
"""

import random
from dataclasses import dataclass
from datetime import date
from statistics import median

import pytest

from app.book.knitting import Took
from app.craft.odds import normal_quantile
from app.planning.needs import needs_of
from app.planning.needs_planned import planned_needs
from app.planning.yarns import Lots
from tests.books import a_book, a_part, a_plan, a_yarn

MAKERS = 1000
HAND, GARMENT = 0.10, 0.03
FINISHED = 3
TUBE = a_plan("next"), a_part("next body", "next", place="body")

pytestmark = pytest.mark.calibration


@dataclass(frozen=True)
class Seen:
    """What was planned of the first garment and of the fourth, and what each really took, in m."""

    first: float
    first_took: float
    fourth: float
    fourth_u: float
    fourth_took: float


def planned() -> float:
    plan, part = TUBE
    (need,) = planned_needs(plan, [part], Lots(a_book(a_yarn(), plan, part)))
    return need.roles[0].need.value


def makers(seed: int) -> list[Seen]:
    chance, metres = random.Random(seed), planned()
    return [_maker(chance, metres) for _ in range(MAKERS)]


def _maker(chance: random.Random, metres: float) -> Seen:
    hand = 1 + chance.gauss(0, HAND)
    took = [metres * hand * (1 + chance.gauss(0, GARMENT)) for _ in range(FINISHED + 1)]
    records = []
    for n, m in enumerate(took[:FINISHED], 1):
        known = {"state": "finished", "finished_on": date(2026, 1, n)}
        parts = (Took(f"{n} body", mg=1, mm=round(m * 1000)),)
        records += [a_plan(str(n), took=parts, **known)]
        records += [a_part(f"{n} body", str(n), place="body")]
    book = a_book(a_yarn(), *TUBE, *records)
    (need,) = needs_of(TUBE[0], [TUBE[1]], Lots(book))
    told = need.roles[0].need
    return Seen(metres, took[0], told.value, told.u, took[-1])


@pytest.fixture(scope="module")
def seen() -> list[Seen]:
    return makers(seed=17)


def test_after_three_garments_the_median_error_is_under_half_of_the_firsts(seen):
    first = median(abs(one.first / one.first_took - 1) for one in seen)
    fourth = median(abs(one.fourth / one.fourth_took - 1) for one in seen)
    assert fourth < first / 2


def test_the_range_stated_for_the_fourth_covers_85_to_95_percent(seen):
    z = normal_quantile(0.95)
    covered = sum(abs(one.fourth - one.fourth_took) < z * one.fourth_u for one in seen) / MAKERS
    assert 0.85 <= covered <= 0.95


def test_it_comes_near_the_ideal_estimator_that_is_told_the_truths_own_spreads(seen):
    """The best there is: the mean of a normal of which both spreads are known."""
    ideal = (GARMENT**2 + 1 / (1 / HAND**2 + FINISHED / GARMENT**2)) ** 0.5 * 0.6745
    fourth = median(abs(one.fourth / one.fourth_took - 1) for one in seen)
    assert fourth < 1.2 * ideal
