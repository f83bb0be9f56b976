"""Looking through the skeins: totals kept for as long as they are true."""

from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest
from sqlalchemy import event

from app.book.yarn import Yarn
from app.store.engine import Store, open_store
from app.store.skein_list import SkeinFilter
from app.work import skein_browse
from app.work.skein_add import NewSkein, add_skein
from app.work.skein_browse import browse
from app.work.skein_readings import Length, Weight


@pytest.fixture
def store(tmp_path: Path) -> Iterator[Store]:
    opened = open_store(tmp_path)
    yield opened
    opened.close()


def add(store: Store, grams: int = 50) -> None:
    yarn = Yarn("grey", "Grey")
    length = (Length(125_000, "125", "m"),)
    with store.writing() as session:
        add_skein(
            session, NewSkein(yarn, Weight(grams * 1000, str(grams), "g"), length, date.today())
        )


def test_totals_follow_every_change(store: Store) -> None:
    add(store)
    with store.reading() as session:
        assert browse(session, SkeinFilter()).total.skeins == 1
    add(store, 60)
    with store.reading() as session:
        found = browse(session, SkeinFilter())
    assert (found.total.skeins, found.total.mg) == (2, 110_000)
    assert found.yarns == {"grey": "Grey"}
    assert found.fibres == ["wool"]


def test_the_same_list_again_asks_for_its_page_alone(store: Store) -> None:
    add(store)
    with store.reading() as session:
        browse(session, SkeinFilter())
        seen: list[str] = []
        engine = session.connection().engine

        def note(_conn: object, _cursor: object, text: str, *_: object) -> None:
            seen.append(text)

        event.listen(engine, "before_cursor_execute", note)
        browse(session, SkeinFilter(sort="code", page=2))
        event.remove(engine, "before_cursor_execute", note)
    assert len(seen) == 2
    assert "data_version" in seen[1]


def test_totals_of_too_many_filters_are_let_go(
    store: Store, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(skein_browse, "MOST_KEPT", 2)
    add(store)
    with store.reading() as session:
        counts = [browse(session, SkeinFilter(text=t)).total.skeins for t in ("", "G", "no", "")]
    assert counts == [1, 1, 0, 1]
