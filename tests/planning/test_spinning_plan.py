from math import sqrt

import pytest

from app.book.settings import Settings, StepLosses
from app.book.spinning import Spinning
from app.book.wheel import Ratio
from app.planning import reckon
from app.planning.spinning_checks import bobbin_checks, checks_of, singles_spread
from app.planning.spinning_plan import single_meant, spinning_plan
from app.planning.spinning_targets import targets
from tests.books import (
    DAY,
    a_book,
    a_fleece,
    a_holding,
    a_part,
    a_plan,
    a_reading,
    a_skein,
    a_wheel,
    a_yarn,
)

DESIGN = Settings(steps=StepLosses(carded=10.0, finish=0.0))
"""The losses of the worked chain; spinning 3 %, length 8 % and 5 %."""


def planned(*more, settings=DESIGN, held=None, said=None, **yarn):
    said = said or Spinning(wanted_mm=400_000)
    made = a_yarn(**{"target_tex": 450.0, "spinning": said} | yarn)
    book = a_book(made, *more, settings=settings, held=held)
    return spinning_plan(book, reckon(book), made)


def test_the_worked_chain_as_a_spinning_plan():
    """400 m at 450 tex, two plies, 8 % and 5 %: 457.67 m of each single at 196.65 tex (508.5 m in
    100 g), 185.6 g of fibre, 92.8 g to a single."""
    plan = planned()
    assert plan.chain.single_tex.value == pytest.approx(196.65, abs=0.005)
    assert plan.each_m == pytest.approx(457.67, abs=0.005)
    assert plan.chain.plied_m.value == pytest.approx(434.78, abs=0.005)
    assert plan.prepared_g == pytest.approx(185.57, abs=0.005)
    assert (plan.shared.in_all, plan.shared.each_g) == (2, pytest.approx(92.78, abs=0.005))


def test_the_fleece_behind_it():
    """343.6 g skirted at a yield of 60 %, 404.3 g raw."""
    fleece = a_fleece("Bramble", yield_pct=60.0)
    chain = planned(fleece, fleece_id="Bramble").chain
    assert chain.stages["skirted"].value == pytest.approx(343.6, abs=0.1)
    assert chain.stages["raw"].value == pytest.approx(404.3, abs=0.1)


def test_twist_by_the_use_and_balanced_singles():
    """33 ÷ √450 = 1.556 turns per cm; the single half as much again. At 14 : 1 over 30 cm:
    2.333 × 30 ÷ 14 = 5.0 treadles, and 6 cm to each."""
    wheel = a_wheel("upright", ratios=(Ratio(8.0), Ratio(14.0)), bobbin_mg=100_000)
    said = Spinning(wanted_mm=400_000, wheel_id="upright")
    plan = planned(wheel, said=said)
    assert plan.targets.twist.ply_per_cm == pytest.approx(33 / sqrt(450))
    assert plan.targets.twist.singles_per_cm == pytest.approx(1.5 * 33 / sqrt(450))
    assert [one.ratio for one in plan.singles] == [8.0, 14.0]
    assert plan.singles[1].treadles == pytest.approx(1.5 * 33 / sqrt(450) * 30 / 14)
    assert plan.singles[1].draft_cm == pytest.approx(14 / (1.5 * 33 / sqrt(450)))
    assert plan.plying[0].treadles == pytest.approx(33 / sqrt(450) * 30 / 8)
    assert plan.balance.word == "balanced"
    assert (plan.spin_way, plan.ply_way) == ("Z", "S")
    assert (plan.shared.loads, plan.shared.each_g) == (2, pytest.approx(46.39, abs=0.005))


def test_the_twist_that_a_ratio_and_a_draft_put_in():
    """14 : 1 and 5.08 cm to a treadle: 2.756 turns per cm, 7 per inch; two thirds in the ply."""
    said = Spinning(wanted_mm=400_000, ratio=14.0, draft_mm=51)
    plan = planned(said=said)
    assert plan.targets.twist.singles_per_cm == pytest.approx(14 / 5.1)
    assert plan.targets.twist.ply_per_cm == pytest.approx(14 / 5.1 * 2 / 3)
    assert [one.ratio for one in plan.singles] == [14.0]
    single = planned(said=said, plies=1)
    assert single.targets.twist.ply_per_cm == pytest.approx(14 / 5.1)


def test_a_twist_of_her_own():
    said = Spinning(wanted_mm=400_000, ply_twist_per_m=200.0, singles_twist_per_m=250.0)
    plan = planned(said=said)
    assert (plan.targets.twist.ply_per_cm, plan.targets.twist.singles_per_cm) == (2.0, 2.5)
    assert plan.balance.share == pytest.approx(2.0 / (2.5 * 2 / 3))
    assert "plied too much" in plan.balance.word


def test_a_single_is_not_plied():
    plan = planned(plies=1, twist="Z")
    assert (plan.ply_way, plan.plying, plan.balance) == (None, (), None)
    assert plan.spin_way == "Z"
    assert plan.each_m == pytest.approx(400 / 0.92)
    assert [work for work, _ in plan.hours] == ["spin"]
    assert planned(plies=1).spin_way == "Z"


def test_a_chain_ply_is_three_times_one_single():
    plan = planned(said=Spinning(wanted_mm=400_000, chained=True), plies=None)
    assert plan.targets.plies == 3
    assert plan.each_m == pytest.approx(3 * 400 / 0.92 / 0.95)
    assert plan.shared.in_all == 1


def test_hours_at_the_usual_pace():
    """915.3 m of singles at 180 m an hour, 434.8 m plied at 250."""
    hours = dict(planned().hours)
    assert hours["spin"].value == pytest.approx(915.33 / 180, abs=0.001)
    assert hours["ply"].value == pytest.approx(434.78 / 250, abs=0.001)
    assert hours["spin"].u == pytest.approx(hours["spin"].value * sqrt(0.4**2 + 0.2**2))


def test_the_outcome_is_as_wide_as_her_spread():
    plan = planned()
    assert plan.outcome_tex.u == pytest.approx(450 * sqrt(2) * 0.08)
    assert plan.outcome_m.value == pytest.approx(400)
    assert plan.outcome_m.u >= 400 * sqrt(2) * 0.08


def reeled(code, turns, finished, **other):
    length = {"kind": "length", "instrument": "reel", "girth_mm": 1500, "turns": turns}
    id = f"{code} {finished}"
    return a_reading(code, round(1500 * turns), id=id, finished=finished, **length | other)


def sampled(*more, grams=49.5, **other):
    """A sample: 100 m long, reeled before and after, 10 % shorter; 495 tex for 450 unless told."""
    skein = a_skein("S-1")
    readings = reeled("S-1", 74.0740741, False), reeled("S-1", 66.6666667, True)
    return planned(skein, *readings, *more, held={"S-1": (grams, 100.0)}, **other)


def test_a_sample_corrects_the_single_and_the_shrinkage():
    """It shrank by 10 % instead of 8, which is 450 × 0.95 × 0.90 ÷ 2 = 192.4 tex for the single;
    it came to 495 tex, so the next is 450/495 of that, and as much longer."""
    plan = sampled()
    single = 450 / 2 * 0.95 * 0.90
    assert plan.sample.tex == pytest.approx(495)
    assert plan.sample.factor == pytest.approx(450 / 495)
    assert plan.chain.single_tex.value == pytest.approx(single * 450 / 495, rel=1e-5)
    assert plan.each_m == pytest.approx(400 / 0.95 / 0.90 * 495 / 450, rel=1e-5)
    wool = plan.each_m * 2 * plan.chain.single_tex.value / 1000
    assert wool == pytest.approx(180, rel=1e-6)


def test_singles_that_were_checked_take_the_blame_for_their_share():
    """Checked at 11 % too heavy, a yarn 10 % too heavy says that the target was nearly right."""
    single = 450 / 2 * 0.95 * 0.90
    bobbin = a_holding("bobbin 1", "bobbin", yarn_id="grey two-ply")
    check = a_reading("bobbin 1", round(1000 * single * 1.1), kind="grist", instrument="gauge")
    plan = sampled(bobbin, check)
    assert plan.sample.checked
    assert plan.sample.spun_tex == pytest.approx(single * 1.1, rel=1e-4)
    assert plan.sample.factor == pytest.approx(1.0, abs=1e-4)


def test_what_is_like_another_yarn_shrinks_like_it():
    other = a_yarn("fawn two-ply")
    skein = a_skein("S-1", "fawn two-ply")
    readings = reeled("S-1", 100, False), reeled("S-1", 85, True)
    said = Spinning(wanted_mm=400_000, like_yarn_id="fawn two-ply")
    plan = planned(other, skein, *readings, held={"S-1": (60.0, 127.5)}, said=said)
    assert plan.chain.plied_m.value == pytest.approx(400 / 0.85)
    assert plan.sample is None


@pytest.mark.parametrize(
    ("yarn", "words"),
    [
        ({"bought": True}, "It is bought"),
        ({"target_tex": None}, "Say what grist"),
        ({"plies": None}, "Say how many plies"),
        ({"spinning": None}, "Say how many metres"),
    ],
)
def test_what_must_be_said_first(yarn, words):
    assert planned(**yarn).startswith(words)


def test_wraps_stand_in_for_a_grist():
    """12 wraps are (12/0.376)² = 1018.6 yd/lb, 487 tex."""
    said = Spinning(wanted_mm=400_000, wraps=12.0)
    plan = planned(said=said, target_tex=None)
    assert plan.targets.tex.value == pytest.approx(487.0, abs=0.1)
    assert plan.targets.tex.u == pytest.approx(487.0 * 0.2, abs=0.1)


def test_the_metres_follow_what_garments_wait_for():
    fleece, wool = a_fleece("Bramble"), a_holding("F-1", fleece_id="Bramble", state="carded")
    yarn = a_yarn(target_tex=450.0, fleece_id="Bramble")
    book = a_book(yarn, fleece, wool, a_plan(), a_part(), held={"F-1": (900, 0)})
    found = targets(book, reckon(book), yarn)
    (line,) = [one for one in reckon(book).work if one.kind == "spin"]
    assert found.metres == line.m
    assert found.metres > 500


def test_a_single_that_is_meant_is_told_to_the_bobbin():
    yarn = a_yarn(target_tex=450.0, spinning=Spinning(wanted_mm=400_000))
    book = a_book(yarn, settings=DESIGN)
    assert single_meant(book, reckon(book), yarn) == pytest.approx(196.65, abs=0.005)
    assert single_meant(book, reckon(book), a_yarn(plies=None)) is None


def checked(bobbin, tex, number):
    id = f"{bobbin} {number}"
    return a_reading(bobbin, round(1000 * tex), id=id, kind="grist", instrument="gauge")


def test_the_spread_of_singles_is_learned_from_checks():
    """Four checks of practice at 10 %, and her own about their bobbin's mean."""
    first = a_holding("bobbin 1", "bobbin", yarn_id="grey two-ply")
    second = a_holding("bobbin 2", "bobbin", yarn_id="grey two-ply")
    even = [checked("bobbin 1", 200, i) for i in range(12)]
    book = a_book(a_yarn(), first, second, *even, checked("bobbin 2", 150, 0))
    assert singles_spread(book) == pytest.approx(sqrt(4 * 0.01 / (4 + 11)))
    assert singles_spread(a_book()) == pytest.approx(0.10)
    assert len(checks_of(book, "grey two-ply")) == 13
    assert checks_of(book, "another") == []
    (one,) = bobbin_checks(book, second)
    assert (one.tex, one.day) == (150.0, DAY)


def test_losses_that_were_learned_are_named_in_the_working():
    names = [step.what for step in planned().steps]
    assert {"Lost in spinning", "Length lost in finishing", "Pace: spin"} <= set(names)
    assert "Correction by the skeins made" in [step.what for step in sampled().steps]
