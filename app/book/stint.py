"""A stint: time spent at one kind of work, and how much of it was done."""

from dataclasses import dataclass
from datetime import date

from app.book.words import Work


@dataclass(frozen=True, slots=True)
class Stint:
    """`minutes` at a kind of work, through which `mg` of wool or `mm` of yarn went."""

    id: str
    day: date
    work: Work
    minutes: int
    mg: int | None = None
    mm: int | None = None
    holding_id: str | None = None
    yarn_id: str | None = None
    plan_id: str | None = None
    note: str = ""
