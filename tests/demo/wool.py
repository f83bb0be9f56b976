"""The demo's wool from elsewhere: a neighbour's bag, a bought top, and balls from the shop."""

from datetime import date

from app.book.holding import Holding
from app.book.woolbook import Portion, arrive
from app.book.yarn import Yarn
from tests.demo.diary import Diary
from tests.demo.flock import bramble, clover, nettle, tansy
from tests.demo.shelf import Wool, a_bag, a_lot, skeins


def keep_wool(diary: Diary) -> Wool:
    """Everything from shearing to the shelf."""
    wool = Wool({}, {})
    bramble(diary, wool)
    clover(diary, wool)
    nettle(diary, wool)
    tansy(diary, wool)
    _neighbour(diary, wool)
    _alpaca(diary, wool)
    _shop(diary, wool)
    return wool


def _neighbour(diary: Diary, wool: Wool) -> None:
    fleece, holding = diary.fleece(
        "F-5",
        date(2026, 6, 27),
        1600,
        "skirted",
        name="Hill bag",
        breed="Bluefaced Leicester",
        micron=26.0,
        staple_mm=120,
        colour="#f1ead9",
        colour_name="white",
        source="the neighbour up the hill, for help at shearing",
    )
    combed = a_bag(diary, fleece, "F-5 combed", "combed", date(2026, 7, 4))
    diary.work_up(holding, combed, date(2026, 7, 4), 640, 493, "Scoured lock by lock.")
    diary.work_up(combed, combed, date(2026, 8, 8), 493, 370, "Combed and drawn off.")
    lace = a_lot(diary, wool, "H", fleece, "Hill lace two-ply", 2, 180.0)
    skeins(
        diary,
        wool,
        lace,
        combed,
        date(2026, 9, 5),
        [
            {"grams": 67, "turns": 248, "before": 256, "wraps": 19},
            {"grams": 65, "turns": 239},
            {"grams": 68, "turns": 251, "before": 258},
            {"grams": 64, "turns": 236, "wraps": 18.5},
            {"grams": 66, "turns": 244},
        ],
    )


def _alpaca(diary: Diary, wool: Wool) -> None:
    fleece, holding = diary.fleece(
        "F-6",
        date(2026, 9, 19),
        500,
        "combed",
        name="Alpaca top",
        breed="",
        fibre="alpaca",
        micron=24.0,
        colour="#a5714a",
        colour_name="cinnamon",
        source="bought at the autumn wool fair",
    )
    soft = a_lot(diary, wool, "A", fleece, "Alpaca two-ply", 2, 260.0, fibre="alpaca")
    skeins(
        diary,
        wool,
        soft,
        holding,
        date(2026, 10, 3),
        [
            {"grams": 84, "turns": 213, "before": 217, "wraps": 15},
            {"grams": 81, "turns": 209},
            {"grams": 82, "turns": 210},
        ],
    )


def _shop(diary: Diary, wool: Wool) -> None:
    day = date(2026, 9, 26)
    yarn = diary.add(
        Yarn(
            diary.new_id(),
            "Slate blue from the shop",
            plies=4,
            bought=True,
            ball_mg=50_000,
            ball_mm=125_000,
            colour="#5d7183",
            colour_name="slate blue",
        )
    )
    wool.yarns["S"] = yarn
    made = []
    for number in range(1, 7):
        code, lot = f"S-{number:02}", "lot 1" if number < 5 else "lot 2"
        ball = diary.add(
            Holding(
                diary.new_id(), "ball", code, yarn_id=yarn.id, day=day, dye_lot=lot, price="4.80"
            )
        )
        wool.skeins[code] = ball
        made.append(Portion(ball, 50_000, 125_000))
        diary.label(ball, day, 50, 125)
    diary.post(day, arrive(made))
