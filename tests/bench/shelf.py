"""Large shelves to measure on: the same every time."""

from dataclasses import replace
from datetime import date
from itertools import count, islice
from pathlib import Path

from app.book.book import Book
from app.book.exchange import dumps
from app.book.holding import Holding
from app.book.plan import Part, Plan, Promise, RoleYarn
from app.book.reading import Reading
from app.book.shape import Counted
from app.book.yarn import Yarn
from app.store import Store, open_store
from app.work.keep import import_book
from tests.books import (
    a_book,
    a_fleece,
    a_holding,
    a_part,
    a_person,
    a_plan,
    a_promise,
    a_skein,
    a_yarn,
)

IN_A_YARN = 100
LARGE = "large"
"""The plan with 12 parts fed by 60 skeins."""
DAY = date(2026, 3, 1)
FLEECES = ("Bramble", "Sorrel", "Teasel", "Fern")
SHAPES = (("Body", 229, 120, 1), ("Sleeve", 64, 135, 2), ("Yoke", 190, 50, 1))


def guild_book(skeins: int, plans: int, large: bool = False) -> Book:
    """A book of so many skeins in yarns of a hundred, and plans of three parts on eight skeins."""
    yarns = [_yarn(number) for number in range(-(-skeins // IN_A_YARN))]
    shelf = [_skein(number, yarns) for number in range(skeins)]
    free = iter(shelf)
    wool = [a_holding(f"F-{one}", fleece_id=one, state="carded", day=DAY) for one in FLEECES]
    records: list[object] = [a_person(), *map(a_fleece, FLEECES), *yarns, *wool, *shelf]
    if large:
        records += _large_plan(list(islice(free, 60)))
    for number in range(plans):
        records += _plan(number, list(islice(free, 8)))
    records += [reading for one in shelf for reading in _readings(one)]
    held = {one.id: (_grams(one), _metres(one)) for one in shelf}
    held |= {one.id: (3_000.0, 0.0) for one in wool}
    book = a_book(*records, held=held)
    events = (replace(event, day=DAY) for event in book.events)
    return replace(book, events=tuple(events))


def store_of(folder: Path, book: Book) -> Store:
    """An open store that holds the book."""
    store = open_store(folder)
    with store.writing() as session:
        import_book(session, dumps(book))
    return store


def _yarn(number: int) -> Yarn:
    fibre = "alpaca" if number % 7 == 3 else "wool"
    return a_yarn(
        f"yarn-{number:03}",
        name=f"Two-ply number {number}",
        fibre=fibre,
        fleece_id=FLEECES[number % 4],
        target_tex=float(300 + 11 * (number % 40)),
    )


def _skein(number: int, yarns: list[Yarn]) -> Holding:
    yarn = yarns[number // IN_A_YARN]
    return a_skein(
        f"skein-{number:05}",
        yarn.id,
        code=f"Y{number // IN_A_YARN:03}-{number % IN_A_YARN:03}",
        day=DAY,
        colour=f"#{120 + number % 90:02x}{110 + number % 80:02x}{90 + number % 70:02x}",
        colour_name=("grey", "fawn", "moorit", "cream")[number % 4],
        place=f"Shelf {number % 9}",
    )


def _number(skein: Holding) -> int:
    return int(skein.id.split("-")[1])


def _metres(skein: Holding) -> float:
    return 150.0 + (_number(skein) * 37) % 120


def _grams(skein: Holding) -> float:
    tex = 300 + 11 * (_number(skein) // IN_A_YARN % 40) + (_number(skein) * 7) % 23
    return round(_metres(skein) * tex / 1000, 3)


def _readings(skein: Holding) -> list[Reading]:
    mg, mm = round(_grams(skein) * 1000), round(_metres(skein) * 1000)
    same = {"holding_id": skein.id, "day": DAY}
    return [
        Reading(f"{skein.id}-g", kind="mass", value=mg, typed=f"{mg / 1000:g}", unit="g",
                instrument="scale", **same),
        Reading(f"{skein.id}-m", kind="length", value=mm, typed=f"{mm / 1500:g}", unit="turns",
                instrument="reel", girth_mm=1500, turns=mm / 1500, **same),
    ]  # fmt: skip


def _plan(number: int, skeins: list[Holding]) -> list[object]:
    plan = a_plan(
        f"plan-{number:03}",
        name=f"Pullover number {number}",
        person_id="Ines",
        priority=number + 2,
        yarns=(RoleYarn("main", str(skeins[0].yarn_id)),),
    )
    parts = [
        a_part(f"{plan.id}-{name}", plan.id, name=name, shape=Counted(stitches, rows),
               copies=copies, position=place)
        for place, (name, stitches, rows, copies) in enumerate(SHAPES, start=1)
    ]  # fmt: skip
    return [plan, *parts, *_promises(plan, parts, skeins)]


def _large_plan(skeins: list[Holding]) -> list[object]:
    plan = a_plan(LARGE, name="Blanket of twelve strips", priority=1,
                  yarns=(RoleYarn("main", str(skeins[0].yarn_id)),))  # fmt: skip
    parts = [
        a_part(f"{LARGE}-{number:02}", LARGE, name=f"Strip {number}", shape=Counted(90, 520),
               position=number)
        for number in range(1, 13)
    ]  # fmt: skip
    return [plan, *parts, *_promises(plan, parts, skeins)]


def _promises(plan: Plan, parts: list[Part], skeins: list[Holding]) -> list[Promise]:
    numbers = count(1)
    return [
        a_promise(
            one.id,
            round(_metres(one) * 800),
            id=f"{plan.id}-promise-{next(numbers):02}",
            plan_id=plan.id,
            part_id=parts[place * len(parts) // len(skeins)].id,
        )
        for place, one in enumerate(skeins)
    ]
