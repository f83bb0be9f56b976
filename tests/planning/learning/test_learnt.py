from math import exp, log

import pytest

from app.book.settings import Settings, StepLosses
from app.planning import reckon
from app.planning.learning import learn
from app.planning.learning.in_force import lost_in
from app.planning.learning.learnt import LATEST, Learnt
from app.planning.learning.observed import Names
from tests.books import a_book, a_fleece, a_mark, a_stint, a_yarn
from tests.planning.learning.flock import Flock


def washed(*yields, settings=None, before="skirted", after="scoured", breed="Cheviot", **fleece):
    """A fleece each, 1000 g of it washed to so many grams, and one that waits in the grease."""
    flock = Flock(settings=settings)
    for i, grams in enumerate(yields):
        flock.records.append(a_fleece(f"ewe {i}", breed=breed))
        flock.fleece(f"F-{i}", 1000, f"ewe {i}", before)
        flock.step(f"F-{i}", before, after, grams)
    flock.records.append(a_fleece("lamb", breed=breed, **fleece))
    flock.fleece("F-lamb", 1000, "lamb", before)
    return flock


def yarn_of(flock, *marks):
    return reckon(flock.book(*marks)).fleeces["lamb"].yarn_g


def test_nothing_measured_is_as_it_always_was():
    """By hand: 1000 × 0.55 × 0.93 × 0.97 × 0.98, of a breed printed with 50 to 60 %."""
    found = yarn_of(washed())
    assert found.value == pytest.approx(1000 * 0.55 * 0.93 * 0.97 * 0.98)
    assert found.causes.keys() >= {"yield of Cheviot", "waste in carding or combing"}


def test_yields_of_other_fleeces_move_the_next_one_and_narrow_it():
    before, after = yarn_of(washed()), yarn_of(washed(480, 470, 490))
    assert after.value < before.value
    assert after.u < before.u
    assert 480 / 550 < after.value / before.value < 1


def test_a_step_forward_is_told_by_hand():
    """One washing of a new fleece at 480 of 1000 g. In logs it is ln(0.48/0.55) off; the maker and
    the breed take their parts of it, the new fleece keeps its own."""
    learnt = learn(washed(480).book())
    names = Names(breed="Cheviot", fleece="lamb")
    maker, fleece, batch, error = 0.03, 0.045, 0.02, 0.6 / 480
    whole = (5 / 55) ** 2
    breed = whole - maker**2 - fleece**2 - batch**2
    shared = (maker**2 + breed) / (whole + error**2)
    assert learnt.times("scour", names).mean == pytest.approx(shared * log(0.48 / 0.55))
    ahead = learnt.times("scour", names)
    off = log(0.48 / 0.55) ** 2 / (whole + error**2)
    assert ahead.sd**2 == pytest.approx((whole - (maker**2 + breed) * shared) * (8 + off) / 9)


def test_her_own_yield_of_a_fleece_stays_in_force():
    answer = reckon(washed(480, 470, yield_pct=60.0).book()).fleeces["lamb"]
    assert answer.working[0].how == "your own yield"
    assert answer.yarn_g.value == pytest.approx(1000 * 0.60 * 0.93 * 0.97 * 0.98)


def test_the_working_says_what_was_there_before():
    answer = reckon(washed(480, 470).book()).fleeces["lamb"]
    assert answer.working[0].how == (
        "learned from 2 of your own measurements; before: 55 %, printed of Cheviot"
    )
    assert answer.working[0].standing == "measured"


def test_a_yield_never_rises_above_all_of_it():
    flock = washed(*[999] * 6, breed="hill cross")
    marks = [a_mark(f"step {2 * i + 2}", verdict="let in") for i in range(6)]
    answer = reckon(flock.book(*marks)).fleeces["lamb"]
    assert answer.working[0].value <= 100


def carded(*grams, **other):
    return washed(*grams, before="scoured", after="carded", **other)


def test_a_learned_loss_takes_the_place_of_practice_and_says_so():
    names = Names(fleece="lamb", preparation="carded")
    book = carded(900, 890, 905).book()
    found = lost_in("card", book.settings, learn(book), names)
    assert 0.07 < found.lost < 0.11
    assert found.u < 0.04
    assert (found.why, found.standing) == ("learned from 3 of your own measurements", "measured")
    assert found.step.value == pytest.approx(100 * found.lost)


def test_one_measurement_is_told_as_one():
    book = carded(900).book()
    found = lost_in("card", book.settings, learn(book), Names())
    assert found.why == "learned from one of your own measurements"


def test_a_loss_she_set_herself_stays_in_force():
    book = carded(900, 890, settings=Settings(steps=StepLosses(carded=5.0))).book()
    found = lost_in("card", book.settings, learn(book), Names())
    assert (found.lost, found.u) == (pytest.approx(0.05), 0.04)
    assert "set it yourself" in found.why
    assert yarn_of(carded(900, 890, settings=book.settings)).value == pytest.approx(
        1000 * 0.95 * 0.97 * 0.98
    )


def test_length_lost_in_finishing_has_its_own_width():
    found = lost_in("shrink", Settings(), Learnt(), Names())
    assert (found.lost, found.u, found.standing) == (pytest.approx(0.08), 0.08, "practice")


def test_wool_that_grew_is_no_loss_below_nothing():
    book = carded(1060, 1055, 1060, 1050).book()
    assert lost_in("card", book.settings, learn(book), Names()).lost == 0.0


def test_an_absurd_entry_is_set_aside_named_and_changes_nothing_until_let_in():
    good, bad = washed(540, 555, 545), washed(540, 555, 545, 40)
    told = learn(bad.book()).told
    aside = [one.observation for one in told if one.standing == "set aside"]
    assert [one.what for one in aside] == ["ewe 3, skirted to scoured"]
    assert yarn_of(bad).value == pytest.approx(yarn_of(good).value, rel=1e-12)
    let_in = yarn_of(bad, a_mark(aside[0].key, verdict="let in"))
    assert let_in.value < 0.9 * yarn_of(good).value


def test_one_struck_out_is_as_if_it_had_never_been():
    key = next(one.observation.key for one in learn(washed(540, 470).book()).told[1:])
    struck = yarn_of(washed(540, 470), a_mark(key, verdict="struck out"))
    assert struck.value == pytest.approx(yarn_of(washed(540)).value, rel=1e-12)
    back = yarn_of(washed(540, 470))
    assert back.value < struck.value


def test_how_many_observations_a_factor_has():
    book = washed(540, 545).book()
    learnt = learn(book)
    assert learnt.seen("scour") == 2
    assert learnt.seen("scour", Names(fleece="ewe 0")) == 1
    assert learnt.seen("scour", Names(breed="Cheviot")) == 2
    assert learnt.seen("scour", Names(breed="Romney", fleece="lamb")) == 0
    assert learnt.seen("card") == 0


def test_a_pace_is_learned_from_stints():
    stints = [
        a_stint(f"evening {i}", mg=None, mm=360_000, minutes=90, yarn_id="grey two-ply")
        for i in range(12)
    ]
    learnt = learn(a_book(a_yarn(), *stints))
    assert learnt.paced() == ("spin",)
    assert 180 * exp(learnt.pace("spin", "grey two-ply").mean) == pytest.approx(240, rel=0.03)
    assert learnt.pace("spin").mean < learnt.pace("spin", "grey two-ply").mean
    assert learnt.of_maker("pace of spin").sd < 0.4
    assert learnt.pace("ply").mean == 0.0


def test_only_the_latest_are_learned_from():
    stints = [a_stint(f"{i:04}", work="card", mg=70_000, minutes=60) for i in range(LATEST + 5)]
    assert learn(a_book(*stints)).seen("pace of card") == LATEST


def test_a_wash_from_raw_tells_of_both_steps_together():
    """From raw only the product is known; what it was split into still gives that product."""
    many = learn(washed(*[430] * 12, before="raw").book())
    names = Names(breed="Cheviot", fleece="lamb")
    kept = 0.85 * 0.55 * exp(many.times("skirt", names).mean + many.times("scour", names).mean)
    assert kept == pytest.approx(0.43, abs=0.006)
