"""The rows of a piece in words: what is counted in them is what the words of the piece tell."""

from itertools import accumulate

import pytest

from app.book.sequence import Sequence, SequenceYarn
from app.book.shape import Counted, Metres, Run, Runs
from app.craft.constructions import constructions
from app.craft.constructions.drawing import Knit as Gauged
from app.craft.constructions.wanting import want
from app.planning.knitting.shaped import AS_TOLD, row_changes
from app.planning.knitting.strip import strip
from app.planning.needs import needs_of
from app.planning.picture_rows import Knit, Thread
from app.planning.yarns import Lots
from tests.books import a_book, a_part, a_plan, a_yarn
from tests.craft.constructions.follow import rows_by_words

BODY = {"chest": 96.0, "upper arm": 32.0, "wrist": 17.0, "head": 57.0, "foot": 24.0, "hand": 19.0}
WHITE, GREY = Thread("main", 1.0, "W-1"), Thread("main", 1.0, "G-1")


def rows_of(shape, knit=None, **part):
    book = a_book(a_yarn(), a_plan(), a_part(shape=shape, **part))
    (need,) = needs_of(book.plan["pullover"], book.parts, Lots(book))
    return strip(need, knit or [Knit((GREY,))] * (need.rows or 0))


def pieces():
    for word, one in constructions().items():
        measures = {name: cm for name, cm in BODY.items() if name in one.measures}
        drawing = one.draw(want(one, measures, Gauged(22, 30)).wanted)
        for piece in drawing.pieces:
            yield pytest.param(piece, id=f"{word}: {piece.name}")


@pytest.mark.parametrize("piece", [*pieces()])
def test_what_is_counted_is_what_the_words_tell(piece):
    runs = tuple(Run(one.rows, one.stitches, one.stitches_to) for one in piece.runs)
    changes = row_changes(runs, piece.in_round, piece)
    counts = [*accumulate((one.stitches for one in changes), initial=piece.runs[0].stitches)][1:]
    told = rows_by_words(piece)
    assert len(counts) == len(told) == piece.rows
    for count, words, change in zip(counts, told, changes, strict=True):
        assert count == words or not change.counted
    assert counts[-1] == piece.runs[-1].stitches_to


def test_nearly_every_row_of_every_construction_is_counted():
    rows = [
        one.counted
        for param in pieces()
        for piece in param.values
        for one in row_changes((), piece.in_round, piece)
    ]
    assert sum(rows) / len(rows) > 0.95


def test_a_sleeve_row_by_row():
    """48 to 80 stitches over 135 rounds: 16 pairs, by hand every 8th (9 times) and every 9th."""
    rows = rows_of(
        Runs((Run(135, 48, 80),)), place="sleeve", in_round=True, edges="cast on and off"
    )
    assert rows[0].change == "cast on 48, 2 more"
    assert (rows[0].stitches, rows[1].stitches, rows[-1].stitches) == (50, 50, 80)
    assert sum("2 more" in one.change for one in rows) == 16
    assert rows[-1].change == "then cast off 80"
    assert [one.number for one in rows] == [*range(1, 136)]


def test_a_piece_picked_up():
    rows = rows_of(Counted(90, 2), edges="picked up and cast off")
    assert [one.change for one in rows] == ["pick up 90", "then cast off 90"]


def test_stitches_cast_off_and_increased_between_two_runs():
    runs = (Run(2, 100, 100), Run(2, 90, 90, "1×1 rib"), Run(2, 96, 96), Run(2, 96, 84))
    rows = rows_of(Runs(runs), in_round=False, place="back")
    assert [one.change for one in rows][1:] == [
        *("", "cast off 10", "", "6 more, spread evenly", "", "cast off 6", "cast off 6")
    ]
    assert [one.pattern for one in rows][2] == "1×1 rib"


def test_flat_steps():
    """18 off on each side of two in six rows is 6 on each side in every second one."""
    rows = rows_of(Runs((Run(7, 40, 4),)), place="back", in_round=False)
    assert [one.stitches for one in rows] == [28, 28, 16, 16, 4, 4, 4]


def test_an_odd_number_of_stitches_in_steps_is_spread():
    assert rows_of(Runs((Run(4, 40, 5),)), place="back")[-1].stitches == 5


def test_a_new_skein_is_joined_once():
    knit = [Knit((one,)) for one in (GREY, GREY, WHITE, GREY, WHITE, WHITE)]
    rows = rows_of(Counted(10, 6), knit)
    assert [one.joins for one in rows] == [(), (), ("W-1",), (), (), ()]
    assert rows[2].threads == (WHITE,)


def test_a_fade_changes_no_stitches():
    fade = Sequence("fade", (SequenceYarn("main", 1, 0), SequenceYarn("white", 0, 1)))
    rows = rows_of(Counted(10, 6), sequence=fade)
    assert {one.stitches for one in rows} == {10}


def test_an_amount_of_yarn_has_no_rows():
    assert rows_of(Metres(10_000)) == ()


def test_shaping_told_in_another_way_is_about_right():
    (yoke,) = (p.values[0] for p in pieces() if p.id == "pullover, raglan: yoke")
    changes = row_changes((), yoke.in_round, yoke)
    told = {one.words for one in changes if not one.counted}
    assert told == {AS_TOLD, f"cast off 20, then {AS_TOLD}"}
