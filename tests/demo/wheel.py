"""The demo's wheel and spindle, how the grey yarn is meant to be spun, and some noted evenings."""

from dataclasses import replace
from datetime import date

from app.book.spinning import Spinning
from app.book.stint import Stint
from app.book.wheel import Ratio, Wheel
from app.book.yarn import Yarn
from tests.demo.diary import Diary
from tests.demo.shelf import Wool

EVENINGS = (
    (date(2026, 8, 24), "spin", "T", 100, 262),
    (date(2026, 8, 25), "spin", "T", 120, 331),
    (date(2026, 8, 27), "ply", "T", 75, 296),
    (date(2026, 9, 1), "spin", "H", 115, 344),
    (date(2026, 9, 3), "spin", "H", 90, 248),
    (date(2026, 9, 4), "ply", "H", 80, 342),
)
"""Day, work, the letter of the yarn, minutes and metres."""


def keep_wheel(diary: Diary, wool: Wool) -> None:
    """Kept last, so that everything before has the ids it always had."""
    ratios = (Ratio(6.5), Ratio(9.0), Ratio(13.0))
    wheel = diary.add(Wheel(diary.new_id(), "Upright wheel", "wheel", ratios, 110_000))
    diary.add(
        Wheel(diary.new_id(), "Pear-wood spindle", "spindle", bobbin_mg=40_000, notes="28 g.")
    )
    for day, work, letter, minutes, metres in EVENINGS:
        yarn_id = wool.yarns[letter].id
        diary.add(Stint(diary.new_id(), day, work, minutes, None, metres * 1000, yarn_id=yarn_id))
    grey: Yarn = wool.yarns["T"]
    said = Spinning(use="jumpers, hats and most knitting", wheel_id=wheel.id, preparation="carded")
    diary.change(grey, replace(grey, spinning=said))
