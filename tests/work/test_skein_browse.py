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
from app.work.reckoning import current
from app.work.skein_add import NewSkein, add_skein
from app.work.skein_browse import browse
from app.work.skein_readings import Length, Weight


@pytest.fixture
def store(tmp_path: Path) -> Iterator[Store]:
    opened = open_store(tmp_path)
    yield opened
    opened.close()


def add(store: Store, grams: int = 50, code: str = "") -> None:
    yarn = Yarn("grey", "Grey")
    length = (Length(125_000, "125", "m"),)
    with store.writing() as session:
        weight = Weight(grams * 1000, str(grams), "g")
        add_skein(session, NewSkein(yarn, weight, length, date.today(), code=code))


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


def test_what_is_in_reserve_is_not_free(shelf: Store) -> None:
    """Each line and the total say of free and reserve what the reckoning says."""
    with shelf.reading() as session:
        reckoned = current(session).reckoning.shelf
        found = browse(session, SkeinFilter())
        grey = browse(session, SkeinFilter(yarn_id="grey two-ply"))
    assert sum(one.reserved_m for one in reckoned.values()) > 1
    for line in found.lines:
        assert line.free_mm / 1000 == pytest.approx(reckoned[line.id].free_m, abs=0.001)
    reserved = {id: one.reserved_m for id, one in reckoned.items()}
    assert found.reserved_mm / 1000 == pytest.approx(sum(reserved.values()), abs=0.002)
    assert grey.reserved_mm / 1000 == pytest.approx(reserved["G-1"] + reserved["G-2"], abs=0.002)
    assert found.total.free_mm == sum(one.mm - one.promised_mm for one in found.lines)


def test_balls_alike_stand_in_the_order_of_their_codes(store: Store) -> None:
    for code in ("S-010", "S-2", "S-001"):
        add(store, code=code)
    with store.reading() as session:
        for sort in ("grist", "metres", "grams", "day"):
            lines = browse(session, SkeinFilter(sort=sort)).lines
            assert [one.code for one in lines] == ["S-001", "S-2", "S-010"], sort
