"""Where yarns take turns, need, rows and picture all follow the same rows."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.book.gauge import Gauge
from app.book.plan import RoleYarn
from app.book.sequence import Band, Sequence, SequenceYarn
from app.book.shape import Counted, Rectangle, Run, Strand, Trapezoid
from app.craft.fabric import loop_cm
from app.planning import reckon
from app.planning.picture import picture
from app.planning.rows import metres_per_row
from app.planning.schedule import Rows, by_role, schedule, stitches_in
from app.planning.sequence_rows import in_blocks, in_turns, place_in, turns
from tests.books import a_book, a_part, a_plan, a_promise, a_skein, a_yarn

GAUGE, LOOP = Gauge(22.0, 30.0), loop_cm(22.0, 30.0)
HALVES = (SequenceYarn("main", 0.5, 0.5), SequenceYarn("white", 0.5, 0.5))
OUT = (SequenceYarn("main", 1.0, 0.25), SequenceYarn("white", 0.0, 0.75))
TEN = (Run(10, 100, 100),)


def a_fade(**other) -> Sequence:
    return Sequence(**{"kind": "fade", "yarns": OUT} | other)


def letters(found: tuple[str, ...]) -> str:
    return "".join(one[0] for one in found)


def test_half_and_half_changes_every_round_and_flat_every_second_row():
    assert letters(turns(TEN, Sequence("alternate", HALVES))) == "mwmwmwmwmw"
    flat = Sequence("alternate", HALVES, block_rows=2)
    assert letters(turns(TEN, flat)) == "mmwwmmwwmm"


def test_outside_its_rows_an_alternation_changes_nothing():
    found = turns(TEN, Sequence("alternate", HALVES, from_row=4, to_row=7))
    assert letters(found) == "mmm" + "mwmw" + "mmm"


def test_before_a_fade_is_the_yarn_that_leaves_and_after_it_the_one_that_stays():
    found = letters(turns((Run(30, 100, 100),), a_fade(from_row=6, to_row=24)))
    assert found[:5] == "mmmmm"
    assert found[24:] == "wwwwww"
    assert 9 <= found[5:24].count("m") <= 13


def test_a_fade_may_bring_the_main_yarn_in():
    into = (SequenceYarn("main", 0.0, 1.0), SequenceYarn("white", 1.0, 0.0))
    found = letters(turns((Run(20, 100, 100),), a_fade(yarns=into, from_row=5, to_row=16)))
    assert found[:4] == "wwww"
    assert found[16:] == "mmmm"


def test_a_yarn_that_keeps_its_share_goes_on_after_the_fade():
    three = (
        SequenceYarn("main", 0.5, 0.25),
        SequenceYarn("white", 0.3, 0.3),
        SequenceYarn("grey", 0.2, 0.45),
    )
    found = letters(turns((Run(60, 100, 100),), a_fade(yarns=three, from_row=21, to_row=40)))
    assert set(found[:20]) == {"m", "w"}
    assert set(found[40:]) == {"w", "g"}


def test_stripes_follow_each_other_again_and_again():
    bands = (Band("main", 2), Band("white", 1))
    found = turns(TEN, Sequence("stripes", bands=bands, from_row=2))
    assert letters(found) == "mmmwmmwmmw"


def test_a_spiral_gives_each_yarn_a_round_of_its_own():
    three = tuple(SequenceYarn(role, 0.9, 0.1) for role in ("main", "white", "grey"))
    found = turns((Run(9, 80, 80),), Sequence("alternate", three, spiral=True))
    assert sorted(found[:3]) == sorted(found[3:6]) == ["grey", "main", "white"]


@pytest.mark.parametrize(
    "nothing",
    [
        Sequence("alternate"),
        Sequence("stripes"),
        Sequence("fade", (SequenceYarn("white", 0.0, 0.0),)),
        Sequence("fade", (SequenceYarn("white", 1.0, 0.0),)),
    ],
)
def test_without_a_share_the_rows_stay_as_they_are(nothing):
    assert set(turns(TEN, nothing)) <= {"main"}


@pytest.mark.parametrize(
    ("rows", "from_row", "to_row", "place"),
    [(10, 1, None, (0, 10)), (10, 4, 7, (3, 7)), (10, 4, 70, (3, 10)), (10, 40, None, (10, 10))],
)
def test_a_sequence_ends_with_its_piece(rows, from_row, to_row, place):
    assert place_in(rows, Sequence("alternate", from_row=from_row, to_row=to_row)) == place


def test_blocks_are_rounds_or_pairs_of_rows():
    assert in_blocks([1.0, 2.0, 3.0], 1) == [1.0, 2.0, 3.0]
    assert in_blocks([1.0, 2.0, 3.0], 2) == [3.0, 3.0]


def test_a_piece_without_a_sequence_keeps_its_runs():
    assert in_turns(TEN, None) is TEN


def test_rows_of_one_yarn_stay_together_and_split_where_it_changes():
    found = in_turns(
        (Run(4, 100, 92),), Sequence("stripes", bands=(Band("white", 3), Band("main", 1)))
    )
    assert found == (
        Rows(3, 100, 94, "stocking stitch", (Strand("white"),)),
        Rows(1, 94, 92, "stocking stitch", (Strand("main"),)),
    )


def test_only_its_own_strand_is_knit_in_turn():
    stranded = Run(2, 100, 100, "stranded", strands=(Strand("main", 0.75), Strand("red", 0.25)))
    bands = (Band("white", 1), Band("red", 1))
    first, second = in_turns((stranded,), Sequence("stripes", bands=bands))
    assert first.strands == (Strand("white", 0.75), Strand("red", 0.25))
    assert second.strands == (Strand("red", 1.0),)


KINDS = st.sampled_from(["alternate", "fade", "stripes"])
SOME = st.integers(0, 200)


@pytest.mark.property
@given(
    st.lists(st.tuples(st.integers(1, 40), SOME, SOME), min_size=1, max_size=4),
    KINDS,
    st.integers(1, 60),
    st.one_of(st.none(), st.integers(1, 90)),
    st.sampled_from([1, 2]),
    st.booleans(),
)
def test_no_stitch_is_lost_or_knit_twice(runs, kind, first, last, block, spiral):
    whole = tuple(Run(*one) for one in runs)
    bands = (Band("main", 3), Band("white", 2))
    sequence = Sequence(kind, OUT, bands, "main", first, last, block, spiral)
    found = in_turns(whole, sequence)
    assert sum(one.rows for one in found) == sum(one.rows for one in whole)
    assert sum(map(stitches_in, found)) == pytest.approx(sum(map(stitches_in, whole)))
    assert sum(by_role(found).values()) == pytest.approx(sum(by_role(whole).values()))


def a_garment(part, **skeins):
    yarns = (RoleYarn("main", "grey two-ply"), RoleYarn("white", "white"))
    return a_book(
        a_yarn(),
        a_yarn("white"),
        a_skein("G-1"),
        a_skein("W-1", "white"),
        a_plan(yarns=yarns),
        part,
        a_promise("G-1", 400_000),
        a_promise("W-1", 400_000, role="white", **skeins),
        held={"G-1": (180, 400), "W-1": (180, 400)},
    )


def rows_by_skein(book) -> list[str | None]:
    (piece, *_) = picture(book, reckon(book), "pullover").pieces
    return [
        band.knit.threads[0].holding_id
        for band in piece.bands
        for _ in range(band.first, band.last + 1)
    ]


@pytest.mark.parametrize("shape", [Rectangle(455, 300), Trapezoid(300, 400, 300), Counted(100, 90)])
def test_need_rows_and_picture_tell_the_same(shape):
    sequence = Sequence("fade", OUT, from_row=21, to_row=70)
    part = a_part(shape=shape, sequence=sequence, edges="cast on and off")
    book = a_garment(part)
    runs = schedule(shape, GAUGE)
    roles = turns(runs, sequence)
    drawn = rows_by_skein(book)
    assert drawn == [{"main": "G-1", "white": "W-1"}[one] for one in roles]
    metres = metres_per_row(part, GAUGE, LOOP)
    (answer,) = reckon(book).plan("pullover").parts
    assert answer.need.value == pytest.approx(sum(metres))
    told = {one.what: one.value for one in answer.working}
    for role, what in (("main", "Yarn for body"), ("white", "Yarn for body, white")):
        own = sum(m for m, one in zip(metres, roles, strict=True) if one == role)
        assert told[what] == pytest.approx(own)


def test_the_working_counts_the_rows_of_each_yarn():
    book = a_garment(a_part(shape=Counted(100, 90), sequence=Sequence("alternate", HALVES)))
    (answer,) = reckon(book).plan("pullover").parts
    (step,) = (one for one in answer.working if one.what == "Rows of body in each yarn")
    assert (step.how, step.value) == ("45 of main, 45 of white", 90)


def test_a_measured_piece_stays_measured_and_follows_its_gauge():
    part = a_part(shape=Rectangle(455, 300), sequence=Sequence("alternate", HALVES))
    book = a_garment(part)
    finer = replace(book, plans=(replace(book.plan["pullover"], gauge=Gauge(24.0, 34.0)),))
    assert len(rows_by_skein(book)) == 90
    assert len(rows_by_skein(finer)) == 102


def test_two_sleeves_are_knit_alike_each_from_its_half_of_the_ball():
    sleeves = a_part(shape=Counted(60, 40), copies=2, sequence=Sequence("alternate", HALVES))
    one, other = picture(book := a_garment(sleeves), reckon(book), "pullover").pieces
    assert one.bands == other.bands
