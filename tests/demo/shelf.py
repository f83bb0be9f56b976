"""What every fleece of the demo comes to: bags of fibre, yarns and skeins."""

from dataclasses import dataclass
from datetime import date, timedelta
from typing import Any

from app.book.fleece import Fleece
from app.book.holding import Holding
from app.book.yarn import Yarn
from tests.demo.diary import Diary

DAYS_A_SKEIN = timedelta(days=3)


@dataclass(frozen=True, slots=True)
class Wool:
    """The yarns by their letter, and their skeins by code."""

    yarns: dict[str, Yarn]
    skeins: dict[str, Holding]


def a_bag(diary: Diary, fleece: Fleece, code: str, state: Any, day: date) -> Holding:
    return diary.add(Holding(diary.new_id(), "fibre", code, fleece.id, state=state, day=day))


def a_lot(
    diary: Diary,
    wool: Wool,
    letter: str,
    fleece: Fleece,
    name: str,
    plies: int,
    target_tex: float,
    **known: Any,
) -> Yarn:
    """A yarn spun from a fleece; it has the fleece's fibre and colour unless told otherwise."""
    own = {"colour": fleece.colour, "colour_name": fleece.colour_name, "fibre": fleece.fibre}
    of = {"plies": plies, "fleece_id": fleece.id, "target_tex": target_tex, "twist": "S"}
    wool.yarns[letter] = diary.add(Yarn(diary.new_id(), name, **own | of | known))
    return wool.yarns[letter]


def skeins(
    diary: Diary, wool: Wool, yarn: Yarn, fibre: Holding, day: date, skeins: list[dict[str, Any]]
) -> None:
    letter = next(one for one, known in wool.yarns.items() if known == yarn)
    for number, measured in enumerate(skeins, start=1):
        code = f"{letter}-{number:02}"
        spun = day + DAYS_A_SKEIN * (number - 1)
        wool.skeins[code] = diary.skein(yarn, code, fibre, spun, place="Chest", **measured)
