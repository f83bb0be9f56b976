"""Which size at the gauge really got: the fit, the lengths, the metres, the shelf."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.book.gauge import Gauge
from app.book.pattern import PatternSize, SizePart
from app.craft.sizes import EASES, Measured
from app.planning.pattern_fit import EaseRange, around, belied, ease_range, wearer, width_cm
from app.planning.pattern_yarn import FreeShelf, contradict
from app.planning.reckoning import reckon
from app.planning.which_size import which_size
from tests.books import a_book, a_part, a_plan, a_promise, a_skein, a_yarn
from tests.patterns import a_size, five_sizes

INES = {"chest": 96.0, "upper arm": 30.0, "wrist": 16.0}
STANDARD = EaseRange(5, 10)
PATTERN = five_sizes()


def asked(own=PATTERN.gauge, case="stitches", wanted=STANDARD, pattern=PATTERN, body=None, **plan):
    told = a_plan(gauge=own, **plan)
    book = a_book(a_yarn(), a_skein(), a_plan(), a_part(), held={"G-1": (450.0, 1000.0)})
    return which_size(book, told, pattern, case, wearer(body or INES), wanted)


@pytest.mark.golden
@pytest.mark.parametrize(
    ("own", "case", "best", "width"),
    [
        ((22, 30), "stitches", "3", 104.1),
        ((20, 28), "stitches", "2", 106.0),
        ((20, 28), "stitches and rows", "2", 106.0),
        ((20, 28), "size", "3", 104.0),
        ((24, 33), "stitches", "4", 102.5),
    ],
)
def test_the_size_for_96_cm_with_5_to_10_cm_of_ease(own, case, best, width):
    """212 st at 20 are 106 cm, 246 at 24 are 102.5; counted anew, 208 st at 20 are 104."""
    found = asked(Gauge(*own), case)
    assert found.best.size.name == best
    assert found.best.whole.garment_cm == pytest.approx(width, abs=0.05)
    assert found.best.beyond == 0
    assert len(found.sizes) == 5


def test_lengths_come_from_the_row_gauge():
    by_tape = asked(Gauge(20, 28)).best.pieces[0]
    assert (by_tape.name, by_tape.count.rows, by_tape.length_cm) == ("Body", 112, 40)
    by_rows = asked(Gauge(20, 28), "stitches and rows").best.pieces[0]
    assert (by_rows.count.rows, by_rows.length_cm) == (120, pytest.approx(42.86, abs=0.01))


def test_the_tightest_place_decides():
    """An upper arm of 38 cm wants 41 cm; 80 stitches at 22 are 36.4 cm, 92 are 41.8."""
    found = asked(body=INES | {"upper arm": 38.0})
    assert found.sizes[2].tightest.place == "upper arm"
    assert found.sizes[2].beyond > 0
    assert found.sizes[2].tightest.ease_cm == pytest.approx(-1.64, abs=0.01)
    wide = EaseRange(5, 25)
    assert asked(body=INES | {"upper arm": 38.0}, wanted=wide).best.size.name == "5"
    assert asked(body=INES | {"wrist": 24.0}).best.tightest.place == "wrist"


def test_where_no_size_fits_the_nearest_is_named():
    found = asked(body={"chest": 130.0})
    assert found.best.size.name == "5"
    assert found.best.beyond > 0
    small = asked(body={"chest": 60.0}).best
    assert (small.size.name, small.too_wide) == ("1", True)
    assert not found.best.too_wide


@pytest.mark.golden
def test_metres_by_counts_and_by_the_stated_amount():
    """Body 229 × 120, sleeves 2 × 135 × 65 and yoke 66 × 219.5 stitches of 1.8091 cm, and edges;
    1310 m stated, 83 to 84 % of it taken."""
    best = asked().best
    stitches = 229 * 120 + 2 * 135 * 65 + 66 * 219.5
    assert best.counted.knit.value == pytest.approx(stitches * 0.018091, rel=0.08)
    assert best.counted.knit.value > stitches * 0.018091
    assert best.stated.knit.value == pytest.approx(1310 * 0.8364, rel=0.001)
    assert best.yarn is best.counted
    assert best.counted.need.value > best.counted.knit.value
    assert not best.contradicts


def test_the_three_cases_scale_the_metres():
    printed = asked().best.counted
    for case in ("stitches", "stitches and rows", "size"):
        own = asked(Gauge(20, 28), case)
        same = own.sizes[2].counted
        assert same.knit.value / printed.knit.value == pytest.approx(own.factor, rel=0.01)


def test_counts_and_stated_amount_that_contradict_each_other():
    size = replace(a_size("3"), stated_mm=3_000_000)
    best = asked(pattern=five_sizes(sizes=(size,))).best
    assert best.contradicts
    assert best.yarn is best.counted
    assert contradict(best.counted, None) is contradict(None, best.stated) is False


def test_a_size_without_counts_goes_by_what_is_stated():
    size = PatternSize("M", 1040, 1_200_000, (SizePart("Body"), SizePart("Sleeves", copies=2)))
    best = asked(pattern=five_sizes(sizes=(size,))).best
    assert best.counted is None
    assert best.yarn is best.stated
    assert best.uncounted == ("Body", "Sleeves")
    bare = asked(pattern=five_sizes(sizes=(PatternSize("M", 1040),))).best
    assert bare.yarn is None
    assert bare.whole.garment_cm == 104


def test_the_shelf_covers_what_is_free_of_the_plans_yarn():
    best = asked(sureness_pct=90.0).best
    assert 0 < best.counted.odds < 1
    assert best.counted.short_m >= 0
    none = asked(yarns=()).best.counted
    assert (none.odds, none.short_m) == (None, None)


def test_what_is_promised_to_this_plan_counts_as_free_and_to_others_does_not():
    plan, hat = a_plan(), a_plan("hat", priority=2)
    parts = (a_part(), a_part("crown", plan_id="hat"))
    mine = a_promise(mm=300_000)
    theirs = a_promise(id="theirs", plan_id="hat", part_id="crown", mm=300_000)
    held = {"G-1": (450.0, 1000.0)}
    records = (a_yarn(), a_skein(), plan, hat, *parts)
    odds = [
        FreeShelf(a_book(*records, *promises, held=held), plan).size_yarn(parts[:1]).odds
        for promises in ((), (mine,), (mine, theirs))
    ]
    assert odds[0] == odds[1] > odds[2]


def test_odds_are_those_the_plan_will_have_with_all_of_it_promised():
    plan, part = a_plan(), a_part()
    records = (a_yarn(), a_skein(), plan, part)
    book = a_book(*records, held={"G-1": (255.0, 530.0)})
    before = FreeShelf(book, plan).size_yarn((part,))
    promised = a_book(*records, a_promise(mm=530_000), held={"G-1": (255.0, 530.0)})
    after = reckon(promised).plan(plan.id)
    assert before.odds == pytest.approx(after.odds, abs=1e-6)
    assert before.need.value == pytest.approx(after.need.value)


def test_a_width_that_its_stitches_belie():
    size = PatternSize("M", 1200, None, (SizePart("Body", cast_on=229, rows=120),))
    assert belied(PATTERN, size) == pytest.approx(104.1, abs=0.05)
    assert width_cm(PATTERN, size, "stitches", Gauge(20, 28)) == pytest.approx(132)
    assert belied(PATTERN, a_size("3")) is None


@pytest.mark.parametrize(
    ("parts", "width"),
    [
        (("Back", "Front"), 2 * 110 / 2.0),
        (("Back", "Sleeve"), 110.0),
        (("Crown",), None),
    ],
)
def test_flat_pieces_go_around_together(parts, width):
    pieces = tuple(SizePart(one, cast_on=110, rows=60) for one in parts)
    pattern = five_sizes(sizes=(PatternSize("M", 1000, None, pieces),))
    found = width_cm(pattern, pattern.sizes[0], "stitches", Gauge(20, 28))
    assert found == pytest.approx(width or 110)


@pytest.mark.parametrize(
    ("name", "measure"),
    [("Cabled hat", "head"), ("Long socks", "foot"), ("Mittens", "hand"), ("Pullover", "chest")],
)
def test_what_the_width_goes_around(name, measure):
    assert around(five_sizes(name=name)) == measure


def test_a_hat_is_measured_on_the_head():
    sizes = tuple(PatternSize(str(cm), cm * 10) for cm in (44, 48, 52, 56))
    found = asked(
        pattern=five_sizes(name="Hat", sizes=sizes),
        body={"head": 56.0},
        wanted=ease_range("head", wearer({"head": 56.0}), EASES[2]),
    )
    assert (found.around, found.best.size.name) == ("head", "52")
    assert [one.place for one in found.best.fits] == ["head"]


def test_ease_is_at_least_half_a_size_wide_either_way():
    known = wearer({"chest": 96.0})
    standard = next(one for one in EASES if one.name == "standard")
    assert ease_range("chest", known, standard) == EaseRange(5, 10)
    assert ease_range("chest", known, 0.0) == EaseRange(-2.5, 2.5)
    assert EaseRange(-2.5, 2.5).middle_cm == 0


def test_a_body_outside_the_table_is_refused():
    with pytest.raises(ValueError, match="between 30 and 180"):
        wearer({"chest": 20.0})
    assert wearer({"foot": 24.0}) == {"foot": Measured(24.0, 0.0, "measured")}


@pytest.mark.parametrize("wrong", [{"gauge": None}, {"pattern": five_sizes(sizes=())}])
def test_without_a_gauge_or_sizes_there_is_nothing_to_choose(wrong):
    plan = a_plan(gauge=wrong.get("gauge", PATTERN.gauge))
    with pytest.raises(ValueError, match="gauge"):
        which_size(
            a_book(a_yarn(), plan),
            plan,
            wrong.get("pattern", PATTERN),
            "size",
            wearer(INES),
            STANDARD,
        )


@pytest.mark.property
@given(st.floats(10, 40), st.floats(10, 60))
def test_a_larger_size_is_never_narrower(stitches, rows):
    own = Gauge(stitches, rows)
    for case in ("stitches", "stitches and rows", "size"):
        widths = [width_cm(PATTERN, one, case, own) for one in PATTERN.sizes]
        assert widths == sorted(widths)
