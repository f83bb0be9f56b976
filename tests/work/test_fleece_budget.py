"""Whole ways from fleece to yarn, entered step by step, give the numbers that are printed."""

import pytest
from sqlmodel import Session

from app.book.checks import check
from app.book.settings import StepLosses
from app.craft.figure import Figure
from app.craft.fleece import (
    Losses,
    plied_length,
    single_length,
    single_tex,
    wool_for,
    yarn_from,
    yarn_mass,
)
from app.store.records import load_book
from app.work.fleece_weigh import Weighing, weigh_fleece
from app.work.skein_add import NewSkein, add_skein
from app.work.skein_readings import Length, Weight
from app.work.wool_traced import became
from tests.books import a_yarn
from tests.work.flock import DAY, a_raw_fleece, grams, now, weight

POUND_G = 453.59237


@pytest.mark.published
def test_a_printed_fleece_budget(writing: Session):
    """3.0 lb raw → 1.7 lb washed (56.7 %) → 673 g of top and 109 g of comb waste: a spinner's
    published measurement. Together that is 782 g against 771 g: 11 g more than went in."""
    a_raw_fleece(writing, 3.0 * POUND_G)
    washed = Weighing(weight(1.7 * POUND_G, "scoured"), "scoured", DAY)
    weigh_fleece(writing, now(writing), washed)
    assert grams(writing) / (3.0 * POUND_G) == pytest.approx(0.567, abs=0.0005)
    combed = Weighing(weight(673, "combed"), "combed", DAY, waste_mg=109_000)
    weigh_fleece(writing, now(writing), combed)
    book = load_book(writing)
    assert grams(writing) == 673
    assert grams(writing, "weighing and moisture") == pytest.approx(-10.9, abs=0.05)
    washing_g = 1.3 * POUND_G
    assert grams(writing, "waste") == pytest.approx(washing_g + 109, abs=0.01)
    assert [one.step for one in book.events[-3:]] == ["", "scour", "comb"]
    assert check(book) == []
    ended, _ = became(book, [now(writing).id])
    told = {one.holding.kind: one.mg / 1000 for one in ended}
    assert told["fleece"] == pytest.approx(673)
    assert sum(told.values()) == pytest.approx(3.0 * POUND_G, abs=0.01)


WORKED = Losses(skirt=0.15, prepare=0.10, spin=0.03, finish=0.0)
YIELD = Figure(0.60, "share")


def test_the_worked_chain_backwards_from_the_yarn():
    """400 m at 450 tex, two-ply, 8 % shrinkage, 5 % take-up: 404.3 g raw."""
    assert yarn_mass(400, 450) == pytest.approx(180)
    plied = plied_length(400, 0.08)
    single = single_length(plied, 0.05)
    assert (plied, single) == (pytest.approx(434.78, abs=0.005), pytest.approx(457.67, abs=0.005))
    assert single_tex(180, 2, single) == pytest.approx(196.65, abs=0.005)
    yarn = Figure(180.0, "g")
    for state, g in (("carded", 185.6), ("scoured", 206.2), ("skirted", 343.6), ("raw", 404.3)):
        assert wool_for(yarn, state, YIELD, WORKED).value == pytest.approx(g, abs=0.06), state


def test_the_worked_chain_forwards_through_the_wool_book(writing: Session):
    """The same steps, each weighed and entered: 404.3 g raw end as 180 g of yarn, and what each
    step took is waste."""
    a_raw_fleece(writing, 404.3)
    for state, g in (("skirted", 343.6), ("scoured", 206.2), ("carded", 185.6)):
        weigh_fleece(writing, now(writing), Weighing(weight(g, state), state, DAY))
        ahead = yarn_from(Figure(grams(writing), "g"), state, YIELD, WORKED).value
        assert ahead == pytest.approx(180, abs=0.06)
    new = NewSkein(
        yarn=a_yarn("two-ply"),
        weight=Weight(180_000, "180", "g"),
        lengths=(Length(434_780, "434.78", "m", finished=False), Length(400_000, "400", "m")),
        day=DAY,
        fleece_id="bramble",
    )
    (skein,) = add_skein(writing, new).holdings
    book = load_book(writing)
    assert 1000 * book.balances[skein.id].mg / book.balances[skein.id].mm == pytest.approx(450)
    # The settings' own losses in spinning and finishing say what was taken for it.
    usual = StepLosses()
    taken = 180 / (1 - usual.spin / 100) / (1 - usual.finish / 100)
    left = max(0.0, 185.6 - taken)
    assert grams(writing) == pytest.approx(left, abs=0.01)
    assert grams(writing, "waste") == pytest.approx(404.3 - left - 180, abs=0.01)
    assert sum(one.mg for one in book.balances.values()) == 0
