"""The demo's four sheep, two Corriedales and two Cheviots, and what was spun from them in 2026."""

from dataclasses import replace
from datetime import date

from app.book.holding import Holding
from app.book.woolbook import Portion, spin
from tests.demo.diary import Diary
from tests.demo.shelf import Wool, a_bag, a_lot, skeins

SHORN = date(2026, 6, 6)
WASHED = date(2026, 6, 20)
CARDED = date(2026, 7, 11)


def bramble(diary: Diary, wool: Wool) -> None:
    fleece, raw = diary.fleece(
        "F-1",
        SHORN,
        4300,
        "raw",
        name="Bramble",
        breed="Corriedale",
        yield_pct=57.0,
        micron=28.0,
        staple_mm=110,
        colour="#ece3d0",
        colour_name="cream",
        source="our own flock, ewe of five years",
        notes="The britch was kept apart for the garden.",
    )
    batts = a_bag(diary, fleece, "F-1 batts", "carded", WASHED)
    diary.work_up(raw, batts, WASHED, 2000, 969, "Skirted and scoured the shoulders first.")
    diary.work_up(batts, batts, CARDED, 969, 901, "Carded on the drum carder, twice through.")
    cream = a_lot(diary, wool, "B", fleece, "Bramble two-ply", 2, 450.0)
    skeins(
        diary,
        wool,
        cream,
        batts,
        date(2026, 7, 25),
        [
            {"grams": 96, "turns": 142, "before": 153, "wraps": 12},
            {"grams": 101, "turns": 149, "before": 160},
            {"grams": 88, "turns": 133},
            {"grams": 94, "turns": 137.5, "wraps": 12.5},
            {"grams": 97, "turns": 146},
        ],
    )
    gold = a_lot(
        diary,
        wool,
        "G",
        fleece,
        "Onion gold two-ply",
        2,
        430.0,
        colour="#c99a3f",
        colour_name="onion-skin gold",
        notes="Dyed in the skein with onion skins after an alum mordant.",
    )
    skeins(
        diary,
        wool,
        gold,
        batts,
        date(2026, 8, 22),
        [
            {"grams": 93, "turns": 144, "dye_lot": "pot 1", "wraps": 12.5},
            {"grams": 90, "turns": 140, "dye_lot": "pot 1"},
            {"grams": 96, "turns": 147, "dye_lot": "pot 2", "colour": "#c08f35"},
            {"grams": 87, "turns": 137, "dye_lot": "pot 2", "colour": "#c08f35"},
        ],
    )


def clover(diary: Diary, wool: Wool) -> None:
    fleece, holding = diary.fleece(
        "F-2",
        SHORN,
        2300,
        "raw",
        name="Clover",
        breed="Corriedale",
        yield_pct=56.0,
        staple_mm=95,
        colour="#c3a47c",
        colour_name="fawn",
        source="our own flock, first fleece",
    )
    diary.work_up(holding, holding, SHORN, 2300, 1955, "Skirted.")
    diary.work_up(holding, holding, WASHED, 1955, 1095, "Scoured in three lots.")
    diary.work_up(holding, holding, CARDED, 1095, 1018, "Carded.")
    diary.weigh(holding, CARDED, 1018)
    holding = diary.change(holding, replace(holding, state="carded"))
    fawn = a_lot(diary, wool, "C", fleece, "Clover two-ply", 2, 400.0)
    skeins(
        diary,
        wool,
        fawn,
        holding,
        date(2026, 8, 1),
        [
            {"grams": 81, "turns": 134, "before": 147, "wraps": 13},
            {"grams": 78, "turns": 131},
            {"grams": 84, "turns": 137, "before": 149},
            {"grams": 76, "turns": 128, "wraps": 13.5},
            {"grams": 80, "turns": 133},
            {"grams": 79, "turns": 129},
        ],
    )


def nettle(diary: Diary, wool: Wool) -> None:
    fleece, holding = diary.fleece(
        "F-3",
        SHORN,
        2900,
        "raw",
        name="Nettle",
        breed="Cheviot",
        staple_mm=90,
        colour="#4b382b",
        colour_name="dark brown",
        source="our own flock, wether",
    )
    diary.work_up(holding, holding, SHORN, 2900, 2465, "Skirted.")
    diary.work_up(holding, holding, WASHED, 2465, 1356, "Scoured.")
    diary.work_up(holding, holding, CARDED, 1356, 1261, "Carded into rolags.")
    diary.weigh(holding, CARDED, 1261)
    holding = diary.change(holding, replace(holding, state="part spun"))
    brown = a_lot(diary, wool, "N", fleece, "Nettle two-ply", 2, 475.0)
    skeins(
        diary,
        wool,
        brown,
        holding,
        date(2026, 7, 18),
        [
            {"grams": 98, "turns": 137, "before": 146, "wraps": 11.5},
            {"grams": 96, "turns": 135, "before": 145},
            {"grams": 99, "turns": 139},
            {"grams": 97, "turns": 136},
            {"grams": 94, "turns": 131.5},
            {"grams": 96, "turns": 135, "wraps": 11.5},
        ],
    )
    thick = a_lot(
        diary,
        wool,
        "K",
        fleece,
        "Nettle thick single",
        1,
        1150.0,
        twist="Z",
        notes="Fulled a little in the rinse; for felted things.",
    )
    skeins(
        diary,
        wool,
        thick,
        holding,
        date(2026, 9, 12),
        [
            {"grams": 118, "turns": 68, "wraps": 7},
            {"grams": 124, "turns": 72},
            {"grams": 115, "turns": 67.5},
        ],
    )
    bobbin = diary.add(
        Holding(diary.new_id(), "bobbin", "Bobbin 2", fleece.id, day=date(2026, 10, 4))
    )
    taken = [Portion(holding, 88_000)]
    diary.post(date(2026, 10, 4), spin(diary.held, taken, [Portion(bobbin, 85_000)]))


def tansy(diary: Diary, wool: Wool) -> None:
    fleece, holding = diary.fleece(
        "F-4",
        SHORN,
        2600,
        "raw",
        name="Tansy",
        breed="Cheviot",
        staple_mm=100,
        colour="#8d8880",
        colour_name="grey",
        source="our own flock, ewe of three years",
    )
    diary.work_up(holding, holding, SHORN, 2600, 2210, "Skirted.")
    batts = a_bag(diary, fleece, "F-4 batts", "carded", CARDED)
    diary.work_up(holding, batts, CARDED, 600, 307, "A first lot, scoured and carded.")
    grey = a_lot(diary, wool, "T", fleece, "Tansy three-ply", 3, 560.0)
    skeins(
        diary,
        wool,
        grey,
        batts,
        date(2026, 8, 29),
        [
            {"grams": 84, "turns": 100, "before": 109, "wraps": 10.5},
            {"grams": 86, "turns": 102.5, "before": 111},
            {"grams": 83, "turns": 107, "finished": False},
        ],
    )
    washed = date(2026, 10, 17)
    diary.work_up(holding, holding, washed, 1610, 1180, "Scoured; on the rack, still damp.")
    diary.weigh(holding, washed, 1180, "damp")
    diary.change(holding, replace(holding, state="drying", place="Rack in the porch"))
