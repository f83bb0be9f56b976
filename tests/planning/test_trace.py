"""Where wool came from and what became of it, by hand and over random histories."""

from dataclasses import replace
from datetime import date

import pytest

from app.book import woolbook
from app.book.event import Balance, Event, Line, balances
from app.book.holding import Holding
from app.book.woolbook import Entry
from app.planning.trace import trace
from app.planning.trace_streams import ahead, back
from tests.wool_history import a_random_history

DAY = date(2026, 5, 1)


def wool(id: str, kind: str = "fleece") -> Holding:
    return Holding(id, kind, id)  # type: ignore[arg-type]


A, B = wool("A"), wool("B")
MIX, TOP = wool("mix", "fibre"), wool("top", "fibre")
SKEIN, GARMENT = wool("S-1", "skein"), wool("pullover", "garment")


class Told:
    """Events one after another, in grams."""

    def __init__(self) -> None:
        self.events: list[Event] = []

    @property
    def held(self) -> dict[str, Balance]:
        return balances(self.events)

    def post(self, entry: Entry, undoes: int | None = None) -> int:
        seq = len(self.events) + 1
        self.events.append(Event(seq, entry.kind, DAY, entry.lines, undoes=undoes))
        return seq

    def moved(self, kind: str, **grams: float) -> int:
        """An event by what each holding gained or gave."""
        lines = tuple(Line(SINK.get(id, id), round(1000 * g)) for id, g in grams.items())
        return self.post(Entry(kind, lines))  # type: ignore[arg-type]


SINK = {"in_": "come in", "weighing": "weighing and moisture"}


def a_blend() -> Told:
    """300 g of A and 100 g of B become 360 g of mix; 180 g of it a skein of 171 g; a garment."""
    told = Told()
    told.moved("arrive", in_=-300, A=300)
    told.moved("arrive", in_=-200, B=200)
    told.moved("prepare", A=-300, B=-100, mix=360, waste=40)
    told.moved("spin", mix=-180, skein=171, waste=9)
    told.moved("use", skein=-100, pullover=95, waste=5)
    return told


def test_a_garment_knows_its_sheep():
    found = trace(a_blend().events)
    assert found.origins("pullover") == pytest.approx({"A": 0.75, "B": 0.25})
    assert found.origins("skein") == found.origins("mix")
    assert found.origins("nobody") == {}


def test_a_fleece_knows_all_it_became():
    """Of 300 g of A: 3/4 of everything after the blending."""
    held = trace(a_blend().events).mg
    grams = {id: mg["A"] / 1000 for id, mg in held.items() if abs(mg.get("A", 0)) > 0.5}
    assert grams == pytest.approx(
        {"mix": 135, "skein": 53.25, "pullover": 71.25, "waste": 40.5, "come in": -300}
    )
    assert sum(grams.values()) == pytest.approx(0)


def test_the_streams_back_hold_what_ended_in_the_garment():
    """95 g of skein; 95 g of mix became it; 71.25 g of that was of A."""
    streams = back(trace(a_blend().events), "pullover")
    assert {(one.source, one.target): one.mg / 1000 for one in streams} == pytest.approx(
        {
            ("come in", "A"): 71.25,
            ("come in", "B"): 23.75,
            ("A", "mix"): 71.25,
            ("B", "mix"): 23.75,
            ("mix", "skein"): 95,
            ("skein", "pullover"): 95,
        }
    )
    assert [one.came for one in streams] == sorted(one.came for one in streams)


def test_the_streams_ahead_hold_all_that_came_of_a_fleece():
    found = ahead(trace(a_blend().events), ["A"])
    assert {(one.source, one.target): one.mg / 1000 for one in found.streams} == pytest.approx(
        {
            ("A", "mix"): 270,
            ("A", "waste"): 30,
            ("mix", "skein"): 128.25,
            ("mix", "waste"): 6.75,
            ("skein", "pullover"): 71.25,
            ("skein", "waste"): 3.75,
        }
    )
    assert found.shares == pytest.approx({"A": 1, "mix": 0.75, "skein": 0.75, "pullover": 0.75})
    assert found.sunk == pytest.approx({"waste": 40_500})


def test_the_streams_ahead_of_a_batch_begin_with_it():
    """A blend is no origin: of 360 g of mix, 180 g were spun."""
    found = ahead(trace(a_blend().events), ["mix"])
    assert {(one.source, one.target): one.mg / 1000 for one in found.streams} == pytest.approx(
        {
            ("mix", "skein"): 171,
            ("mix", "waste"): 9,
            ("skein", "pullover"): 95,
            ("skein", "waste"): 5,
        }
    )


def test_what_weighings_found_is_told_of_what_came_ahead():
    told = a_blend()
    told.moved("correct", skein=8, weighing=-8)
    told.moved("correct", B=-20, weighing=20)
    found = ahead(trace(told.events), ["A"])
    assert found.sunk["weighing and moisture"] == pytest.approx(-6_000)
    assert found.shares["skein"] == pytest.approx(0.75)


def test_a_weighing_changes_how_much_there_is_and_not_what_it_is():
    told = a_blend()
    told.moved("correct", skein=6, weighing=-6)
    told.moved("correct", mix=-30, weighing=30)
    found = trace(told.events)
    assert found.origins("skein") == pytest.approx({"A": 0.75, "B": 0.25})
    assert found.mg["weighing and moisture"]["A"] == pytest.approx(18_000)
    assert sum(held.get("A", 0.0) for held in found.mg.values()) == pytest.approx(0, abs=1)


def test_streams_go_back_through_a_weighing():
    """The skein of 171 g was weighed at 85.5 g: half of it went into the garment, so half."""
    told = Told()
    told.moved("arrive", in_=-300, A=300)
    told.moved("spin", A=-180, skein=171, waste=9)
    told.moved("correct", skein=-85.5, weighing=85.5)
    told.moved("use", skein=-85.5, pullover=85.5)
    streams = {(s.source, s.target): s.mg / 1000 for s in back(trace(told.events), "pullover")}
    assert streams["A", "skein"] == pytest.approx(171)
    assert streams["skein", "pullover"] == pytest.approx(85.5)


def test_what_is_missing_after_work_was_in_what_was_worked():
    """300 g of 600 g were combed, 5 g of them unaccounted for; of what is left 200 g are drawn, and
    200 g of A it was."""
    told = Told()
    told.moved("arrive", in_=-600, A=600)
    told.moved("prepare", A=-300, top=200, waste=95, weighing=5)
    told.moved("spin", A=-200, skein=200)
    streams = {(s.source, s.target): s.mg / 1000 for s in back(trace(told.events), "skein")}
    assert streams["come in", "A"] == pytest.approx(200)


def test_what_a_weighing_found_in_a_new_lot_is_told_of_what_came_ahead():
    """100 g of A were dyed and weigh 104 g: where A is now adds up to what came in."""
    told = Told()
    told.moved("arrive", in_=-300, A=300)
    told.moved("prepare", weighing=-4, A=-100, dyed=104)
    found = ahead(trace(told.events), ["A"])
    assert found.sunk == pytest.approx({"weighing and moisture": -4_000})
    assert found.shares == pytest.approx({"A": 1, "dyed": 1})
    assert trace(told.events).origins("dyed") == {"A": 1.0}


def test_what_was_undone_never_happened():
    told = a_blend()
    before = trace(told.events)
    seq = told.moved("spin", B=-50, other=50)
    told.post(woolbook.undo(told.events[-1], told.events), undoes=seq)
    assert trace(told.events) == before
    assert "other" not in trace(told.events).shares


def test_wool_that_only_a_weighing_knows_of_is_its_own_origin():
    told = Told()
    told.moved("correct", A=50, weighing=-50)
    assert trace(told.events).origins("A") == {"A": 1.0}


def test_what_is_drawn_from_nothing_is_of_itself():
    """A book brought in may begin in the middle."""
    told = Told()
    told.moved("spin", A=-50, skein=50)
    assert trace(told.events).origins("skein") == {"A": 1.0}


def test_what_came_in_too_late_is_owed_first():
    told = Told()
    told.moved("spin", A=-50, skein=50)
    told.moved("arrive", in_=-20, A=20)
    assert trace(told.events).origins("A") == {}


def test_wool_added_later_is_not_in_what_was_drawn_before():
    told = Told()
    told.moved("arrive", in_=-100, A=100)
    told.moved("arrive", in_=-100, B=100)
    told.moved("prepare", A=-100, mix=100)
    told.moved("spin", mix=-50, skein=50)
    told.moved("prepare", B=-100, mix=100)
    told.moved("spin", mix=-60, later=60)
    found = trace(told.events)
    assert found.origins("skein") == {"A": 1.0}
    assert found.origins("later") == pytest.approx({"A": 1 / 3, "B": 2 / 3})
    assert {s.source for s in back(found, "skein")} == {"come in", "A", "mix"}
    later = {(s.source, s.target): s.mg / 1000 for s in back(found, "later")}
    assert later["A", "mix"] == pytest.approx(20)
    assert later["B", "mix"] == pytest.approx(40)


@pytest.mark.property
@pytest.mark.parametrize("seed", range(3))
def test_over_thousands_of_steps_no_gram_of_any_fleece_is_lost(seed):
    told = a_random_history(2000, seed)
    found = trace(told.events)
    for id, mg in told.mg.items():
        # What was undone is left out of the way, not out of the book: the two agree to a milligram.
        assert sum(found.mg.get(id, {}).values()) == pytest.approx(mg, abs=1)
    for origin in {origin for held in found.mg.values() for origin in held}:
        parts = [held.get(origin, 0.0) for held in found.mg.values()]
        assert sum(parts) == pytest.approx(0, abs=1 + 1e-9 * sum(map(abs, parts)))
    for shares in found.shares.values():
        assert sum(shares.values()) == pytest.approx(1)


@pytest.mark.property
@pytest.mark.parametrize("seed", range(3))
def test_forward_and_back_tell_the_same_wool(seed):
    """Two ways to one truth: what went from a fleece to a garment is the same, whether it is
    followed ahead from the fleece or back from the garment."""
    told = a_random_history(400, seed)
    found = trace(told.events)
    garments = [one.id for one in told.holdings if one.kind == "garment" and one.id in found.mg]
    unweighed = [id for id in garments if not any(id == one for _, one in found.grown)]
    assert unweighed
    for garment in unweighed[:20]:
        into = [one for one in back(found, garment) if one.target == garment]
        for origin, share in found.origins(garment).items():
            # Of a fleece that came in alone, nothing else lies in its own holding.
            led = sum(one.mg for one in ahead(found, [origin]).streams if one.target == garment)
            assert led == pytest.approx(share * sum(one.mg for one in into), rel=1e-6, abs=1)


def test_events_may_come_in_any_order():
    told = a_blend()
    assert trace(reversed(told.events)) == trace(told.events)
    assert trace([replace(one) for one in told.events]).flows == trace(told.events).flows
