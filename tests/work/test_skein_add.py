"""Skeins come to the shelf: a page of the maker's own notebook."""

from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest
from sqlmodel import Session

from app.book.event import Line
from app.book.fleece import Fleece
from app.book.holding import Holding
from app.book.reading import Reading
from app.book.words import WoolState
from app.book.yarn import Yarn
from app.store.engine import open_store
from app.store.records import get, load_book, post, put
from app.store.skein_find import balance_of, readings_of
from app.work.refusal import Refusal
from app.work.skein_add import NewSkein, add_skein, proposed_codes
from app.work.skein_buy import Purchase, buy_balls
from app.work.skein_readings import Length, Weight, Wraps, by_reel, counting, unfinished
from app.work.skein_spin import TooLittleWool, taken_from

DAY = date(2026, 3, 1)
GREY = Yarn(id="yarn-grey", name="Grey two-ply", plies=2, colour="#8a8580", colour_name="grey")
WORKED = by_reel(1500, 142, "142")
AS_WEIGHED = Weight(96_000, "96", "g")


@pytest.fixture
def session(tmp_path: Path) -> Iterator[Session]:
    store = open_store(tmp_path)
    with store.writing() as session:
        yield session
    store.close()


def fleece(session: Session, grams: int, state: WoolState = "carded") -> Fleece:
    """A fleece that holds so many grams."""
    record = Fleece(id="fleece-ash", name="Ash", fibre="wool", yield_pct=60.0)
    put(session, record)
    put(
        session, Holding(id="wool-ash", kind="fleece", code="Ash", fleece_id=record.id, state=state)
    )
    lines = [Line("come in", -grams * 1000), Line("wool-ash", grams * 1000)]
    post(session, "arrive", DAY, lines)
    return record


def test_a_skein_by_reel(session: Session) -> None:
    """Girth 1.5 m, 142 turns, 96 g: 213.0 m, 450.70 tex, 221.9 m/100 g (worked by hand)."""
    saved = add_skein(session, NewSkein(GREY, AS_WEIGHED, (WORKED,), DAY))
    held = balance_of(session, saved.holdings[0].id)
    assert (held.mg, held.mm) == (96_000, 213_000)
    assert 1000 * held.mg / held.mm == pytest.approx(450.70, abs=0.005)
    assert held.mm / 1000 / (held.mg / 1000) * 100 == pytest.approx(221.9, abs=0.05)


def test_its_readings_are_kept_as_they_were_taken(session: Session) -> None:
    wraps = Wraps(11_500, "11.5")
    saved = add_skein(session, NewSkein(GREY, AS_WEIGHED, (WORKED,), DAY, wraps=wraps))
    readings = {one.kind: one for one in readings_of(session, saved.holdings[0].id)}
    assert (readings["length"].girth_mm, readings["length"].turns) == (1500, 142)
    assert readings["length"].instrument == "reel"
    assert (readings["mass"].typed, readings["mass"].unit) == ("96", "g")
    assert readings["wraps"].value == 11_500


def test_a_new_yarn_is_written_down_with_its_first_skein(session: Session) -> None:
    saved = add_skein(session, NewSkein(GREY, AS_WEIGHED, (WORKED,), DAY))
    assert get(session, Yarn, GREY.id) == GREY
    assert saved.holdings[0].code == "G-001"
    assert saved.holdings[0].colour == ""


def test_a_known_yarn_is_left_as_it_is_and_the_numbers_go_on(session: Session) -> None:
    add_skein(session, NewSkein(GREY, AS_WEIGHED, (WORKED,), DAY, code="G-013"))
    saved = add_skein(session, NewSkein(GREY, AS_WEIGHED, (WORKED,), DAY, colour="#000000"))
    assert saved.holdings[0].code == "G-014"
    assert get(session, Yarn, GREY.id) == GREY
    assert proposed_codes(session, GREY) == ("G-015",)


def test_another_yarn_of_the_same_letter_takes_codes_of_its_own(session: Session) -> None:
    add_skein(session, NewSkein(GREY, AS_WEIGHED, (WORKED,), DAY))
    green = Yarn(id="yarn-green", name="Green singles")
    assert proposed_codes(session, green) == ("GR-001",)


def test_a_yarn_with_letters_of_its_own_keeps_clear_of_another_with_the_same(
    session: Session,
) -> None:
    moss = Yarn(id="yarn-moss", name="Moss")
    add_skein(session, NewSkein(GREY, AS_WEIGHED, (WORKED,), DAY, code="MOSS-001"))
    add_skein(session, NewSkein(moss, AS_WEIGHED, (WORKED,), DAY, code="MOSS-002"))
    assert proposed_codes(session, GREY) == ("MOSS-003",)


def test_a_code_in_use_is_refused(session: Session) -> None:
    add_skein(session, NewSkein(GREY, AS_WEIGHED, (WORKED,), DAY, code="G-1"))
    with pytest.raises(Refusal, match="G-1 is already in use") as refusal:
        add_skein(session, NewSkein(GREY, AS_WEIGHED, (WORKED,), DAY, code="G-1"))
    assert refusal.value.field == "code"


def test_a_second_yarn_of_the_same_name_is_refused(session: Session) -> None:
    add_skein(session, NewSkein(GREY, AS_WEIGHED, (WORKED,), DAY))
    twin = Yarn(id="yarn-twin", name="GREY two-ply")
    with pytest.raises(Refusal, match="already a yarn called"):
        add_skein(session, NewSkein(twin, AS_WEIGHED, (WORKED,), DAY))


def test_before_and_after_finishing_are_two_readings_and_the_finished_one_counts(
    session: Session,
) -> None:
    before = by_reel(1500, 150, "150", finished=False)
    saved = add_skein(session, NewSkein(GREY, AS_WEIGHED, (before, WORKED), DAY))
    skein = saved.holdings[0]
    lengths = [one for one in readings_of(session, skein.id) if one.kind == "length"]
    assert sorted(one.value for one in lengths) == [213_000, 225_000]
    assert balance_of(session, skein.id).mm == 213_000
    assert not unfinished(lengths)


def test_a_skein_measured_only_before_finishing_is_known_to_be_so(session: Session) -> None:
    before = Length(225_000, "225", "m", finished=False)
    saved = add_skein(session, NewSkein(GREY, AS_WEIGHED, (before,), DAY))
    readings = readings_of(session, saved.holdings[0].id)
    assert balance_of(session, saved.holdings[0].id).mm == 225_000
    assert unfinished(readings)


def test_no_length_counts_where_none_was_taken() -> None:
    mass = Reading("r", "s", "mass", 1, "1", "g", "scale", DAY)
    assert counting([mass]) is None
    assert not unfinished([mass])


def test_wool_for_a_skein_is_taken_off_carded_wool_with_its_losses(session: Session) -> None:
    """96 g finished, 2 % lost in finishing and 3 % in spinning: 96/(0.98 × 0.97) = 100.989 g."""
    ash = fleece(session, 500)
    saved = add_skein(session, NewSkein(GREY, AS_WEIGHED, (WORKED,), DAY, fleece_id=ash.id))
    assert balance_of(session, "wool-ash").mg == 500_000 - 100_989
    assert balance_of(session, "waste").mg == 4_989
    assert saved.event.kind == "spin"
    assert sum(line.mg for line in saved.event.lines) == 0


def test_a_raw_fleece_gives_through_the_whole_chain(session: Session) -> None:
    """96/(0.98·0.97·0.93·0.60·0.85) = 212.9 g raw: carding 7 %, yield 60 %, skirting 15 %."""
    fleece(session, 1000, "raw")
    (taken,) = taken_from(session, "fleece-ash", 96_000)
    assert taken.mg / 1000 == pytest.approx(96 / (0.98 * 0.97 * 0.93 * 0.60 * 0.85), abs=0.001)


def test_wool_nearest_to_yarn_is_spun_first(session: Session) -> None:
    """50 g carded become 50 × 0.98 × 0.97 = 47.53 g; the other 48.47 g are taken off the raw."""
    ash = fleece(session, 1000, "raw")
    put(session, Holding("batts", "fibre", "batts", fleece_id=ash.id, state="carded"))
    post(session, "arrive", DAY, [Line("come in", -50_000), Line("batts", 50_000)])
    saved = add_skein(session, NewSkein(GREY, AS_WEIGHED, (WORKED,), DAY, fleece_id=ash.id))
    raw_g = (96 - 50 * 0.98 * 0.97) / (0.98 * 0.97 * 0.93 * 0.60 * 0.85)
    assert balance_of(session, "batts").mg == 0
    assert balance_of(session, "wool-ash").mg / 1000 == pytest.approx(1000 - raw_g, abs=0.001)
    assert sum(line.mg for line in saved.event.lines) == 0


def test_a_skein_spun_before_the_weighing_simply_arrives(session: Session) -> None:
    ash = fleece(session, 500)
    new = NewSkein(GREY, AS_WEIGHED, (WORKED,), DAY, fleece_id=ash.id, taken_now=False)
    saved = add_skein(session, new)
    assert saved.event.kind == "arrive"
    assert saved.holdings[0].fleece_id == ash.id
    assert balance_of(session, "wool-ash").mg == 500_000


def test_a_fleece_that_holds_too_little_is_refused_with_what_it_holds(session: Session) -> None:
    ash = fleece(session, 50)
    with pytest.raises(TooLittleWool) as refusal:
        add_skein(session, NewSkein(GREY, AS_WEIGHED, (WORKED,), DAY, fleece_id=ash.id))
    assert (refusal.value.held_g, refusal.value.state) == (50.0, "carded")
    assert refusal.value.needed_g == pytest.approx(100.989, abs=0.001)


def test_the_last_skein_may_take_all_that_is_left(session: Session) -> None:
    ash = fleece(session, 98)
    add_skein(session, NewSkein(GREY, AS_WEIGHED, (WORKED,), DAY, fleece_id=ash.id))
    assert balance_of(session, "wool-ash").mg == 0
    assert balance_of(session, "waste").mg == 2_000


def test_raw_wool_cannot_have_become_nearly_as_much_yarn(session: Session) -> None:
    fleece(session, 100, "raw")
    with pytest.raises(TooLittleWool):
        taken_from(session, "fleece-ash", 96_000)


def test_a_fleece_without_wool_gives_nothing(session: Session) -> None:
    put(session, Fleece(id="bare", name="Bare"))
    with pytest.raises(TooLittleWool):
        taken_from(session, "bare", 1)


def label(count: int = 6, code: str = "") -> Purchase:
    """So many balls of 50 g / 125 m."""
    yarn = Yarn(id="yarn-moss", name="Moss", bought=True, ball_mg=50_000, ball_mm=125_000)
    weight = Weight(50_000, "50", "g", instrument="label")
    length = Length(125_000, "125", "m", instrument="label")
    return Purchase(yarn, count, weight, length, DAY, code=code, dye_lot="214", price="4.20")


def test_six_balls_alike_are_six_balls_with_codes(session: Session) -> None:
    saved = buy_balls(session, label())
    assert [one.code for one in saved.holdings] == [f"M-00{n}" for n in range(1, 7)]
    assert {balance_of(session, one.id).mm for one in saved.holdings} == {125_000}
    assert {(one.kind, one.dye_lot, one.price) for one in saved.holdings} == {
        ("ball", "214", "4.20")
    }
    assert balance_of(session, "come in").mg == -300_000


def test_the_balls_came_in_one_event_and_carry_what_the_label_says(session: Session) -> None:
    saved = buy_balls(session, label())
    assert len(load_book(session).events) == 1
    readings = readings_of(session, saved.holdings[0].id)
    assert {one.instrument for one in readings} == {"label"}


def test_balls_are_numbered_on_from_a_code_typed(session: Session) -> None:
    saved = buy_balls(session, label(2, "Moss 9"))
    assert [one.code for one in saved.holdings] == ["Moss 9", "Moss 10"]


def test_one_code_in_use_refuses_them_all(session: Session) -> None:
    buy_balls(session, label(1, "M-2"))
    with pytest.raises(Refusal, match="M-2 is already in use"):
        buy_balls(session, label(3, "M-1"))
