"""The bridge: book and reckoning to a proposal, with promises, odds, bound and reasons."""

from dataclasses import replace

import pytest

from app.book.plan import RoleYarn
from app.book.settings import Prices, Settings
from app.book.shape import Metres
from app.planning import reckon
from app.planning.assign import proposal_of, propose
from app.planning.solve.problem import Tally
from app.planning.solve.solved import Effort
from app.planning.solve.solver import solve
from tests.books import a_book, a_fleece, a_holding, a_part, a_plan, a_promise, a_skein, a_yarn

GREY = "grey two-ply"


def part(metres, name="body", **other):
    return a_part(name, shape=Metres(metres * 1000), **other)


def asking(lengths, *records, tex=450, settings=None):
    """A shelf of skeins by their lengths; G is grey, W white, the plan is a pullover in grey."""
    yarns = {"G": GREY, "W": "white two-ply"}
    skeins = [a_skein(code, yarns[code[0]]) for code in lengths]
    known = {type(one): one for one in records}
    plans = [] if type(a_plan()) in known else [a_plan()]
    held = {code: (metres * tex / 1000, metres) for code, metres in lengths.items()}
    own = [one for one in records if getattr(one, "id", "") in yarns.values()]
    made = [a_yarn(one) for one in yarns.values() if one not in [each.id for each in own]]
    return a_book(*made, *skeins, *plans, *records, held=held, settings=settings)


def best(book, **other):
    return propose(book, reckon(book), "pullover", **other)


def given(found):
    return {(one.part_id, one.holding_id): one.mm / 1000 for one in found.promises}


def why(found):
    return {(one.part_id, one.holding_id): one.why for one in found.promises}


def test_one_skein_that_is_enough():
    found = best(asking({"G-1": 400, "G-2": 120, "G-3": 90}, part(100)))
    assert given(found) == {("body", "G-2"): 100}
    assert why(found) == {
        ("body", "G-2"): "enough for body alone, and what is left is worth keeping"
    }
    assert found.tally == Tally(0, 0, 0, 0)
    assert found.best_possible
    assert found.in_words == "the best possible for these prices"


def test_the_promises_are_what_the_part_is_expected_to_need():
    found = best(asking({"G-1": 160, "G-2": 100}, part(220)))
    assert sum(given(found).values()) == pytest.approx(220)
    assert {one.position for one in found.promises} == {1, 2}
    assert all(one.state == "proposed" for one in found.promises)
    assert len({one.id for one in found.promises}) == 2


def test_skeins_that_suffice_only_just_are_joined_by_one_kept_in_hand():
    found = best(asking({"G-1": 60, "G-2": 100, "G-3": 30}, part(150)))
    assert found.share > 0
    assert "kept in hand, so that the garment is as sure as you asked" in why(found).values()


def test_the_odds_are_those_of_the_reckoning_with_its_promises():
    book = asking({"G-1": 160, "G-2": 130}, part(220))
    found = best(book)
    after = reckon(replace(book, promises=(*book.promises, *found.promises)))
    assert found.odds == after.plan("pullover").odds
    assert found.odds == pytest.approx(0.9, abs=0.001), "as sure as was asked"


def test_a_skein_goes_on_from_part_to_part():
    found = best(asking({"G-1": 300}, part(80, "cuff", position=2), part(180)))
    assert given(found) == {("body", "G-1"): 180, ("cuff", "G-1"): 80}
    assert why(found) == {
        ("body", "G-1"): "what body leaves of it goes on into cuff",
        ("cuff", "G-1"): "goes on from body, so that less is left over",
    }
    assert found.tally.cuts == 1


def test_what_is_promised_already_stays():
    book = asking({"G-1": 200, "G-2": 90}, part(150), a_promise("G-1", 100_000, position=4))
    found = best(book)
    assert set(given(found)) <= {("body", "G-1"), ("body", "G-2")}
    assert sum(given(found).values()) == pytest.approx(50)
    assert min(one.position for one in found.promises) == 5


def test_nothing_is_missing_nothing_is_proposed():
    found = best(asking({"G-1": 200}, part(150), a_promise("G-1", 150_000)))
    assert found.promises == ()
    assert found.best_possible


def test_a_plan_without_parts_has_nothing_to_propose():
    assert best(asking({"G-1": 200})).promises == ()


def test_what_the_shelf_lacks_is_to_be_made():
    found = best(asking({"G-1": 90}, part(150)))
    assert given(found) == {("body", "G-1"): 90}
    assert why(found)[("body", "G-1")].startswith("all there is for body")
    assert found.tally.to_make >= 60


def test_no_skein_gives_more_than_it_holds():
    book = asking({f"G-{n}": 70 + 13 * n for n in range(6)}, part(300), part(90, "cuff"))
    found = best(book)
    after = reckon(replace(book, promises=found.promises))
    assert after.uncovered == ()


def test_yarn_of_another_plan_is_not_touched():
    hat = a_plan("hat")
    taken = a_promise("G-1", 200_000, plan_id="hat", part_id="crown")
    crown = part(200, "crown", plan_id="hat")
    book = asking({"G-1": 200, "G-2": 200}, a_plan(priority=2), hat, crown, part(150), taken)
    assert {one.holding_id for one in best(book).promises} <= {"G-2"}


def test_two_skeins_as_long_as_each_other_are_a_couple_and_one_is_halved():
    book = asking({"G-1": 100, "G-2": 103}, part(90, "sleeves", copies=2))
    found = best(book)
    assert given(found) == {("sleeves", "G-1"): 90, ("sleeves", "G-2"): 90}
    notes = " ".join(why(found).values())
    assert "as long as G-1: one for each piece" in notes
    assert "as long as G-2: one for each piece" in notes
    single = asking({"G-1": 230}, part(90, "sleeves", copies=2))
    assert "wind it in 2 equal balls, one for each piece" in why(best(single))["sleeves", "G-1"]


WHITE = {"colour": "#f4f2ea", "fibre": "wool"}


def two_yarns(lengths, *records, second="#f4f1e9"):
    first = a_yarn(GREY, **WHITE)
    return asking(lengths, first, a_yarn("white two-ply", **WHITE | {"colour": second}), *records)


def test_a_yarn_that_reads_as_the_same_helps_out_before_anything_is_made():
    found = best(two_yarns({"G-1": 120, "W-1": 120}, part(200)))
    assert set(given(found)) == {("body", "G-1"), ("body", "W-1")}
    assert "white two-ply reads as the same yarn beside it" in why(found)["body", "W-1"]
    assert found.tally.to_make == 0


def test_a_yarn_of_another_colour_does_not():
    found = best(two_yarns({"G-1": 120, "W-1": 120}, part(200), second="#30302a"))
    assert set(given(found)) == {("body", "G-1")}


def test_nor_one_of_another_grist():
    skeins = [a_skein("G-1"), a_skein("W-1", "white two-ply")]
    yarns = a_yarn(GREY, **WHITE), a_yarn("white two-ply", **WHITE)
    held = {"G-1": (54.0, 120.0), "W-1": (72.0, 120.0)}
    found = best(a_book(*yarns, *skeins, a_plan(), part(200), held=held))
    assert set(given(found)) == {("body", "G-1")}


def test_nor_one_of_another_fibre_or_of_an_unknown_grist():
    for other in ({"fibre": "alpaca"}, {}):
        yarns = a_yarn(GREY, **WHITE), a_yarn("white two-ply", **WHITE | other)
        held = {"G-1": (54.0, 120.0), "W-1": (0.0, 120.0)}
        skeins = [a_skein("G-1"), a_skein("W-1", "white two-ply")]
        found = best(a_book(*yarns, *skeins, a_plan(), part(200), held=held))
        assert set(given(found)) == {("body", "G-1")}


def test_a_part_that_is_meant_for_one_yarn_is_not_knit_in_another_parts():
    cuff = part(60, "cuff", position=2, yarns=(RoleYarn("main", "white two-ply"),))
    found = best(asking({"G-1": 220, "W-1": 90}, part(200), cuff))
    assert given(found) == {("body", "G-1"): 200, ("cuff", "W-1"): 60}


def test_three_pieces_have_no_couples_and_an_odd_skein_is_halved():
    book = asking({"G-1": 100, "G-2": 103, "G-3": 60}, part(110, "sleeves", copies=2))
    notes = why(best(book))
    assert sum("as long as" in one for one in notes.values()) == 2
    assert sum("wind it in 2 equal balls" in one for one in notes.values()) == 1
    three = asking({"G-1": 100, "G-2": 103}, part(60, "gussets", copies=3))
    assert all("in 3 equal balls" in one for one in why(best(three)).values())


def test_skeins_unlike_in_length_are_no_couple():
    found = best(asking({"G-1": 150, "G-2": 60}, part(90, "sleeves", copies=2)))
    assert all("wind it in 2 equal balls" in one for one in why(found).values())


def test_yarns_without_a_colour_go_by_its_name():
    first, second = a_yarn(GREY, colour_name="Moor"), a_yarn("white two-ply", colour_name="moor")
    found = best(asking({"G-1": 120, "W-1": 120}, first, second, part(200)))
    assert len(found.promises) == 2
    bare = best(asking({"G-1": 120, "W-1": 120}, part(200)))
    assert len(bare.promises) == 1, "nobody said that they look alike"


def no_yarn(*records, **plan):
    book = asking(dict(records[0]), a_plan(yarns=(), **plan), *records[1:])
    return best(book)


def test_a_part_without_a_yarn_takes_one_that_suits():
    found = no_yarn({"G-1": 600, "W-1": 800}, a_part())
    assert {one.holding_id for one in found.promises} <= {"G-1", "W-1"}
    assert found.promises


def test_of_yarns_that_suit_the_one_like_the_rest_of_the_garment():
    plan = a_plan(yarns=(RoleYarn("contrast", GREY),))
    book = asking({"G-1": 600, "W-1": 600}, plan, a_part())
    assert {one.holding_id for one in best(book).promises} == {"G-1"}


def test_where_none_suits_nothing_is_proposed():
    found = best(asking({"G-1": 900}, a_plan(yarns=()), a_part(), tex=3000))
    assert found.promises == ()


def test_prices_are_the_makers_own():
    """Where a cut costs nothing and a scrap a lot, the parts share a skein."""
    lengths = {"G-1": 90, "G-2": 200}
    parts = part(85), part(82, "cuff", position=2)
    cheap = Settings(prices=Prices(join=1.0, cut=0.0, scrap=9.0))
    dear = Settings(prices=Prices(join=1.0, cut=9.0, scrap=0.0))
    assert best(asking(lengths, *parts, settings=cheap)).tally.cuts == 1
    assert best(asking(lengths, *parts, settings=dear)).tally.cuts == 0


def test_how_far_from_the_best_is_said_in_changes_of_skein():
    found = best(asking({"G-1": 160, "G-2": 100}, part(220)))

    def with_bound(bound, problem=found.problem):
        solved = replace(found.solved, bound=bound)
        return replace(found, solved=solved, problem=problem).in_words

    assert with_bound(found.value - 1) == (
        "at most so much from the best as one change of skein would cost"
    )
    assert with_bound(found.value - 2.5) == (
        "at most so much from the best as 3 changes of skein would cost"
    )
    free = replace(found.problem, prices=replace(found.problem.prices, join=0.0))
    assert with_bound(found.value - 1, free) == "not proven to be the best"


def test_more_proof_gives_a_proposal_of_the_same_kind():
    book = asking({f"G-{n}": 60 + 11 * n for n in range(7)}, part(200), part(90, "cuff"))
    found = best(book)
    solved = solve(found.problem, Effort(tries=10))
    again = proposal_of(book, found.asked, found.share, solved)
    assert (again.share, again.odds) == (found.share, found.odds)
    assert given(again) == given(found)


def test_the_same_book_has_the_same_proposal():
    book = asking({f"G-{n}": 60 + 11 * n for n in range(7)}, part(200), part(90, "cuff"))
    assert given(best(book)) == given(best(book))


def test_a_fleece_gives_no_more_than_it_has_after_the_other_plans():
    fleece = a_fleece(yield_pct=100.0)
    grey = a_yarn(GREY, fleece_id="Bramble", target_tex=500.0)
    wool = a_holding("F-1", fleece_id="Bramble", state="carded")
    book = a_book(grey, fleece, wool, a_plan(), part(300), held={"F-1": (100, 0)})
    found = best(book)
    assert found.problem.kinds[0].fleece == 0
    assert 0 < found.problem.fleeces[0] < 100
    assert found.value > found.problem.prices.miss * 300
    first = a_plan("hat", priority=0)
    crown = part(100, "crown", plan_id="hat")
    less = best(replace(book, plans=(*book.plans, first), parts=(*book.parts, crown)))
    assert less.problem.fleeces[0] < found.problem.fleeces[0]


def test_a_plan_that_is_gone():
    with pytest.raises(KeyError):
        propose(asking({}), reckon(asking({})), "mittens")
