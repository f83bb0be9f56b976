"""The work list follows the reckoning: from a shortfall back to the fleece."""

from dataclasses import replace
from math import ceil

import pytest

from app.book.plan import Losses, RoleYarn
from app.book.settings import Settings, StepLosses
from app.book.shape import Metres
from app.planning import reckon
from tests.books import a_book, a_fleece, a_holding, a_part, a_plan, a_skein, a_yarn, an_errand

GREY = "grey two-ply"
EXACT = Losses(0, 0, 0.0, 0)
PRINTED_CHAIN = Settings(steps=StepLosses(skirt=15.0, carded=10.0, spin=3.0, finish=0.0))


def wool(state="carded", grams=1000.0, metres=400, yield_pct=60.0, **yarn):
    """A plan for so many metres of a 450 tex yarn to be spun from one fleece."""
    fleece = a_fleece("Bramble", yield_pct=yield_pct)
    holding = a_holding("F-1", fleece_id="Bramble", state=state)
    made = a_yarn(GREY, **{"fleece_id": "Bramble", "target_tex": 450.0} | yarn)
    plan, part = a_plan(losses=EXACT), a_part(shape=Metres(metres * 1000))
    book = a_book(fleece, holding, made, plan, part, held={"F-1": (grams, 0)})
    return replace(book, settings=PRINTED_CHAIN)


@pytest.mark.published
def test_400_m_at_450_tex_is_180_g_and_its_wool_behind():
    """The worked chain: 180 g, 185.6 g prepared, 404.3 g raw at 15, 40, 10 and 3 % (derived)."""
    (line,) = reckon(wool()).work
    assert (line.kind, line.m, line.g) == ("spin", 400, 180)
    assert (line.prepared_g, line.raw_g) == (186, 405)
    assert (line.fleece, line.plan, line.parts) == ("Bramble", "pullover", ("body",))


def test_raw_wool_must_be_washed_first():
    wash, spin = reckon(wool("raw")).work
    assert (wash.kind, wash.g, wash.fleece) == ("wash", 405, "Bramble")
    assert spin.kind == "spin"


@pytest.mark.parametrize(
    ("state", "kind"), [("skirted", "wash"), ("drying", "wash"), ("scoured", "card")]
)
def test_what_comes_before_spinning(state, kind):
    assert reckon(wool(state)).work[0].kind == kind


def test_a_fleece_too_small_gives_what_it_has_and_the_rest_is_bought():
    spin, buy = reckon(wool(grams=100.0)).work
    assert spin.g == ceil(100 * 0.97)
    assert buy.kind == "buy"
    assert spin.m + buy.m == pytest.approx(400, abs=1)
    assert reckon(wool(grams=100.0)).fleeces["Bramble"].called_for_g == pytest.approx(100)


def test_a_fleece_called_on_already_gives_the_next_plan_nothing():
    book = wool(grams=185.6)
    scarf = a_plan("scarf", priority=2, losses=EXACT)
    strip = a_part("strip", "scarf", shape=Metres(100_000))
    book = replace(book, plans=(*book.plans, scarf), parts=(*book.parts, strip))
    assert [(one.kind, one.plan) for one in reckon(book).work] == [
        ("spin", "pullover"),
        ("buy", "scarf"),
    ]


def test_an_empty_fleece_means_buying():
    (buy,) = reckon(wool(grams=0.0)).work
    assert (buy.kind, buy.m) == ("buy", 400)


def test_a_fleece_is_called_on_once_by_priority():
    book = wool(grams=200.0)
    scarf = a_plan("scarf", priority=2, losses=EXACT)
    book = replace(
        book,
        plans=(*book.plans, scarf),
        parts=(*book.parts, a_part("strip", "scarf", shape=Metres(100_000))),
    )
    work = [(one.kind, one.plan, one.m) for one in reckon(book).work]
    assert work[:2] == [("spin", "pullover", 400), ("spin", "scarf", 32)]
    assert work[2] == ("buy", "scarf", 69)


def test_bought_yarn_comes_in_whole_balls():
    yarn = a_yarn(GREY, bought=True, ball_mg=50_000, ball_mm=125_000)
    book = a_book(yarn, a_plan(losses=EXACT), a_part(shape=Metres(400_000)))
    (line,) = reckon(book).work
    assert (line.kind, line.balls, line.m, line.g) == ("buy", 4, 500, 200)


def test_no_yarn_chosen_is_said():
    book = a_book(a_plan(yarns=(), losses=EXACT), a_part(shape=Metres(400_000)))
    (line,) = reckon(book).work
    assert (line.kind, line.m, line.g) == ("buy", 400, None)
    assert "Choose" in line.text


def test_free_yarn_is_used_before_any_is_spun():
    book = wool()
    skein = a_skein("G-1")
    held = a_book(skein, held={"G-1": (45, 100)}).events
    events = tuple(replace(one, seq=9) for one in held)
    book = replace(book, holdings=(*book.holdings, skein), events=(*book.events, *events))
    (line,) = reckon(book).work
    assert line.m == 300


def test_a_plan_that_is_not_begun_asks_for_nothing():
    assert reckon(a_book(a_yarn(), a_plan())).work == ()


def test_her_own_lines_come_last_and_may_be_done():
    book = a_book(an_errand(text="Buy soap", kind="buy", plan_id=None))
    (line,) = reckon(book).work
    assert (line.text, line.errand_id, line.done) == ("Buy soap", "soap", False)


def test_combed_wool_loses_more_on_its_way():
    carded = reckon(wool("carded")).work[0].raw_g
    combed = reckon(wool("combed")).work[0].raw_g
    assert combed > carded


def test_another_yarn_for_a_part_is_its_own_line():
    book = wool()
    cream = a_yarn("cream", bought=True, ball_mg=50_000, ball_mm=125_000)
    cuff = a_part("cuff", position=2, shape=Metres(20_000), yarns=(RoleYarn("main", "cream"),))
    book = replace(book, yarns=(*book.yarns, cream), parts=(*book.parts, cuff))
    assert [(one.kind, one.parts) for one in reckon(book).work] == [
        ("spin", ("body",)),
        ("buy", ("cuff",)),
    ]


def test_what_is_nearest_to_yarn_is_called_for_first():
    """100 g carded give 97 g of the 180; the other 83 g come from the raw wool."""
    book = wool("raw")
    part = a_holding("F-2", "fibre", fleece_id="Bramble", state="carded")
    held = a_book(part, held={"F-2": (100, 0)}).events
    events = (*book.events, *(replace(one, seq=9) for one in held))
    book = replace(book, holdings=(*book.holdings, part), events=events)
    wash, spin = reckon(book).work
    assert (spin.g, spin.state, spin.fleece_g) == (180, None, 100 + wash.g)
    assert wash.g == ceil(83 / (0.85 * 0.6 * 0.9 * 0.97))
    assert (wash.holding_id, wash.state) == ("F-1", "raw")


def test_the_list_and_the_shortfall_are_the_same_metres():
    book = wool()
    answer = reckon(book).plan("pullover")
    assert reckon(book).work[0].m == answer.to_make_m == 400
    assert reckon(book).work[0].g == pytest.approx(answer.to_make_g)
