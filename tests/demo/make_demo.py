"""Writes demo_data/demo.json: `python -m tests.demo.make_demo`."""

from pathlib import Path

from app.book.book import Book
from app.book.exchange import dumps
from tests.demo.diary import Diary
from tests.demo.garments import keep_garments
from tests.demo.patterns import keep_patterns
from tests.demo.swatches import keep_swatches
from tests.demo.wheel import keep_wheel
from tests.demo.wool import keep_wool

DEMO = Path(__file__).parents[2] / "demo_data" / "demo.json"


def demo_book() -> Book:
    """The invented smallholding's book; the same every time."""
    diary = Diary()
    wool = keep_wool(diary)
    keep_garments(diary, wool, keep_swatches(diary, wool))
    keep_patterns(diary)
    keep_wheel(diary, wool)
    return diary.book()


if __name__ == "__main__":
    DEMO.write_text(dumps(demo_book()), encoding="utf-8", newline="\n")
