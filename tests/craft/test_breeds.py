import pytest

from app.craft.breeds import (
    all_rows,
    breed_names,
    rows_of,
    typical_micron,
    typical_staple,
    typical_yield,
)
from app.craft.tables import table


def test_conflicting_sources_are_both_kept():
    """Merino: 62 to 70 % in one print, 45 to 55 % in another; the yield spans both."""
    yields = {row.yield_pct for row in rows_of("merino")}
    assert {(62, 70), (45, 55)} <= yields
    typical = typical_yield("Merino")
    assert typical.figure.value == pytest.approx(57.5)
    assert typical.figure.u == pytest.approx(12.5)
    assert typical.standing == "published"
    assert len(typical.sources) == 2


def test_a_breed_nobody_has_a_yield_of_is_assumed():
    for breed in ("Herdwick", "no such sheep", ""):
        typical = typical_yield(breed)
        assert (typical.figure.value, typical.figure.u) == (62, 10)
        assert typical.standing == "assumed"
        assert typical.sources == ()
    assert typical_yield(" ").figure.causes == {"yield of an unknown breed": 10}


def test_a_remembered_yield_says_so():
    assert typical_yield("Shetland").standing == "memory"


def test_a_narrow_print_does_not_make_one_fleece_sure():
    """75 to 80 % in print, but a single fleece strays by four points."""
    assert typical_yield("bluefaced  leicester").figure.causes == {
        "yield of bluefaced  leicester": 4.0
    }


def test_the_sort_of_sheep_finds_its_breed_too():
    assert rows_of("Finnish Landrace")[0].name == "Finnsheep"
    assert rows_of("") == ()


def test_fineness_and_staple():
    """Corriedale staple 3.5 to 6 in and 4 to 6 in: 88.9 to 152.4 mm."""
    assert typical_micron("Corriedale") == (24.5, 31.5)
    assert typical_staple("Corriedale") == pytest.approx((88.9, 152.4))
    assert typical_micron("Herdwick") is None
    assert typical_staple("Romney") is None


def test_every_row_makes_sense_and_has_a_source():
    for row in all_rows():
        assert row.source
        assert row.standing in ("published", "memory")
        assert (row.standing == "memory") == (row.source == "remembered, not seen")
        for low, high in filter(None, (row.yield_pct, row.micron, row.staple_mm)):
            assert 0 < low <= high
        assert row.yield_pct is None or row.yield_pct[1] <= 100


def test_names_come_once_and_in_order():
    names = breed_names()
    assert names == sorted(set(names))
    assert "Jacob" in names


def test_a_table_that_is_not_there():
    with pytest.raises(FileNotFoundError):
        table("unicorns")
