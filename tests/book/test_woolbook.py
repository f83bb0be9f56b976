"""The rules of the wool book: every gram that leaves one holding is found in another."""

from dataclasses import replace
from datetime import date

import pytest
from hypothesis import given

from app.book import woolbook
from app.book.errors import BadAmount, CannotUndo, HoldsTooLittle, MakesTooMuch, NotYarn
from app.book.event import Balance, Line, balances
from app.book.woolbook import COME_IN, GIVEN_AWAY, WASTE, WEIGHING, Portion
from app.book.words import SINKS, YARN_KINDS
from tests.books import a_holding, a_reading, a_skein, an_event
from tests.random_books import ROOMS, histories

FLEECE = a_holding("F-1", state="skirted")
BATTS = a_holding("B-1", "fibre", state="carded")
BOBBIN = a_holding("bobbin", "bobbin")
SKEIN = a_skein("G-1")
BALL = a_holding("ball", "ball")
END = a_holding("end", "left-over")
GARMENT = a_holding("worn", "garment")

HELD = {
    "F-1": Balance(2_000_000),
    "B-1": Balance(180_000),
    "bobbin": Balance(50_000),
    "G-1": Balance(96_000, 213_000),
}


def moved(entry):
    """Grams and metres by holding."""
    assert sum(line.mg for line in entry.lines) == 0
    return {line.holding_id: (line.mg / 1000, line.mm / 1000) for line in entry.lines}


def test_six_balls_bought_at_once():
    balls = [a_holding(f"ball {n}", "ball") for n in range(6)]
    entry = woolbook.arrive([Portion(ball, 50_000, 125_000) for ball in balls])
    assert entry.kind == "arrive"
    assert moved(entry)["ball 3"] == (50, 125)
    assert moved(entry)[COME_IN] == (-300, 0)


def test_scouring_a_fleece_in_place():
    entry = woolbook.prepare(HELD, Portion(FLEECE, 2_000_000), Portion(FLEECE, 1_200_000))
    assert entry.kind == "prepare"
    assert moved(entry) == {"F-1": (-800, 0), WASTE: (800, 0)}


def test_carding_part_of_a_fleece():
    entry = woolbook.prepare(HELD, Portion(FLEECE, 200_000), Portion(BATTS, 186_000))
    assert moved(entry) == {"F-1": (-200, 0), "B-1": (186, 0), WASTE: (14, 0)}


def test_batts_that_drew_moisture():
    entry = woolbook.prepare(HELD, Portion(FLEECE, 200_000), Portion(BATTS, 203_000))
    assert moved(entry) == {"F-1": (-200, 0), "B-1": (203, 0), WEIGHING: (-3, 0)}


def test_a_step_that_took_nothing_has_no_lines():
    same = Portion(FLEECE, 2_000_000)
    assert woolbook.prepare(HELD, same, same).lines == ()


def test_two_sources_plied_into_a_skein():
    taken = [Portion(BATTS, 50_000), Portion(BOBBIN, 50_000)]
    entry = woolbook.spin(HELD, taken, [Portion(a_skein("G-2"), 97_000, 210_000)])
    assert entry.kind == "spin"
    assert moved(entry) == {"B-1": (-50, 0), "bobbin": (-50, 0), "G-2": (97, 210), WASTE: (3, 0)}


def test_a_skein_wound_into_two_balls():
    halves = [Portion(BALL, 48_000, 106_500), Portion(END, 47_500, 106_000)]
    entry = woolbook.wind(HELD, Portion(SKEIN, 96_000, 213_000), halves)
    assert entry.kind == "wind"
    assert moved(entry) == {
        "G-1": (-96, -213),
        "ball": (48, 106.5),
        "end": (47.5, 106),
        WASTE: (0.5, 0),
    }


def test_winding_makes_no_metres():
    with pytest.raises(MakesTooMuch, match="More metres"):
        woolbook.wind(HELD, Portion(SKEIN, 96_000, 213_000), [Portion(BALL, 96_000, 213_001)])


def test_a_skein_knit_with_its_left_over_weighed():
    left = [Portion(END, 20_000, 44_000)]
    entry = woolbook.use(HELD, [Portion(SKEIN, 96_000, 213_000)], GARMENT, left, waste_mg=1_000)
    assert entry.kind == "use"
    assert moved(entry) == {
        "G-1": (-96, -213),
        "end": (20, 44),
        "worn": (75, 0),
        WASTE: (1, 0),
    }


def test_knitting_undone_is_yarn_again():
    held = {"worn": Balance(48_000, 0)}
    entry = woolbook.rip(held, Portion(GARMENT, 20_000), [Portion(END, 19_500, 40_000)])
    assert entry.kind == "rip"
    assert moved(entry) == {"worn": (-20, 0), "end": (19.5, 40), WASTE: (0.5, 0)}


def test_no_more_yarn_is_ripped_back_than_comes_off_the_garment():
    held = {"worn": Balance(48_000, 0)}
    with pytest.raises(MakesTooMuch, match="ripped back"):
        woolbook.rip(held, Portion(GARMENT, 20_000), [Portion(END, 20_001, 40_000)])


@pytest.mark.parametrize(
    ("left", "waste_mg", "what"),
    [
        (Portion(END, 96_001, 0), 0, "Weigh what is left"),
        (Portion(END, 90_000, 0), 6_001, "Weigh what is left"),
        (Portion(END, 1, 0), -1, "Weigh what is left"),
        (Portion(END, 1, 213_001), 0, "More metres"),
    ],
)
def test_no_garment_leaves_more_than_was_taken(left, waste_mg, what):
    with pytest.raises(MakesTooMuch, match=what):
        woolbook.use(HELD, [Portion(SKEIN, 96_000, 213_000)], GARMENT, [left], waste_mg)


@pytest.mark.parametrize("taken", [Portion(SKEIN, 96_001, 0), Portion(SKEIN, 1, 213_001)])
def test_no_holding_gives_more_than_it_has(taken):
    with pytest.raises(HoldsTooLittle, match="G-1 holds less"):
        woolbook.give_away(HELD, taken)


def test_two_takings_from_one_skein_count_together():
    with pytest.raises(HoldsTooLittle):
        woolbook.use(HELD, [Portion(SKEIN, 50_000, 0)] * 2, GARMENT)


def test_nothing_can_be_taken_from_what_never_came():
    with pytest.raises(HoldsTooLittle):
        woolbook.spin({}, [Portion(BATTS, 1)], [])


@pytest.mark.parametrize("kind", ["fleece", "fibre", "bobbin", "garment"])
def test_only_yarn_has_metres(kind):
    with pytest.raises(NotYarn, match="has no metres"):
        woolbook.arrive([Portion(a_holding("x", kind), 1_000, 1)])


@pytest.mark.parametrize("portion", [Portion(SKEIN, -1), Portion(SKEIN, 0, -1)])
def test_no_amount_is_below_zero(portion):
    with pytest.raises(BadAmount):
        woolbook.arrive([portion])


def test_giving_away_half_a_skein():
    entry = woolbook.give_away(HELD, Portion(SKEIN, 48_000, 106_500))
    assert entry.kind == "put away"
    assert moved(entry) == {"G-1": (-48, -106.5), GIVEN_AWAY: (48, 0)}


def test_putting_away_empties_a_holding():
    entry = woolbook.put_away(HELD, SKEIN)
    assert entry.kind == "put away"
    assert moved(entry) == {"G-1": (-96, -213), WASTE: (96, 0)}
    assert woolbook.put_away({}, SKEIN).lines == ()


def test_a_weighing_that_disagrees():
    entry = woolbook.correct(HELD, SKEIN, a_reading("G-1", 94_000))
    assert entry.kind == "correct"
    assert moved(entry) == {"G-1": (-2, 0), WEIGHING: (2, 0)}
    heavier = woolbook.correct(HELD, SKEIN, a_reading("G-1", 97_000))
    assert moved(heavier) == {"G-1": (1, 0), WEIGHING: (-1, 0)}
    assert moved(woolbook.correct({}, SKEIN, a_reading("G-1", 5_000)))["G-1"] == (5, 0)


def test_a_length_that_disagrees_moves_metres_alone():
    longer = a_reading("G-1", 215_000, kind="length")
    assert woolbook.correct(HELD, SKEIN, longer).lines == (Line("G-1", 0, 2_000),)
    same = a_reading("G-1", 213_000, kind="length")
    assert woolbook.correct(HELD, SKEIN, same) is None
    with pytest.raises(NotYarn):
        woolbook.correct(HELD, FLEECE, a_reading("F-1", 1, kind="length"))


@pytest.mark.parametrize(
    ("holding", "other"),
    [
        (SKEIN, {"value": 96_000}),
        (SKEIN, {"wool": "damp"}),
        (SKEIN, {"wool": "in the grease"}),
        (SKEIN, {"kind": "wraps", "value": 12_000}),
        (FLEECE, {"wool": "damp"}),
        (replace(FLEECE, state="drying"), {"wool": "in the grease"}),
    ],
)
def test_readings_that_never_move_the_book(holding, other):
    reading = a_reading(holding.id, **{"value": 90_000} | other)
    assert woolbook.correct(HELD, holding, reading) is None


@pytest.mark.parametrize("state", ["raw", "skirted"])
def test_a_raw_fleece_is_weighed_in_the_grease(state):
    fleece = replace(FLEECE, state=state)
    entry = woolbook.correct(HELD, fleece, a_reading("F-1", 1_990_000, wool="in the grease"))
    assert moved(entry) == {"F-1": (-10, 0), WEIGHING: (10, 0)}


def test_no_measurement_is_below_zero():
    with pytest.raises(BadAmount):
        woolbook.correct(HELD, SKEIN, a_reading("G-1", -1))


@pytest.mark.parametrize(
    ("other", "moves"),
    [
        ({}, True),
        ({"day": date(2026, 5, 1)}, False),
        ({"day": date(2026, 5, 1), "wool": "damp"}, True),
        ({"day": date(2026, 5, 1), "kind": "length"}, True),
        ({"day": date(2026, 5, 1), "finished": False}, True),
    ],
)
def test_an_older_reading_does_not_move_the_book_back(other, moves):
    reading = a_reading("G-1", 94_000)
    others = [replace(reading, id="other", **other)]
    assert (woolbook.correct(HELD, SKEIN, reading, others) is not None) == moves


def test_a_reading_before_finishing_gives_way_to_one_after():
    before = a_reading("G-1", 99_000, finished=False)
    after = a_reading("G-1", 96_000, day=date(2026, 4, 1), id="after")
    assert woolbook.correct(HELD, SKEIN, before, [after]) is None
    assert woolbook.correct(HELD, SKEIN, before) is not None


def test_grams_and_metres_of_an_even_yarn():
    assert woolbook.mg_of(Balance(96_000, 213_000), 71_000) == 32_000
    assert woolbook.mm_of(Balance(96_000, 213_000), 32_000) == 71_000
    assert woolbook.mg_of(Balance(96_000, 0), 71_000) == 0
    assert woolbook.mm_of(Balance(0, 213_000), 32_000) == 0


def test_undo_restores():
    arrived = an_event(1, woolbook.arrive([Portion(SKEIN, 96_000, 213_000)]))
    entry = woolbook.undo(arrived, [arrived])
    assert entry.kind == "undo"
    assert moved(entry) == {"G-1": (-96, -213), COME_IN: (96, 0)}


def test_what_cannot_be_undone():
    arrived = an_event(1, woolbook.arrive([Portion(SKEIN, 96_000, 213_000)]))
    undone = an_event(2, woolbook.undo(arrived, [arrived]), undoes=1)
    with pytest.raises(CannotUndo, match="undone already"):
        woolbook.undo(arrived, [arrived, undone])
    with pytest.raises(CannotUndo, match="An undo"):
        woolbook.undo(undone, [arrived, undone])


@pytest.mark.parametrize("taken", [Portion(SKEIN, 1, 0), Portion(SKEIN, 0, 1)])
def test_an_arrival_used_since_cannot_be_undone(taken):
    arrived = an_event(1, woolbook.arrive([Portion(SKEIN, 96_000, 213_000)]))
    used = an_event(2, woolbook.use(HELD, [taken], GARMENT))
    with pytest.raises(HoldsTooLittle, match="Undo the later event first"):
        woolbook.undo(arrived, [arrived, used])


@pytest.mark.property
@given(histories())
def test_no_history_loses_or_invents_a_gram(events):
    for event in events:
        assert sum(line.mg for line in event.lines) == 0
    assert sum(one.mg for one in balances(events).values()) == 0


@pytest.mark.property
@given(histories())
def test_no_history_takes_a_holding_below_zero(events):
    kinds = {holding.id: holding.kind for holding in ROOMS}
    for end in range(len(events) + 1):
        for holding_id, held in balances(events[:end]).items():
            assert holding_id in SINKS or (held.mg >= 0 and held.mm >= 0)
            assert held.mm == 0 or kinds[holding_id] in YARN_KINDS


@pytest.mark.property
@given(histories())
def test_undoing_the_last_event_restores_every_balance(events):
    if not events or events[-1].kind == "undo":
        return
    entry = woolbook.undo(events[-1], events)
    undone = an_event(len(events) + 1, entry, undoes=events[-1].seq)
    after, before = balances([*events, undone]), balances(events[:-1])
    nothing = Balance()
    assert all(after[name] == before.get(name, nothing) for name in after)


@pytest.mark.property
@given(histories())
def test_balances_are_the_sum_of_their_parts(events):
    for end in range(len(events) + 1):
        first, second = balances(events[:end]), balances(events[end:])
        for name, held in balances(events).items():
            one, other = first.get(name, Balance()), second.get(name, Balance())
            assert held == Balance(one.mg + other.mg, one.mm + other.mm)


def test_waste_that_was_weighed_leaves_the_rest_to_weighing_and_moisture():
    """A printed fleece budget: 771 g washed → 673 g top and 109 g of comb waste, 11 g too many."""
    wool, top = a_holding("F-1"), a_holding("T-1", "fibre")
    held = {"F-1": Balance(771_000)}
    entry = woolbook.prepare(held, Portion(wool, 771_000), Portion(top, 673_000), waste_mg=109_000)
    assert {line.holding_id: line.mg for line in entry.lines} == {
        "F-1": -771_000,
        "T-1": 673_000,
        "waste": 109_000,
        "weighing and moisture": -11_000,
    }
    with pytest.raises(BadAmount, match="less than nothing"):
        woolbook.prepare(held, Portion(wool, 771_000), Portion(top, 673_000), waste_mg=-1)


def test_lots_mixed_into_one():
    wool, other, batt = a_holding("F-1"), a_holding("F-2"), a_holding("B-1", "fibre")
    held = {"F-1": Balance(300), "F-2": Balance(100)}
    entry = woolbook.mix(held, [Portion(wool, 300), Portion(other, 100)], Portion(batt, 380))
    assert sum(line.mg for line in entry.lines) == 0
    assert {line.holding_id: line.mg for line in entry.lines}["waste"] == 20
