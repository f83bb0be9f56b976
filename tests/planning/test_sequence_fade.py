"""A fade keeps within what there is and ends where it was asked to, whatever the piece."""

from random import Random

import pytest

from app.book.plan import Part
from app.book.shape import Run, Runs
from app.craft.alternate import furthest
from app.planning.sequence_fade import ENDS_AT, Fade, fade
from app.planning.sequence_piece import Piece, last_row_of, taken_by
from app.planning.sequence_refused import Refused

CASES = 1000


def a_piece(*runs: tuple[int, int, int], block_rows: int = 1, metres: float = 0.018) -> Piece:
    """Runs of (rows, stitches, stitches to), `metres` in a stitch."""
    found = tuple(Run(*one) for one in runs)
    wide = [
        run.stitches + (run.stitches_to - run.stitches) * (row + 0.5) / run.rows
        for run in found
        for row in range(run.rows)
    ]
    part = Part("body", "pullover", "body", Runs(found))
    return Piece(part, found, tuple(metres * one for one in wide), block_rows)


def a_tube(rows: int = 100, block_rows: int = 1) -> Piece:
    """1 m a row."""
    return a_piece((rows, 100, 100), block_rows=block_rows, metres=0.01)


def out(metres: float, **other) -> Fade:
    """The main yarn leaves for a white one."""
    same = {"leaves": "main", "come": (("white", 1.0),), "have": {"main": metres}}
    return Fade(**same | other)


def letters(knit) -> str:
    return "".join(role[0] for piece, one in knit for role in piece.roles(one))


def refusal(pieces, asked) -> Refused:
    with pytest.raises(Refused) as found:
        fade(pieces, asked)
    return found.value


def test_it_begins_as_late_as_the_yarn_allows():
    """60 m for rows of 1 m that are to end with row 80: half a metre is kept for rounding, the fade
    takes 5/8 of its rows on average, so it begins where (F − 1) + 0.625 × (81 − F) comes to
    59.5 at most: at row 26, or a little before for its last row to be the one wanted."""
    knit = fade([a_tube()], out(60.0, to_row=80))
    ((_, one),) = knit
    assert one is not None
    assert 22 <= one.from_row <= 26
    assert one.to_row == 80
    assert letters(knit)[79] == "m"
    assert letters(knit)[80:] == "w" * 20
    assert 58 <= taken_by(knit)["main"] <= 60


def test_the_yarn_that_leaves_takes_fewer_turns_towards_the_end():
    found = letters(fade([a_tube(120)], out(90.0)))
    thirds = [found[at : at + 30].count("m") for at in (0, 30, 60, 90)]
    assert thirds == sorted(thirds, reverse=True)
    assert thirds[0] == 30


def test_too_little_for_a_full_beginning_begins_with_a_smaller_share():
    ((_, one),) = fade([a_tube()], out(45.0))
    assert one is not None
    assert one.from_row == 1
    assert 0.5 < one.yarns[0].share < 0.8


def test_flat_it_changes_on_every_second_row_and_begins_on_an_odd_one():
    knit = fade([a_tube(100, block_rows=2)], out(60.0, to_row=81))
    ((_, one),) = knit
    assert one is not None
    assert (one.from_row % 2, one.to_row, one.block_rows) == (1, 80, 2)
    found = letters(knit)
    assert all(found[at] == found[at + 1] for at in range(0, 100, 2))


def test_it_begins_where_she_says():
    ((_, one),) = fade([a_tube()], out(73.0, from_row=41, to_row=90))
    assert one is not None
    assert one.from_row == 41


def test_one_fade_over_body_and_yoke():
    body, yoke = a_tube(60), a_piece((60, 100, 40), metres=0.01)
    knit = fade([body, yoke], out(70.0))
    (_, low), (_, high) = knit
    assert low is not None
    assert high is not None
    assert low.to_row is None
    assert high.from_row == 1
    assert low.yarns[0].share_to == pytest.approx(high.yarns[0].share, abs=0.02)
    assert taken_by(knit)["main"] <= 70


def test_a_piece_before_the_fade_stays_as_it_is_and_one_after_it_has_the_yarn_that_came():
    first, middle, last = a_tube(30), a_tube(60), a_tube(30)
    (_, before), (_, one), (_, after) = fade([first, middle, last], out(72.0, to_row=90))
    assert before is None
    assert one is not None
    assert after is not None
    assert after.kind == "alternate"
    assert [(yarn.role, yarn.share) for yarn in after.yarns] == [("white", 1.0)]


def test_a_yarn_that_is_not_the_main_one_is_named_before_its_fade():
    asked = Fade("red", (("main", 1.0),), {"red": 75.0}, to_row=90)
    (_, before), (_, one) = fade([a_tube(30), a_tube(90)], asked)
    assert before is not None
    assert before.yarns[0].role == "red"
    assert one is not None


def test_the_yarns_that_come_share_by_their_weights():
    come = (("white", 2.0), ("grey", 1.0))
    found = taken_by(fade([a_tube(200)], out(110.0, come=come)))
    assert found["white"] == pytest.approx(2 * found["grey"], abs=3)


@pytest.mark.parametrize(
    ("asked", "reason"),
    [
        (out(101.0), "enough without a fade"),
        (out(20.0), "too little"),
        (out(200.0, from_row=50, to_row=1), "no room for a fade"),
        (out(40.0, from_row=61), "too little"),
        (out(60.0, have={"main": 60.0, "white": 30.0}), "too little"),
    ],
)
def test_what_cannot_be_is_refused_with_the_reason(asked, reason):
    assert refusal([a_tube()], asked).reason == reason


def test_a_refusal_says_how_far_it_reaches_and_what_it_lacks():
    """A quarter of 100 m and half a metre for rounding are 25.5 m; 20 m reach row 78 so."""
    found = refusal([a_tube()], out(20.0))
    assert (found.role, found.row) == ("main", 78)
    assert found.short_m == pytest.approx(5.5)
    other = refusal([a_tube()], out(60.0, have={"main": 60.0, "white": 30.0}))
    assert other.role == "white"
    assert 10 <= other.short_m < 13


def test_too_little_for_where_she_wants_to_begin():
    found = refusal([a_tube()], out(40.0, from_row=61))
    assert (found.role, found.row) == ("main", 100)
    assert found.short_m > 20


def test_one_row_is_no_fade():
    assert refusal([a_tube(1)], out(5.0)).reason == "no room for a fade"


@pytest.mark.property
@pytest.mark.parametrize("seed", range(20))
def test_it_ends_where_it_was_asked_to_and_never_passes_what_there_is(seed):
    """Two to six yarns, one piece or two, rows alike or not, in the round and flat: the last row of
    the yarn that leaves lies at most ½ ÷ its last share + 1 blocks before the wanted one, of more
    than two yarns the bound of their rule ÷ its last share + 1."""
    chance = Random(seed)
    refused = 0
    for _ in range(CASES // 20):
        pieces, asked = a_case(chance)
        try:
            knit = fade(pieces, asked)
        except Refused:
            refused += 1
            continue
        ends = [one.yarns[0].share_to for _, one in knit if one and one.kind == "fade"][-1]
        assert ends >= ENDS_AT - 1e-3
        window = furthest(1 + len(asked.come)) / ends + 1
        block = pieces[0].block_rows
        missed = asked.to_row - last_row_of("main", knit)
        assert 0 <= missed <= window * block + block - 1
        assert taken_by(knit)["main"] <= asked.have["main"]
    assert refused < CASES // 20 * 0.7


def a_case(chance: Random) -> tuple[list[Piece], Fade]:
    block = chance.choice((1, 2))
    pieces = [_any_piece(chance, block) for _ in range(chance.choice((1, 1, 2)))]
    rows = sum(one.rows for one in pieces)
    whole = sum(sum(one.metres) for one in pieces)
    yarns = chance.choice((1, 1, 2, 3, 4, 5))
    come = tuple((f"yarn {at}", chance.uniform(0.2, 1.0)) for at in range(yarns))
    to_row = chance.choice((rows, chance.randint(rows // 2, rows)))
    have = {"main": whole * chance.uniform(0.2, 0.95)}
    return pieces, Fade("main", come, have, to_row=to_row)


def _any_piece(chance: Random, block: int) -> Piece:
    runs = []
    for _ in range(chance.randint(1, 3)):
        begin = chance.randint(40, 250)
        end = chance.choice((begin, chance.randint(40, 250)))
        runs.append((chance.randint(8, 36), begin, end))
    return a_piece(*runs, block_rows=block)
