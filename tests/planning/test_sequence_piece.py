"""A part laid out for yarns to take turns in it: metres of every row, in all its copies."""

import pytest

from app.book.plan import RoleYarn
from app.book.sequence import Band, Sequence, SequenceYarn
from app.book.shape import Counted, Metres, Run, Runs, Strand
from app.planning.needs import needs_of
from app.planning.sequence_piece import Piece, beyond_supply, last_row_of, piece_of, taken_by
from app.planning.yarns import Lots
from tests.books import a_book, a_part, a_plan, a_yarn

HALVES = (SequenceYarn("main", 0.5, 0.5), SequenceYarn("white", 0.5, 0.5))


def laid(**part) -> Piece | None:
    yarns = tuple(RoleYarn(one, "grey two-ply") for one in ("main", "white", "red"))
    book = a_book(a_yarn(), a_plan(yarns=yarns), a_part(**part))
    (need,) = needs_of(book.plan["pullover"], list(book.parts), Lots(book))
    return piece_of(need)


def test_two_sleeves_are_counted_together_and_sewn_with_the_first_row():
    """60 stitches at 1.809 cm are 1.085 m; both sleeves together twice that."""
    piece = laid(shape=Counted(60, 30), copies=2, edges="cast on, off and seams")
    assert piece is not None
    assert piece.metres[1] == pytest.approx(2 * 60 * 0.018091, abs=1e-3)
    assert piece.metres[0] > 2 * piece.metres[1]
    plain = laid(shape=Counted(60, 30), copies=2)
    assert plain is not None
    assert sum(plain.metres) == pytest.approx(30 * plain.metres[1])


@pytest.mark.parametrize(("in_round", "block"), [(True, 1), (False, 2)])
def test_in_the_round_the_yarn_changes_every_round_else_on_every_second_row(in_round, block):
    piece = laid(shape=Counted(60, 30), in_round=in_round, place="piece")
    assert piece is not None
    assert piece.block_rows == block
    assert piece.longest == pytest.approx(block * piece.metres[1])


def test_its_sequence_is_left_out_of_the_ground_it_is_solved_on():
    piece = laid(shape=Counted(60, 30), sequence=Sequence("alternate", HALVES))
    assert piece is not None
    assert piece.roles(None) == ("main",) * 30
    assert sum(piece.metres) == pytest.approx(60 * 30 * 0.018091, rel=1e-3)


def test_of_a_stranded_piece_only_the_main_yarn_takes_turns():
    whole = laid(shape=Runs((Run(10, 100, 100),)))
    stranded = Run(10, 100, 100, strands=(Strand("main", 0.75), Strand("red", 0.25)))
    piece = laid(shape=Runs((stranded,)))
    assert whole is not None
    assert piece is not None
    assert piece.metres[3] == pytest.approx(0.75 * whole.metres[3])
    assert piece.stitches == (75.0,) * 10


@pytest.mark.parametrize(
    "shape",
    [
        Metres(9_000),
        Runs((Run(2, 0, 0, strands=()),)),
        Runs((Run(2, 90, 90, strands=(Strand("red"),)),)),
    ],
)
def test_an_amount_has_no_rows_and_some_rows_are_not_in_the_main_yarn(shape):
    assert laid(shape=shape) is None


def test_what_each_yarn_takes_and_where_it_ends():
    piece = laid(shape=Counted(60, 30))
    assert piece is not None
    knit = [(piece, None), (piece, Sequence("stripes", bands=(Band("main", 2), Band("white", 1))))]
    taken = taken_by(knit)
    row = piece.metres[0]
    assert taken == {"main": pytest.approx(50 * row), "white": pytest.approx(10 * row)}
    assert (last_row_of("main", knit), last_row_of("white", knit)) == (59, 60)
    assert last_row_of("red", knit) == 0
    assert beyond_supply(taken, {"main": 51 * row, "white": 9 * row}) == {
        "white": pytest.approx(row)
    }
