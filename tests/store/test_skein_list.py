"""The list of skeins as the database gives it: filters, orders, pages, indexes."""

from collections.abc import Iterator
from dataclasses import replace
from datetime import date, timedelta
from pathlib import Path
from typing import get_args

import pytest
from sqlalchemy import event
from sqlmodel import Session

from app.book.event import Line
from app.book.holding import Holding
from app.book.plan import Part, Plan, Promise
from app.book.reading import Reading
from app.book.shape import Metres
from app.book.yarn import Yarn
from app.store.engine import Store, open_store
from app.store.records import post, put
from app.store.skein_list import (
    PAGE,
    SkeinFilter,
    SkeinSort,
    SkeinTotal,
    fibres,
    skein_page,
    skein_total,
)
from app.store.skein_query import page_statement
from app.store.yarn_totals import yarn_names, yarn_totals

DAY = date(2026, 3, 1)

SHELF = (
    # code, yarn, grams, metres, colour, its name
    ("G-1", "grey", 96, 213, "#808080", "grey"),
    ("G-2", "grey", 100, 210, "#606060", "dark grey"),
    ("M-1", "moss", 50, 125, "#556b2f", "moss"),
    ("L-1", "lace", 30, 300, "", ""),
)


@pytest.fixture
def store(tmp_path: Path) -> Iterator[Store]:
    opened = open_store(tmp_path)
    with opened.writing() as session:
        put(session, Yarn("grey", "Grey two-ply", "wool"))
        put(session, Yarn("moss", "Moss_50%", "alpaca"))
        put(session, Yarn("lace", "Lace", "silk", colour="#f4f0e8", colour_name="natural"))
        for n, (code, yarn, g, m, colour, name) in enumerate(SHELF):
            skein(
                session, code, yarn, g, m, colour=colour, colour_name=name, day=DAY + timedelta(n)
            )
    yield opened
    opened.close()


def skein(session: Session, code: str, yarn: str, g: int, m: int, **more: object) -> None:
    put(session, replace(Holding(code, "skein", code, yarn_id=yarn), **more))  # type: ignore[arg-type]
    post(session, "arrive", DAY, [Line("come in", -g * 1000), Line(code, g * 1000, m * 1000)])


def promise(session: Session, code: str, mm: int) -> None:
    put(session, Plan("plan", "Shawl"))
    put(session, Part("part", "plan", "all of it", Metres(1)))
    put(session, Promise(f"promise-{code}", "plan", "part", code, mm))


def codes(store: Store, **asked: object) -> list[str]:
    with store.reading() as session:
        return [one.code for one in skein_page(session, SkeinFilter(**asked))]  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("sort", "order"),
    [
        ("grist", ["L-1", "M-1", "G-1", "G-2"]),
        ("code", ["G-1", "G-2", "L-1", "M-1"]),
        ("metres", ["L-1", "G-1", "G-2", "M-1"]),
        ("grams", ["G-2", "G-1", "M-1", "L-1"]),
        ("day", ["L-1", "M-1", "G-2", "G-1"]),
        ("colour", ["G-2", "M-1", "G-1", "L-1"]),
    ],
)
def test_each_order(store: Store, sort: SkeinSort, order: list[str]) -> None:
    assert codes(store, sort=sort) == order


@pytest.mark.parametrize(
    ("asked", "found"),
    [
        ({"text": "two-PLY"}, ["G-1", "G-2"]),
        ({"text": "50%"}, ["M-1"]),
        ({"text": "%"}, ["M-1"]),
        ({"text": "_"}, ["M-1"]),
        ({"text": "\\"}, []),
        ({"text": "' OR 1=1 --"}, []),
        ({"fibre": "silk"}, ["L-1"]),
        ({"colour": "grey"}, ["G-1", "G-2"]),
        ({"colour": "dark"}, ["G-2"]),
        ({"colour": "natural"}, ["L-1"]),
        ({"text": "NATURAL"}, ["L-1"]),
        ({"yarn_id": "grey"}, ["G-1", "G-2"]),
        ({"yarn_id": "grey", "sort": "day"}, ["G-2", "G-1"]),
        ({"least_tex": 450.0}, ["G-1", "G-2"]),
        ({"least_tex": 300.0, "most_tex": 460.0}, ["M-1", "G-1"]),
    ],
)
def test_each_filter(store: Store, asked: dict[str, object], found: list[str]) -> None:
    assert codes(store, **asked) == found


def test_a_skein_without_a_colour_shows_its_yarns_and_one_without_any_comes_last(
    store: Store,
) -> None:
    with store.writing() as session:
        put(session, Yarn("plain", "Plain"))
        skein(session, "P-1", "plain", 50, 125)
    with store.reading() as session:
        found = skein_page(session, SkeinFilter(sort="colour"))
    assert [(one.code, one.colour) for one in found][-2:] == [("L-1", "#f4f0e8"), ("P-1", "")]


def test_states(store: Store) -> None:
    with store.writing() as session:
        promise(session, "G-1", 213_000)
        promise(session, "G-2", 10_000)
        put(session, Reading("r", "M-1", "length", 1, "1", "m", "tape", DAY, finished=False))
        put(session, replace(Holding("old", "skein", "old", yarn_id="grey"), put_away=DAY))
        put(session, Holding("empty", "ball", "empty"))
    assert codes(store, state="free") == ["L-1", "M-1"]
    assert codes(store, state="partly promised") == ["G-2"]
    assert codes(store, state="promised") == ["G-1"]
    assert codes(store, state="not finished") == ["M-1"]
    assert sorted(codes(store, state="put away")) == ["empty", "old"]


def test_a_skein_measured_after_finishing_is_finished(store: Store) -> None:
    with store.writing() as session:
        put(session, Reading("a", "M-1", "length", 1, "1", "m", "tape", DAY, finished=False))
        put(session, Reading("b", "M-1", "length", 1, "1", "m", "tape", DAY, finished=True))
    assert codes(store, state="not finished") == []


def test_totals_are_of_all_pages(store: Store) -> None:
    with store.writing() as session:
        promise(session, "G-2", 10_000)
    with store.reading() as session:
        assert skein_total(session, SkeinFilter(page=9)) == SkeinTotal(4, 276_000, 848_000, 838_000)
        assert skein_total(session, SkeinFilter(text="nowhere")) == SkeinTotal(0, 0, 0, 0)


def test_a_page_and_one_more(store: Store) -> None:
    with store.writing() as session:
        for n in range(PAGE):
            skein(session, f"X-{n:02}", "moss", 50, 125)
    first = codes(store, sort="code")
    assert len(first) == PAGE + 1
    assert codes(store, sort="code", page=2) == [first[-1], *codes(store, sort="code", page=2)[1:]]
    assert len(codes(store, sort="code", page=2)) == 4


@pytest.mark.parametrize("sort", [one for one in get_args(SkeinSort) if one != "colour"])
def test_each_order_is_read_off_an_index(store: Store, sort: SkeinSort) -> None:
    statement = page_statement("", sort, frozenset())
    text = str(statement.compile(compile_kwargs={"literal_binds": True}, dialect=_sqlite()))
    with store.reading() as session:
        rows = session.connection().exec_driver_sql(
            "EXPLAIN QUERY PLAN " + text.replace(":skip", "0")
        )
        steps = " / ".join(row[3] for row in rows)
    assert "USING INDEX" in steps
    assert "TEMP B-TREE" not in steps


def test_the_number_of_statements_does_not_grow_with_the_skeins(store: Store) -> None:
    few = statements(store)
    with store.writing() as session:
        for n in range(50):
            skein(session, f"X-{n:02}", "moss", 50, 125)
    assert statements(store) == few == 4


def statements(store: Store) -> int:
    """How many statements the list, its totals and the totals by yarn take."""
    seen: list[str] = []

    def note(_conn: object, _cursor: object, text: str, *_: object) -> None:
        if not text.startswith("BEGIN"):
            seen.append(text)

    with store.reading() as session:
        engine = session.connection().engine
        event.listen(engine, "before_cursor_execute", note)
        skein_page(session, SkeinFilter())
        skein_total(session, SkeinFilter())
        fibres(session)
        yarn_totals(session)
        event.remove(engine, "before_cursor_execute", note)
    return len(seen)


def _sqlite() -> object:
    from sqlalchemy.dialects import sqlite

    return sqlite.dialect()


def test_fibres_and_names_are_in_order(store: Store) -> None:
    with store.reading() as session:
        assert fibres(session) == ["alpaca", "silk", "wool"]
        assert list(yarn_names(session)) == ["grey", "lace", "moss"]


def test_totals_by_yarn(store: Store) -> None:
    with store.writing() as session:
        put(session, Yarn("none", "Not spun yet", target_tex=300.0))
        promise(session, "G-2", 10_000)
        put(session, replace(Holding("gone", "skein", "gone", yarn_id="grey"), put_away=DAY))
    with store.reading() as session:
        grey, lace, moss, none = yarn_totals(session)
        alone = yarn_totals(session, "moss")
    assert (grey.skeins, grey.mg, grey.mm, grey.free_mm) == (2, 196_000, 423_000, 413_000)
    assert grey.measured == 2
    assert grey.tex_sum == pytest.approx(96 / 0.213 + 100 / 0.210)
    assert (lace.skeins, moss.skeins, none.skeins) == (1, 1, 0)
    assert (none.mm, none.measured, none.target_tex) == (0, 0, 300.0)
    assert alone == [moss]
