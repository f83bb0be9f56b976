"""The demo's swatches: three needles for one yarn, one unravelled, one not washed, one put away."""

from datetime import date
from typing import Any

from app.book.swatch import Count, Swatch
from tests.demo.diary import Diary
from tests.demo.shelf import Wool


def keep_swatches(diary: Diary, wool: Wool) -> dict[str, Swatch]:
    """The swatches garments take their gauge from, by the letter of their yarn, and others."""
    _add(
        diary,
        wool,
        "B",
        "Bramble on 3.5 mm",
        needle_mm=3.5,
        finished=Count(37.0, 150.0, 43.0, 130.0),
        day=date(2026, 9, 12),
        notes="Too stiff for a pullover; good for mittens.",
    )
    _add(
        diary,
        wool,
        "B",
        "Bramble on 4.5 mm",
        needle_mm=4.5,
        worked=Count(29.0, 150.0, 33.0, 120.0),
        finished=Count(30.0, 150.0, 34.0, 125.0),
        day=date(2026, 9, 13),
    )
    return {
        "B": _bramble(diary, wool),
        "T": _tansy(diary, wool),
        "N": _nettle(diary, wool),
        "A": _alpaca(diary, wool),
    }


def _bramble(diary: Diary, wool: Wool) -> Swatch:
    """Weighed on a kitchen scale: 39 stitches, 52 rows, cast-on and cast-off."""
    return _add(
        diary,
        wool,
        "B",
        "Bramble on 4 mm",
        needle_mm=4.0,
        worked=Count(32.0, 150.0, 42.0, 142.0),
        finished=Count(33.0, 150.0, 42.0, 140.0),
        weight_mg=17_000,
        whole_stitches=2106.0,
        day=date(2026, 9, 14),
    )


def _tansy(diary: Diary, wool: Wool) -> Swatch:
    """Thirty stitches were unravelled and their thread measured."""
    return _add(
        diary,
        wool,
        "T",
        "Tansy on 4.5 mm",
        needle_mm=4.5,
        finished=Count(27.0, 150.0, 30.0, 120.0),
        unravelled=30.0,
        thread_mm=661,
        day=date(2026, 10, 17),
    )


def _nettle(diary: Diary, wool: Wool) -> Swatch:
    return _add(
        diary,
        wool,
        "N",
        "Nettle on 4 mm",
        needle_mm=4.0,
        finished=Count(21.0, 100.0, 29.0, 100.0),
        day=date(2026, 7, 26),
        put_away=date(2026, 9, 20),
        notes="Sewn into the waistcoat as a pocket.",
    )


def _alpaca(diary: Diary, wool: Wool) -> Swatch:
    return _add(
        diary,
        wool,
        "A",
        "Alpaca, still to be washed",
        needle_mm=3.75,
        worked=Count(38.0, 150.0, 40.0, 125.0),
        day=date(2026, 10, 24),
    )


def _add(diary: Diary, wool: Wool, letter: str, name: str, **known: Any) -> Swatch:
    return diary.add(Swatch(diary.new_id(), name, wool.yarns[letter].id, **known))
