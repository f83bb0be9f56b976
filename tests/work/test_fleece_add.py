from dataclasses import replace

import pytest
from sqlmodel import Session

from app.book.checks import check
from app.store.records import get, load_book
from app.work.fleece_add import NewFleece, add_fleece
from app.work.fleece_change import change_fleece
from app.work.fleece_put_away import put_away_fleece
from app.work.refusal import Refusal
from tests.work.flock import BRAMBLE, DAY, a_raw_fleece, grams, now, weight


def test_a_fleece_comes_in_with_its_holding_its_weighing_and_its_event(writing: Session):
    a_raw_fleece(writing)
    holding = now(writing)
    assert (holding.code, holding.state, holding.place) == ("Bramble", "raw", "loft")
    assert grams(writing) == 2000
    assert grams(writing, "come in") == -2000 - 236  # the shelf's skeins came in before it
    (reading,) = load_book(writing).readings_of[holding.id]
    assert (reading.value, reading.wool, reading.typed) == (2_000_000, "in the grease", "2000")
    assert check(load_book(writing)) == []


def test_a_name_that_is_a_skein_s_code_is_refused(writing: Session):
    new = NewFleece(replace(BRAMBLE, name="G-1"), weight(500), "raw", DAY)
    with pytest.raises(Refusal, match="Something else is called G-1") as refusal:
        add_fleece(writing, new)
    assert refusal.value.field == "name"
    assert load_book(writing).fleeces == ()


def test_a_change_goes_to_the_holding_too(writing: Session):
    a_raw_fleece(writing)
    fleece = replace(BRAMBLE, name="Bramble the elder", colour="#ece3d0", colour_name="cream")
    change_fleece(writing, fleece, replace(now(writing), place="porch"))
    holding = now(writing)
    assert (holding.code, holding.colour, holding.place) == (
        "Bramble the elder",
        "#ece3d0",
        "porch",
    )
    assert grams(writing) == 2000


def test_a_fleece_may_keep_its_own_name(writing: Session):
    a_raw_fleece(writing)
    change_fleece(writing, replace(BRAMBLE, notes="soft"), now(writing))
    found = get(writing, type(BRAMBLE), "bramble")
    assert found is not None
    assert found.notes == "soft"


@pytest.mark.parametrize(
    ("going", "sink"),
    [("given away", "given away"), ("used up", "waste"), ("lost or thrown out", "waste")],
)
def test_a_fleece_leaves_for_good(writing: Session, going, sink: str):
    a_raw_fleece(writing)
    event = put_away_fleece(writing, [now(writing)], going, DAY)
    assert event.kind == "put away"
    assert (grams(writing), grams(writing, sink)) == (0, 2000)
    assert now(writing).put_away == DAY
